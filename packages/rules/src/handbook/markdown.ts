export const bullets = (lines: readonly string[]): string => lines.map((line) => `- ${line}`).join('\n');

const cell = (words: string): string => words.replaceAll('|', '\\|').replaceAll('\n', ' ');

export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}
