import { describe, expect, test } from 'vitest';
import { checks } from '../all-checks.ts';
import { type Drawing, type Fields, type Locale, SHEET, type Shape, text } from '../kernel/index.ts';
import { widthOf } from './dimensions.ts';
import { inputLabels, keysOf, layOut, type Mark } from './lay-out.ts';
import { drawingToSvg } from './svg.ts';

/** Words as large as on a phone of 360 px, in units of the sheet. */
const TEXT_SIZE = 9;

/** Length inputs no drawing can show, each with the reason. */
const NOT_DRAWN: Readonly<Record<string, string>> = {};

const lengthInputs = (fields: Fields, before = ''): string[] =>
  Object.entries(fields).flatMap(([name, field]) => [
    ...(field.kind === 'length' ? [before + name] : []),
    ...(field.kind === 'group' ? lengthInputs(field.fields, `${before}${name}.`) : []),
    ...(field.kind === 'list' ? lengthInputs(field.item, `${before}${name}.`) : []),
  ]);

/** Every corner of a path; only absolute commands are read. */
function cornersOf(d: string): number[][] {
  expect(d).toMatch(/^[MLQCZ\d.\s-]+$/);
  const numbers = (d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
  expect(numbers.length % 2).toBe(0);
  return Array.from({ length: numbers.length / 2 }, (_, at) => numbers.slice(at * 2, at * 2 + 2));
}

function spanOf(mark: Mark): number[][] {
  if ('d' in mark) return cornersOf(mark.d);
  const width = widthOf(mark.words, mark.size);
  const left = mark.anchor === 'start' ? mark.x : mark.anchor === 'end' ? mark.x - width : mark.x - width / 2;
  return [
    [left, mark.y - mark.size * 0.75],
    [left + width, mark.y + mark.size * 0.25],
  ];
}

const outside = (mark: Mark): boolean =>
  spanOf(mark).some(([x = 0, y = 0]) => x < 0 || y < 0 || x > SHEET.width || y > SHEET.height);

for (const check of checks) {
  describe(`the drawing of ${check.id}`, () => {
    test('names only inputs of the check', async () => {
      const { drawing } = await check.drawing();
      const known = Object.keys(inputLabels(check.inputs, 'en'));
      for (const of of keysOf(drawing)) expect(known).toContain(of);
    });
    test('shows where every length is measured', async () => {
      const { drawing } = await check.drawing();
      const shown = keysOf(drawing);
      const left = lengthInputs(check.inputs).filter((name) => !shown.includes(name));
      expect(left.filter((name) => !NOT_DRAWN[`${check.id}.${name}`])).toEqual([]);
    });
    test.each<Locale>(['en', 'es'])('stays on its sheet, words and all (%s)', async (locale) => {
      const { drawing } = await check.drawing();
      for (const options of [{}, { textSize: TEXT_SIZE, letters: true }])
        expect(layOut(drawing, { locale, ...options }).filter(outside)).toEqual([]);
    });
    test('keeps a long answer on the sheet whichever input is asked for', async () => {
      const { drawing } = await check.drawing();
      const answer = { words: `10'-11 15/16"`, inches: 131.9375 };
      for (const asked of keysOf(drawing))
        expect(layOut(drawing, { locale: 'en', textSize: TEXT_SIZE, asked, answer }).filter(outside)).toEqual([]);
    });
    test('has words in both languages', async () => {
      const { drawing } = await check.drawing();
      const words = drawing.shapes.flatMap((shape) => ('word' in shape ? [shape.word] : []));
      for (const { en, es } of [drawing.title, ...words]) {
        expect(en.trim()).not.toBe('');
        expect(es.trim()).not.toBe('');
      }
      expect(drawing.title.en).not.toBe(drawing.title.es);
    });
    test('is plain JSON', async () => {
      const { drawing } = await check.drawing();
      expect(JSON.parse(JSON.stringify(drawing))).toEqual(drawing);
    });
  });
}

const drawn = (...shapes: Shape[]): Drawing => ({ title: text('A board', 'Una tabla'), shapes });
const dim = (of: string, off: number): Shape => ({ dim: [40, 60, 100, 60], off, of });
const wordsIn = (marks: readonly Mark[]): string[] => marks.flatMap((mark) => ('d' in mark ? [] : [mark.words]));

test('a positive offset stands below a dimension that runs right and left of one that runs down', () => {
  const lineOf = (shape: Shape) => layOut(drawn(shape), { locale: 'en' }).filter((mark) => mark.pen === 'dimension')[1];
  expect(lineOf(dim('aIn', 10))).toMatchObject({ d: 'M40 70L100 70' });
  expect(lineOf({ dim: [40, 20, 40, 80], off: 10, of: 'aIn' })).toMatchObject({ d: 'M30 20L30 80' });
});

test('the hatch of a loss ends at its edge, also inside a notch', () => {
  const notched = [20, 20, 80, 20, 80, 80, 50, 80, 50, 40, 20, 40];
  const marks = layOut(drawn({ outline: notched, look: 'loss' }), { locale: 'en' });
  const lines = marks.find((mark) => mark.pen === 'hatch');
  if (!lines || !('d' in lines)) throw new Error('No hatch');
  const middles = lines.d
    .split('M')
    .slice(1)
    .map((part) => {
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = (part.match(/[\d.]+/g) ?? []).map(Number);
      return [(x1 + x2) / 2, (y1 + y2) / 2];
    });
  expect(middles.length).toBeGreaterThan(5);
  for (const [x = 0, y = 0] of middles) expect(x >= 50 || y <= 40).toBe(true);
});

test('what is asked for carries its answer, a question mark before there is one, and nothing for a yes or no', () => {
  const board = drawn(dim('aIn', 10), dim('bIn', 30));
  const ask = (answer?: { words: string } | null) =>
    wordsIn(layOut(board, { locale: 'en', textSize: 9, asked: 'aIn', ...(answer === undefined ? {} : { answer }) }));
  expect(ask()).toEqual(['?']);
  expect(ask({ words: '7 3/8"' })).toEqual(['7 3/8"']);
  expect(ask(null)).toEqual([]);
});

test('a group that is asked for has a letter on each of its parts, the same as in the whole key', () => {
  const board = drawn(dim('aIn', 10), dim('tie.bIn', 20), dim('tie.cIn', 30));
  expect(wordsIn(layOut(board, { locale: 'en', textSize: 9, asked: 'tie' }))).toEqual(['B', 'C']);
  expect(wordsIn(layOut(board, { locale: 'en', textSize: 9, letters: true }))).toEqual(['A', 'B', 'C']);
});

test('without words a drawing has neither labels nor the lines that lead to them', () => {
  const board = drawn(
    dim('aIn', 10),
    { point: [10, 10, 40, 40], of: 'kind' },
    { word: text('post', 'poste'), at: [5, 20] },
  );
  const marks = layOut(board, { locale: 'en' });
  expect(wordsIn(marks)).toEqual([]);
  expect(marks.filter((mark) => mark.pen === 'ink')).toEqual([]);
});

test('the file carries its title and the names of its dimensions as text, and no bare sign of markup', () => {
  const svg = drawingToSvg(
    { title: text('A board under 2" & over', 'Una tabla'), shapes: [dim('aIn', 10)] },
    { locale: 'en', labels: { aIn: 'Width < depth' } },
  );
  expect(svg).toContain('<title>A board under 2&quot; &amp; over</title>');
  expect(svg).toContain('<desc>A: Width &lt; depth</desc>');
  expect(svg).not.toMatch(/class=|style=/);
});

test('the file is in the language asked for', () => {
  expect(drawingToSvg(drawn(), { locale: 'es' })).toContain('<title>Una tabla</title>');
});
