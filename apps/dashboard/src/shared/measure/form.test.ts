import { choice, count, group, length, text } from '@underlath/rules/kernel';
import { expect, test } from 'vitest';
import { askedInputs, firstOpenStep, isOptional, setAnswer, visibleFields, withDefaults } from './form.ts';

const fields = {
  way: choice({
    label: text('How', 'Cómo'),
    options: [
      { value: 'tape', label: text('Tape', 'Cinta') },
      { value: 'count', label: text('Count', 'Cuenta') },
    ],
    default: 'tape',
  }),
  projectionIn: length({
    label: text('Rod end', 'Punta'),
    unit: 'in',
    min: -2,
    max: 6,
    showWhen: { input: 'way', is: ['tape'] },
    needed: { when: { input: 'way', is: ['tape'] } },
  }),
  threads: count({ label: text('Threads', 'Roscas'), showWhen: { input: 'way', is: ['count'] }, needed: 'optional' }),
  counts: group({ label: text('Nails', 'Clavos'), fields: { flush: count({ label: text('Flush', 'Al ras') }) } }),
};

test('a default counts as an answer when the form decides what to ask', () => {
  expect(visibleFields(fields, {}).map((field) => field.name)).toEqual(['way', 'projectionIn', 'counts']);
  expect(visibleFields(fields, { way: 'count' }).map((field) => field.name)).toEqual(['way', 'threads', 'counts']);
});

test('a measurement made before the answer changed is not sent', () => {
  const inputs = { way: 'count', projectionIn: -0.25, threads: 3, counts: { flush: 4, gone: 1 } };
  expect(askedInputs(fields, inputs)).toEqual({ way: 'count', threads: 3, counts: { flush: 4 } });
});

test('a default that was seen and left is sent as an answer', () => {
  expect(askedInputs(fields, { projectionIn: 1 })).toEqual({ way: 'tape', projectionIn: 1 });
});

test('"I can\'t tell" takes the answer away instead of leaving a zero', () => {
  expect(setAnswer({ way: 'tape', projectionIn: 1 }, 'projectionIn', null)).toEqual({ way: 'tape' });
  expect(setAnswer({}, 'projectionIn', 0)).toEqual({ projectionIn: 0 });
});

test('a field needed only in another case is optional in this one', () => {
  expect(isOptional(fields.projectionIn, withDefaults(fields, {}))).toBe(false);
  expect(isOptional(fields.projectionIn, withDefaults(fields, { way: 'count' }))).toBe(true);
});

test('a draft goes on at its first open question', () => {
  expect(firstOpenStep(fields, {})).toBe(1);
  expect(firstOpenStep(fields, { projectionIn: 0.5 })).toBe(2);
  expect(firstOpenStep(fields, { projectionIn: 0.5, counts: { flush: 2 } })).toBe(2);
});
