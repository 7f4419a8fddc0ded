import { buffer } from 'node:stream/consumers';
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { type Run, Sheet } from '../../apps/api/src/features/reports/sheet.ts';
import { readPdf } from '../support/pdf-text.ts';

const options = { title: 'A', author: 'B', locale: 'es' as const, footer: 'foot', pageWord: 'page' };

async function written(write: (sheet: Sheet) => void): Promise<string> {
  const sheet = new Sheet({ ...options, createdAt: new Date('2026-03-03T00:00:00Z') });
  write(sheet);
  sheet.doc.end();
  const bytes = await buffer(sheet.doc);
  expect(unevenPages(bytes)).toEqual([]);
  return (await readPdf(bytes)).text;
}

/** Pages that give back a graphics state they did not save, or keep one: strict readers stop drawing there. */
function unevenPages(bytes: Buffer): number[] {
  const pages = contentsOf(bytes);
  expect(pages.length).toBeGreaterThan(1);
  return pages.flatMap((content, at) => {
    let depth = 0;
    const depths = content.split('\n').map((line) => {
      depth += line === 'q' ? 1 : line === 'Q' ? -1 : 0;
      return depth;
    });
    return depth === 0 && Math.min(...depths) === 0 ? [] : [at + 1];
  });
}

/** What draws each page, unpacked. */
function contentsOf(bytes: Buffer): string[] {
  const contents: string[] = [];
  for (let at = bytes.indexOf('\nstream\n'); at >= 0; at = bytes.indexOf('\nstream\n', at + 1)) {
    const packed = bytes.subarray(at + '\nstream\n'.length, bytes.indexOf('endstream', at));
    if (!bytes.subarray(at - 60, at).includes('FlateDecode')) continue;
    const content = inflateSync(packed).toString('latin1');
    if (content.includes(' Tf\n')) contents.push(content);
  }
  return contents;
}

const count = 60;
const long = 'and so many words that it runs over the end of its line and goes on for a while in the next one';
const numbered = (make: (at: number) => Run): Run[] => Array.from({ length: count }, (_, at) => make(at));
const missing = (text: string) =>
  numbered((at) => `item ${at} of them`).filter((words) => !text.includes(String(words)));

test.each<[string, (at: number) => Run]>([
  ['plain', (at) => `item ${at} of them ${long}`],
  ['in two languages', (at) => [`item ${at} of them `, { words: long, lang: 'en-US' }, ' y más']],
])('a list over several pages keeps every item, %s', async (_name, make) => {
  expect(missing(await written((sheet) => sheet.list(numbered(make))))).toEqual([]);
});

test('paragraphs and headings in two languages over several pages keep every word', async () => {
  const text = await written((sheet) => {
    for (const at of Array(count).keys()) {
      sheet.subheading([`item ${at} of them `, { words: 'in English', lang: 'en-US' }]);
      sheet.paragraph([`${long} `, { words: `tail ${at} of it`, lang: 'en-US' }]);
    }
  });
  expect(missing(text)).toEqual([]);
  expect(Array.from({ length: count }, (_, at) => `tail ${at} of it`).filter((words) => !text.includes(words))).toEqual(
    [],
  );
});
