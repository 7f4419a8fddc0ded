/** The same words as the text, for programs that show HTML: paragraphs, links that can be pressed, and the language. */
export function toHtml({ subject, text, locale }: { subject: string; text: string; locale: string }): string {
  const paragraphs = text
    .trim()
    .split(/\n{2,}/)
    .map((paragraph) => `<p>${linked(escaped(paragraph)).replaceAll('\n', '<br>\n')}</p>`);
  return [
    '<!DOCTYPE html>',
    `<html lang="${locale === 'es' ? 'es-US' : 'en-US'}">`,
    `<head><meta charset="utf-8"><title>${escaped(subject)}</title></head>`,
    '<body style="font: 16px/1.5 sans-serif; max-width: 38em; overflow-wrap: anywhere">',
    ...paragraphs,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (words: string): string => words.replace(/[&<>"]/g, (sign) => entities[sign] ?? sign);

/** An address alone on its line is ours; one that somebody typed into a sentence stays plain words. */
const linked = (html: string): string => html.replace(/^https?:\/\/\S+$/gm, (url) => `<a href="${url}">${url}</a>`);
