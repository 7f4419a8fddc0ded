import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const SOUND = { lossTopIn: 0, lossBottomIn: 0, lossSideIn: 0, marginIn: 0 } as const;
const JOIST = { ...SOUND, widthIn: 1.5, depthIn: 9.25, role: 'bending' } as const;
const ROUNDED = { within: 0.0006, reason: 'the worked numbers are written to three decimals' };
const WORKED = 'ratios of a rectangle, by hand';

export const cases: readonly CheckCase[] = [
  {
    name: 'a 2x10 decayed down to a 2x8 keeps the ratio of their printed section properties',
    origin: 'second-hand',
    source:
      'Structural lumber properties, Engineering ToolBox table: 2x8 A 10.875, S 13.1, I 47.6; 2x10 A 13.875, S 21.4, I 98.9',
    inputs: { ...JOIST, lossBottomIn: 2 },
    expect: {
      verdict: 'fails',
      remaining: 13.1 / 21.4,
      values: { areaRatio: 10.875 / 13.875, momentRatio: 13.1 / 21.4, stiffnessRatio: 47.6 / 98.9 },
    },
    tolerance: { within: 0.003, reason: 'the table prints S and I to three digits: half a unit of 13.1 is 0.4%' },
  },
  {
    name: 'decay through exactly the whole depth leaves nothing',
    origin: 'hand-worked',
    source: '9.25 - 9.25 = 0',
    inputs: { ...JOIST, lossBottomIn: 9.25 },
    expect: { verdict: 'fails', remaining: 0, severity: 'make-safe' },
  },
  {
    name: 'a 2x10 that lost 1 in at the bottom keeps 0.892 of area, 0.795 of bending, 0.709 of stiffness',
    origin: 'hand-worked',
    source: WORKED,
    inputs: { ...JOIST, lossBottomIn: 1 },
    expect: {
      verdict: 'fails',
      ratio: null,
      remaining: 0.795,
      severity: 'engineer',
      values: { areaRatio: 0.892, momentRatio: 0.795, stiffnessRatio: 0.709 },
    },
    tolerance: ROUNDED,
  },
  {
    name: 'a 6x6 post with 1/2 in of shell rot keeps 0.669 of area but 0.448 against buckling: unsafe',
    origin: 'hand-worked',
    source: `${WORKED}; (4.5/5.5)^4`,
    inputs: { ...SOUND, widthIn: 5.5, depthIn: 5.5, role: 'post', lossTopIn: 0.5, lossBottomIn: 0.5, lossSideIn: 1 },
    expect: {
      verdict: 'fails',
      remaining: 0.448,
      severity: 'make-safe',
      values: { areaRatio: 0.669, bucklingRatio: 0.448 },
    },
    tolerance: ROUNDED,
  },
  {
    name: 'a 2x10 that lost 1/4 in of its width keeps 0.833 of everything',
    origin: 'hand-worked',
    source: WORKED,
    inputs: { ...JOIST, lossSideIn: 0.25 },
    expect: {
      verdict: 'fails',
      remaining: 0.833,
      values: { areaRatio: 0.833, momentRatio: 0.833, stiffnessRatio: 0.833 },
    },
    tolerance: ROUNDED,
  },
  {
    name: 'a 4x6 post that lost 1/2 in on every face keeps 0.584 of its area',
    origin: 'hand-worked',
    source: WORKED,
    inputs: { ...SOUND, widthIn: 3.5, depthIn: 5.5, role: 'post', lossTopIn: 0.5, lossBottomIn: 0.5, lossSideIn: 1 },
    expect: { verdict: 'fails', values: { areaRatio: 0.584 } },
    tolerance: ROUNDED,
  },
  {
    name: 'a contact 5.5 in wide that lost 2 in keeps 0.636 where it bears',
    origin: 'hand-worked',
    source: '3.5 / 5.5',
    inputs: { ...SOUND, widthIn: 5.5, depthIn: 1.5, role: 'bearing', lossSideIn: 2 },
    expect: { verdict: 'fails', remaining: 3.5 / 5.5, severity: 'engineer', values: { areaRatio: 3.5 / 5.5 } },
  },
  {
    name: 'the half-inch margin is taken beside every face that lost wood',
    origin: 'common-practice',
    source: '(9.25 - 1.5)^2 / 9.25^2',
    inputs: { ...JOIST, marginIn: undefined, lossBottomIn: 1 },
    expect: { verdict: 'fails', remaining: (7.75 / 9.25) ** 2, values: { leftDepthIn: 7.75 } },
  },
  {
    name: 'a beam 2-1/2 in wide with 1/4 in of rot on each side keeps 0.40: the margin counts at both sides',
    origin: 'hand-worked',
    source: '(2.5 - 0.5 - 2 x 0.5) / 2.5',
    inputs: { ...JOIST, widthIn: 2.5, lossSideIn: 0.5, marginIn: undefined },
    expect: { verdict: 'fails', remaining: 0.4, severity: 'make-safe', values: { leftWidthIn: 1, leftDepthIn: 9.25 } },
  },
  {
    name: 'known to be on one side only the same half inch costs one margin and keeps 0.60',
    origin: 'hand-worked',
    source: '(2.5 - 0.5 - 0.5) / 2.5',
    inputs: { ...JOIST, widthIn: 2.5, lossSideIn: 0.5, oneSideOnly: true, marginIn: undefined },
    expect: { verdict: 'fails', remaining: 0.6, severity: 'engineer', values: { leftWidthIn: 1.5 } },
  },
  {
    name: 'a 6x6 post with 1/2 in of shell rot all around is counted as 3-1/2 in square',
    origin: 'hand-worked',
    source: '5.5 - 2 x 0.5 - 2 x 0.5 = 3.5; (3.5 / 5.5)^4 against buckling',
    inputs: {
      ...SOUND,
      widthIn: 5.5,
      depthIn: 5.5,
      role: 'post',
      lossTopIn: 0.5,
      lossBottomIn: 0.5,
      lossSideIn: 1,
      marginIn: undefined,
    },
    expect: {
      verdict: 'fails',
      remaining: (3.5 / 5.5) ** 4,
      severity: 'make-safe',
      values: { leftWidthIn: 3.5, leftDepthIn: 3.5 },
    },
  },
  {
    name: 'a member rotten through leaves nothing: unsafe',
    origin: 'hand-worked',
    source: 'nothing left, nothing counted',
    inputs: { ...JOIST, lossTopIn: 5, lossBottomIn: 4, marginIn: 0.5 },
    expect: { verdict: 'fails', remaining: 0, severity: 'make-safe' },
  },
  {
    name: 'a sound member meets',
    origin: 'hand-worked',
    source: 'no loss is the limit',
    inputs: JOIST,
    expect: { verdict: 'meets', remaining: 1, severity: 'record', values: { areaRatio: 1 } },
  },
  {
    name: 'without the depth of the rot it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { ...JOIST, lossTopIn: undefined },
    expect: { verdict: 'undetermined', missing: ['lossTopIn'], severity: 'engineer' },
  },
  {
    name: 'decay at the top alone counts',
    origin: 'hand-worked',
    source: '(8.25 / 9.25)^2',
    inputs: { ...JOIST, lossTopIn: 1 },
    expect: { verdict: 'fails', remaining: (8.25 / 9.25) ** 2, referrals: ['engineer'] },
  },
  {
    name: 'decay at the side alone counts: half of the width leaves half',
    origin: 'hand-worked',
    source: '0.75 / 1.5',
    inputs: { ...JOIST, lossSideIn: 0.75 },
    expect: { verdict: 'fails', remaining: 0.5, severity: 'engineer' },
  },
  {
    name: 'a beam decayed to a quarter of its bending strength is unsafe now',
    origin: 'common-practice',
    source: 'severity table, a beam under one half; (4.625 / 9.25)^2',
    inputs: { ...JOIST, lossBottomIn: 4.625 },
    situation: { memberKind: 'beam' },
    expect: { verdict: 'fails', remaining: 0.25, severity: 'make-safe' },
  },
  {
    name: 'one joist of a floor decayed as far goes to an engineer',
    origin: 'common-practice',
    source: 'severity table, one joist of a floor',
    inputs: { ...JOIST, lossBottomIn: 4.625 },
    situation: { memberKind: 'joist' },
    expect: { verdict: 'fails', remaining: 0.25, severity: 'engineer' },
  },
  {
    name: 'what bends and is not known to be one of many counts as a beam',
    origin: 'common-practice',
    source: 'severity table: the unknown is taken cautiously',
    inputs: { ...JOIST, lossBottomIn: 4.625 },
    situation: { memberKind: 'plate' },
    expect: { verdict: 'fails', remaining: 0.25, severity: 'make-safe' },
  },
];

