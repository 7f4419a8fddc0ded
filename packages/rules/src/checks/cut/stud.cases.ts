import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const R602 = 'IRC 2018 R602.6';
const TWO_BY_4 = { depthIn: 3.5, bearing: true } as const;
const TWO_BY_6 = { depthIn: 5.5, bearing: true } as const;

export const cases: readonly CheckCase[] = [
  {
    name: 'a 2x4 bearing stud may be notched exactly 7/8 in, a quarter of its depth',
    origin: 'published',
    source: `${R602}: 25% of the depth`,
    inputs: { ...TWO_BY_4, notchIn: 0.875 },
    expect: { verdict: 'meets', ratio: 1, remaining: 1, severity: 'record', values: { notchLimitIn: 0.875 } },
  },
  {
    name: 'an inch of notch in it does not meet and goes to an engineer',
    origin: 'hand-worked',
    source: '1 / 0.875; (2.5 / 3.5)^2',
    inputs: { ...TWO_BY_4, notchIn: 1 },
    expect: { verdict: 'fails', ratio: 1 / 0.875, remaining: (2.5 / 3.5) ** 2, severity: 'engineer' },
  },
  {
    name: 'the same notch is allowed in a stud that carries nothing',
    origin: 'published',
    source: `${R602}: 40% where it does not bear, 1.40 in`,
    inputs: { depthIn: 3.5, bearing: false, notchIn: 1 },
    expect: { verdict: 'meets', ratio: 1 / 1.4, values: { notchLimitIn: 1.4, holeLimitIn: 2.1 } },
  },
  {
    name: 'a 2x4 bearing stud may be bored 1.40 in, 5/8 in from its edge',
    origin: 'published',
    source: `${R602}: 40% of the depth, 5/8 in at the edge`,
    inputs: { ...TWO_BY_4, holeIn: 1.4, edgeIn: 1.05 },
    expect: { verdict: 'meets', ratio: 1, values: { holeLimitIn: 1.4, edgeLimitIn: 0.625, edgeRatio: 0.625 / 1.05 } },
  },
  {
    name: 'two 2x4 studs nailed together may be bored 2.10 in with 0.70 in on each side',
    origin: 'published',
    source: `${R602}: 60% where doubled`,
    inputs: { ...TWO_BY_4, holeIn: 2.1, edgeIn: 0.7, doubled: true },
    expect: { verdict: 'meets', ratio: 1, values: { holeLimitIn: 2.1, edgeRatio: 0.625 / 0.7 } },
  },
  {
    name: 'that hole 0.1 in off the middle comes too near the edge',
    origin: 'hand-worked',
    source: '0.70 - 0.10 = 0.60 in against 5/8 in; 0.075 in is the most it may be off',
    inputs: { ...TWO_BY_4, holeIn: 2.1, edgeIn: 0.6, doubled: true },
    expect: { verdict: 'fails', ratio: 0.625 / 0.6 },
  },
  {
    name: 'a 2x6 bearing stud takes a notch of 1.375 in and a hole of 2.20 in',
    origin: 'published',
    source: `${R602}: 25 and 40% of 5.5 in`,
    inputs: { ...TWO_BY_6, notchIn: 1.375, holeIn: 2.2, edgeIn: 1.65, sameSection: false },
    expect: { verdict: 'meets', ratio: 1, values: { notchLimitIn: 1.375, holeLimitIn: 2.2 } },
  },
  {
    name: 'a doubled 2x6 takes a hole of 3.30 in',
    origin: 'published',
    source: `${R602}: 60% of 5.5 in`,
    inputs: { ...TWO_BY_6, holeIn: 3.3, edgeIn: 1.1, doubled: true },
    expect: { verdict: 'meets', ratio: 1, values: { holeLimitIn: 3.3 } },
  },
  {
    name: 'a hole at the height of a notch does not meet, however small both are',
    origin: 'published',
    source: `${R602}: not in the same section`,
    inputs: { ...TWO_BY_6, notchIn: 0.5, holeIn: 1, edgeIn: 2, sameSection: true },
    expect: { verdict: 'fails', ratio: null, remaining: 4 / 5.5 },
  },
  {
    name: 'the edge in IRC 2018 is at least 5/8 in though its print says the opposite',
    origin: 'published',
    source: 'IRC 2018 p. 203 prints "not more than"; IRC 2024 "not less than"',
    edition: 'irc-2018',
    inputs: { ...TWO_BY_4, holeIn: 1, edgeIn: 0.5 },
    expect: { verdict: 'fails', ratio: 1.25 },
  },
  {
    name: 'a stud cut through holds nothing: make safe',
    origin: 'common-practice',
    source: 'severity table, first row',
    inputs: { ...TWO_BY_4, notchIn: 3.5 },
    expect: { verdict: 'fails', remaining: 0, severity: 'make-safe' },
  },
  {
    name: 'a cut stud that carries nothing is repaired without an engineer',
    origin: 'common-practice',
    source: 'severity table, row 6',
    inputs: { depthIn: 3.5, bearing: false, notchIn: 2 },
    expect: { verdict: 'fails', severity: 'repair', repairs: ['stud-sister'] },
  },
  {
    name: 'the 2021 text was not read: the verdict asks to be confirmed',
    origin: 'memory',
    source: 'IRC 2021 R602.6, taken as unchanged',
    edition: 'irc-2021',
    inputs: { ...TWO_BY_4, notchIn: 0.875 },
    expect: { verdict: 'meets', referrals: ['engineer'] },
  },
  {
    name: 'a hole not measured from the edge cannot be told',
    origin: 'hand-worked',
    source: 'the edge is part of the rule',
    inputs: { ...TWO_BY_4, holeIn: 1 },
    expect: { verdict: 'undetermined', missing: ['edgeIn'], severity: 'engineer' },
  },
  {
    name: 'without notch or hole there is nothing to judge',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: TWO_BY_4,
    expect: { verdict: 'undetermined', missing: ['notchIn', 'holeIn'] },
  },
  {
    name: 'a stud without a cut meets',
    origin: 'hand-worked',
    source: 'no limit is passed',
    inputs: { ...TWO_BY_4, notchIn: 0, holeIn: 0 },
    expect: { verdict: 'meets', ratio: null, remaining: 1, values: { shareLeft: 1 } },
  },
  {
    name: 'an edge measured where there is no hole is no limit',
    origin: 'hand-worked',
    source: 'the 5/8 in belong to a hole',
    edition: 'irc-2018',
    inputs: { ...TWO_BY_4, notchIn: 0.5, edgeIn: 0.25 },
    expect: { verdict: 'meets', ratio: 0.5 / 0.875 },
  },
  {
    name: 'a notch and a hole cannot be told before it is known whether they share a section',
    origin: 'published',
    source: `${R602}: a hole is not at the section of a notch`,
    inputs: { ...TWO_BY_4, notchIn: 0.5, holeIn: 1, edgeIn: 1 },
    expect: { verdict: 'undetermined', remaining: null, missing: ['sameSection'] },
  },
  {
    name: 'apart from each other they meet',
    origin: 'published',
    source: `${R602}: 25% and 40% of the depth`,
    inputs: { ...TWO_BY_4, notchIn: 0.5, holeIn: 1, edgeIn: 1, sameSection: false },
    expect: { verdict: 'meets', remaining: 1 },
  },
];

