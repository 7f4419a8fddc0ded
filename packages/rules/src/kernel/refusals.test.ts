import { expect, test } from 'vitest';
import { choice, count, flag, length, list, named, number } from './fields.ts';
import { inputReader } from './read-inputs.ts';
import { firstIssues, MOST_ISSUES, refuseLonger, refuseRest, refuseSameName } from './refusals.ts';
import { text } from './text.ts';

const label = text('Depth', 'Altura');
const wordsFor = (field: Parameters<typeof inputReader>[0][string], value: unknown) =>
  inputReader({ it: field })({ it: value }).issues[0]?.words;

test('a value its field cannot take is refused in the words of the trade', () => {
  expect(wordsFor(length({ unit: 'in', min: 2, max: 24, label }), 36)).toEqual(
    text('Depth: has to be between 2" and 24".', 'Altura: tiene que estar entre 2" y 24".'),
  );
  expect(wordsFor(length({ unit: 'ft', min: 0.5, max: 40, label }), -1)?.en).toBe(
    'Depth: has to be between 6" and 40\'-0".',
  );
  expect(wordsFor(length({ unit: 'in', min: 0.06, max: 0.244, label: text('Or: shank', 'O: vástago') }), 1)?.en).toBe(
    'Shank: has to be between 0.06 in and 0.244 in.',
  );
  expect(wordsFor(length({ unit: 'in', min: 0.5, max: 1, oneOf: [0.5, 0.625], label }), 2)?.es).toBe(
    'Altura: tiene que ser una de 1/2", 5/8".',
  );
  expect(wordsFor(number({ unit: 'lb', min: 0, max: 90_000, label }), 'much')?.en).toBe(
    'Depth: has to be between 0 lb and 90,000 lb, not "much".',
  );
  expect(wordsFor(count({ max: 12, label }), 1.5)?.en).toBe('Depth: has to be a whole number between 0 and 12.');
  expect(wordsFor(flag({ label: text('Wet?', '¿Mojado?') }), 'perhaps')?.es).toBe(
    'Mojado: tiene que ser sí, no o no se sabe, no "perhaps".',
  );
  expect(wordsFor(named({ label }), '')?.en).toBe('Depth: has to have 1 to 60 letters.');
  expect(wordsFor(choice({ options: [{ value: 'a', label }], label }), 'b')?.en).toBe(
    'Depth: has to be one of the answers offered, not "b".',
  );
});

test('a part longer than its whole says both, as far apart as they are', () => {
  const notch = { what: text('Notch', 'Muesca'), most: 3, ofWhat: text('the stud', 'el poste') };
  expect(refuseLonger(['notchIn'], { ...notch, came: 5 })[0]).toEqual({
    path: ['notchIn'],
    message: text(
      'notchIn: got 5 in; allowed is at most 3 in, the stud.',
      'notchIn: llegó 5 in; se permite hasta 3 in, el poste.',
    ),
    words: text('Notch: 5" is more than the stud, 3".', 'Muesca: 5" es más que el poste, 3".'),
  });
  expect(refuseLonger(['notchIn'], { ...notch, came: 3.001 })[0]?.words.en).toBe(
    'Notch: 3.001 in is more than the stud, 3 in.',
  );
  expect(refuseLonger(['notchIn'], { ...notch, came: 3 })).toEqual([]);
  expect(refuseLonger(['notchIn'], { ...notch, came: undefined })).toEqual([]);
});

const depth = { depthIn: length({ unit: 'in', min: 2, max: 24, label }) };

test('of many unknown names the first are named and the rest counted', () => {
  const raw = Object.fromEntries(Array.from({ length: 5000 }, (_, at) => [`name${at}`, at]));
  const { issues } = inputReader(depth)(raw);
  expect(issues).toHaveLength(MOST_ISSUES + 1);
  expect(issues[0]?.message.en).toBe('Unknown input name0; allowed are depthIn.');
  expect(issues.at(-1)?.message.en).toContain('4980 more');
});

test('a value that came is shown short, whatever its size', () => {
  const long = 'x'.repeat(100_000);
  for (const value of [long, [long], { long }, Array(5000).fill({})]) {
    const [issue] = inputReader(depth)({ depthIn: value }).issues;
    expect(Math.max(Number(issue?.message.en.length), Number(issue?.words.en.length))).toBeLessThan(160);
  }
  const [unknown] = inputReader(depth)({ [long]: 1 }).issues;
  expect(JSON.stringify(unknown).length).toBeLessThan(600);
});

test('a long list of empty items names no more missing than a person could measure', () => {
  const inner = list({ item: depth, label });
  const { missing } = inputReader({ walls: list({ item: { joists: inner }, label }) })({
    walls: Array(200).fill({ joists: Array(200).fill({}) }),
  });
  expect(missing).toHaveLength(200);
});

test('issues over those worded are counted', () => {
  const issues = Array.from({ length: 25 }, (_, at) => refuseSameName(['items', at, 'name'], 'A'));
  expect(firstIssues(issues)).toEqual([...issues.slice(0, 20), refuseRest(5)]);
  expect(firstIssues(issues.slice(0, 3))).toHaveLength(3);
});