/** What the rule asks. */
export const rule = text(
  'Decayed wood counts for nothing, nor does a margin beside it; what is left is judged by its area, depth and width.',
  'La madera podrida no cuenta, ni un margen a su lado; lo que queda se juzga por su área, peralte y ancho.',
);

/** What the check answers. */
export const values: ValueWords = {
  leftWidthIn: {
    label: text('Width left', 'Ancho que queda'),
    how: text(
      'Width, less the loss at the sides and a margin for each side that lost wood.',
      'Ancho, menos la pérdida lateral y un margen por cada lado que perdió madera.',
    ),
  },
  leftDepthIn: {
    label: text('Depth left', 'Altura que queda'),
    how: text(
      'Depth, less each loss at top and bottom with its margin.',
      'Altura, menos cada pérdida arriba y abajo con su margen.',
    ),
  },
  areaRatio: {
    label: text('Section left', 'Sección que queda'),
    how: text(
      'Width left times depth left, over the sound section.',
      'Ancho por altura que quedan, entre la sección sana.',
    ),
  },
  momentRatio: {
    label: text('Bending strength left', 'Resistencia a flexión que queda'),
    how: text(
      'Share of the width times the square of the share of the depth.',
      'Parte del ancho por el cuadrado de la parte de la altura.',
    ),
  },
  stiffnessRatio: {
    label: text('Stiffness left', 'Rigidez que queda'),
    how: text(
      'Share of the width times the cube of the share of the depth.',
      'Parte del ancho por el cubo de la parte de la altura.',
    ),
  },
  bucklingRatio: {
    label: text('Buckling strength left', 'Resistencia al pandeo que queda'),
    how: text(
      'The weaker way: one side times the cube of the other, over the sound one.',
      'En el sentido débil: un lado por el cubo del otro, entre el sano.',
    ),
  },
};