/** What the rule asks. */
export const rule = text(
  "Notches and holes stay within shares of the stud's depth, smaller in a bearing stud, with wood left at the edge and never both in one place.",
  'Muescas y agujeros no pasan ciertas partes del ancho, menores si carga, con madera en el borde y nunca ambos en el mismo lugar.',
);

/** What the check answers. */
export const values: ValueWords = {
  notchLimitIn: {
    label: text('Notch allowed', 'Muesca permitida'),
    how: text('Depth times 25% where it bears, 40% where not.', 'Fondo por 25% si carga, 40% si no.'),
  },
  holeLimitIn: {
    label: text('Hole allowed', 'Perforación permitida'),
    how: text(
      'Depth times 40% where it bears, 60% doubled or where not.',
      'Fondo por 40% si carga, 60% si es doble o no carga.',
    ),
  },
  edgeLimitIn: {
    label: text('Wood beside the hole, at least', 'Madera junto a la perforación, al menos'),
    how: text('From the edition.', 'De la edición.'),
  },
  notchRatio: {
    label: text('Notch over allowed', 'Muesca entre permitida'),
    how: text('Notch, divided by the notch allowed.', 'Muesca, dividida entre la permitida.'),
  },
  holeRatio: {
    label: text('Hole over allowed', 'Perforación entre permitida'),
    how: text('Hole, divided by the hole allowed.', 'Perforación, dividida entre la permitida.'),
  },
  edgeRatio: {
    label: text('Edge asked over found', 'Canto pedido entre hallado'),
    how: text('5/8 in, divided by the wood found.', '5/8 in, dividido entre la madera hallada.'),
  },
  shareLeft: {
    label: text('Left at the worst cut', 'Queda en el peor corte'),
    how: text(
      'The least of bending beside the notch, (1 - notch/depth) squared, area beside the hole, and both together.',
      'El menor entre flexión en la muesca, (1 - muesca/fondo) al cuadrado, área junto a la perforación, y ambas.',
    ),
  },
};
