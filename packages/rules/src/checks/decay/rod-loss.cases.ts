import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const WORKED = 'stress area pi/4 (D - 0.9743/n)^2, as quoted from a machinists handbook';
const stress = (diameterIn: number, threadsPerInch: number) => (diameterIn - 0.9743 / threadsPerInch) ** 2;

export const cases: readonly CheckCase[] = [
  {
    name: 'a whole 5/8 rod has the printed stress area of 0.226 square inches',
    origin: 'second-hand',
    source: 'UNC thread tables: 5/8-11, 0.226 in2',
    inputs: { diameterIn: 0.625, remainingIn: 0.625, pitted: false },
    expect: { verdict: 'meets', remaining: 1, severity: 'record', values: { newIn2: 0.226, areaRatio: 1 } },
    tolerance: { within: 0.0005, reason: 'the table prints three decimals' },
  },
  {
    name: 'a 5/8 rod rusted to 1/2 in keeps 0.59 of its tension and goes to an engineer',
    origin: 'hand-worked',
    source: `${WORKED}: (0.5 - 0.0886)^2 / (0.625 - 0.0886)^2`,
    inputs: { diameterIn: 0.625, remainingIn: 0.5, pitted: false },
    expect: {
      verdict: 'fails',
      ratio: 0.6113 / 0.5,
      remaining: stress(0.5, 11) / stress(0.625, 11),
      severity: 'engineer',
      referrals: ['engineer'],
    },
  },
  {
    name: 'a rod measuring exactly the least a new one may, 0.6113 in, meets',
    origin: 'second-hand',
    source: 'ASME B1.1 5/8-11 class 2A, table copy: least major diameter 0.6113',
    inputs: { diameterIn: 0.625, remainingIn: 0.6113, pitted: false },
    expect: { verdict: 'meets', ratio: 1, values: { leastNewIn: 0.6113 } },
  },
  {
    name: 'a 3/4 rod that lost 1/32 in keeps over 0.85 and is replaced without more',
    origin: 'hand-worked',
    source: `${WORKED}; severity table, rows 5 and 6`,
    inputs: { diameterIn: 0.75, remainingIn: 0.71875, pitted: false },
    expect: { verdict: 'fails', remaining: stress(0.71875, 10) / stress(0.75, 10), severity: 'repair' },
  },
  {
    name: 'deep pits fail whatever the calipers say',
    origin: 'common-practice',
    source: 'pits over 10% of the diameter are flagged',
    inputs: { diameterIn: 0.625, remainingIn: 0.625, pitted: true },
    expect: {
      verdict: 'fails',
      ratio: null,
      remaining: null,
      severity: 'engineer',
      repairs: ['rod-replace', 'coupler-and-rod', 'engineer-letter'],
    },
  },
  {
    name: 'a rod rusted through keeps nothing',
    origin: 'hand-worked',
    source: 'no steel, no area',
    inputs: { diameterIn: 0.5, remainingIn: 0, pitted: true },
    expect: { verdict: 'fails', ratio: null, remaining: 0, severity: 'engineer' },
  },
  {
    name: 'without the diameter left it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { diameterIn: 0.625, pitted: false },
    expect: { verdict: 'undetermined', missing: ['remainingIn'], severity: 'engineer' },
  },
];

/** What the rule asks. */
export const rule = text(
  'The rod still measures what a new one may; what rust took counts by the area left, and a deep pit goes to an engineer.',
  'La varilla aún mide lo que puede medir una nueva; lo oxidado cuenta por el área que queda, y una picadura honda va a un ingeniero.',
);

/** What the check answers. */
export const values: ValueWords = {
  areaRatio: {
    label: text('Tension area left', 'Área a tensión que queda'),
    how: text('Stress area left over that of a new rod.', 'Área que queda entre la de una varilla nueva.'),
  },
  leftIn2: {
    label: text('Stress area left', 'Área de esfuerzo que queda'),
    how: text(
      'Pi/4 times (diameter left - 0.9743/threads per inch) squared.',
      'Pi/4 por (diámetro que queda - 0.9743/hilos por pulgada) al cuadrado.',
    ),
  },
  newIn2: {
    label: text('Stress area when new', 'Área de esfuerzo nueva'),
    how: text('The same of the new diameter.', 'Lo mismo con el diámetro nuevo.'),
  },
  leastNewIn: {
    label: text('Least diameter of a new rod', 'Diámetro mínimo de una varilla nueva'),
    how: text('From the thread standard, class 2A.', 'De la norma de roscas, clase 2A.'),
  },
};
