import { type Drawing, type Locale, SHEET, say } from '../kernel/index.ts';
import { keysOf, layOut, letterAt, type Mark, type PathPen, type TextPen } from './lay-out.ts';

const PAPER = '#fffefb';
const INK = '#1a1c1e';
const WOOD_LINE = '#b39f72';

const filled = (fill: string, width: number): string => `fill="${fill}" stroke="${INK}" stroke-width="${width}"`;
const stroked = (width: number, dash?: string, color = INK): string =>
  `fill="none" stroke="${color}" stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ''}`;

/** Black on white, as every paper of this project prints. */
const PATHS: Record<PathPen, string> = {
  wood: filled('#f0e9d8', 1),
  'wood-end': filled('#e2d6b9', 1.2),
  panel: filled('#f7f3e8', 1.2),
  metal: filled('#c9cdd0', 1),
  bolt: filled('#e9ebec', 1),
  concrete: filled('#e9e7e1', 1),
  masonry: filled('#e9e7e1', 1),
  loss: stroked(1.2, '3 2'),
  opening: filled(PAPER, 1),
  gap: `fill="${PAPER}" stroke="none"`,
  unseen: stroked(1.1, '5 3.5'),
  tool: filled('#ffe27a', 0.9),
  ink: `fill="${INK}"`,
  thick: stroked(1.8),
  thin: stroked(0.7),
  hidden: stroked(0.9, '3.5 2.5'),
  center: stroked(0.7, '9 2 1.5 2'),
  limit: stroked(1.1, '7 2 1.5 2'),
  grain: stroked(0.6, undefined, WOOD_LINE),
  cross: stroked(0.6),
  hatch: stroked(0.8),
  hole: filled(PAPER, 0.8),
  dimension: stroked(0.6),
  tick: stroked(1.2),
  tape: stroked(5, undefined, '#ffe27a'),
  asked: stroked(1.5),
  'asked-tick': stroked(2.2),
  disc: filled(PAPER, 0.8),
  'asked-disc': filled('#ffe27a', 1.2),
};
const HALO = `stroke="${PAPER}" stroke-width="2.5" stroke-linejoin="round" paint-order="stroke"`;
const TEXTS: Record<TextPen, string> = {
  word: HALO,
  value: `font-weight="600" ${HALO}`,
  'asked-value': `font-weight="800" ${HALO}`,
  letter: 'font-weight="700"',
};

const escaped = (words: string): string =>
  words.replace(/[&<>"]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? sign);

function painted(mark: Mark): string {
  if ('d' in mark) return `<path d="${mark.d}" ${PATHS[mark.pen]}/>`;
  const { x, y, anchor, size, words, pen } = mark;
  return `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" text-anchor="${anchor}" font-size="${size.toFixed(1)}" fill="${INK}" ${TEXTS[pen]}>${escaped(words)}</text>`;
}

const KEY_SIZE = 7;
const KEY_LINE = 10;
const KEY_LETTERS = 46;

/** Breaks words into lines at spaces. */
function linesOf(words: string): string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < KEY_LETTERS) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

/** The key under the drawing: each letter with the name of its input. */
function key(rows: readonly { letter: string; words: string }[]): { svg: string; height: number } {
  const all = rows.flatMap(({ letter, words }) =>
    linesOf(words).map((line, at) => ({ letter: at === 0 ? letter : '', line })),
  );
  const text = (x: number, at: number, words: string, weight: number): string =>
    `<text x="${x}" y="${SHEET.height + 8 + at * KEY_LINE}" font-size="${KEY_SIZE}" font-weight="${weight}" fill="${INK}">${escaped(words)}</text>`;
  const svg = all.map(({ letter, line }, at) => text(4, at, letter, 700) + text(14, at, line, 400)).join('');
  return { svg, height: all.length === 0 ? 0 : all.length * KEY_LINE + 4 };
}

export interface DrawingSvgOptions {
  readonly locale: Locale;
  /** Names of the inputs (`inputLabels`): dimensions then carry letters, and a key stands under the drawing. */
  readonly labels?: Readonly<Record<string, string>>;
  /** The input whose dimension stands out. */
  readonly highlight?: string;
}

const TEXT_SIZE = 8;

/** A drawing as a whole SVG file that needs no style sheet, with its title and the names of its dimensions as text. */
export function drawingToSvg(drawing: Drawing, { locale, labels, highlight }: DrawingSvgOptions): string {
  const keys = keysOf(drawing);
  const rows = labels ? keys.map((of, at) => ({ letter: letterAt(at), words: labels[of] ?? of })) : [];
  const marks = layOut(drawing, {
    locale,
    textSize: TEXT_SIZE,
    letters: labels !== undefined,
    ...(highlight === undefined ? {} : { asked: highlight }),
  });
  const under = key(rows);
  const height = SHEET.height + under.height;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SHEET.width} ${height}" width="${SHEET.width * 2}" height="${height * 2}" role="img" font-family="Atkinson Hyperlegible Next, Helvetica, Arial, sans-serif">`,
    `<title>${escaped(say(drawing.title, locale))}</title>`,
    ...(rows.length > 0
      ? [`<desc>${escaped(rows.map(({ letter, words }) => `${letter}: ${words}`).join('. '))}</desc>`]
      : []),
    `<rect width="${SHEET.width}" height="${height}" fill="${PAPER}"/>`,
    ...marks.map(painted),
    under.svg,
    '</svg>',
  ].join('');
}
