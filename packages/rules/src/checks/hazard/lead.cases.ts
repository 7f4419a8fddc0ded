import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const SMALL = { yearBuilt: 1955, interiorSf: 4, exteriorSf: 0, demolition: false, windowReplaced: false } as const;
const RULE = '40 CFR 745.83 as read in EPA answers';

export const cases: readonly CheckCase[] = [
  {
    name: 'exactly 6 SF in a room and 20 SF outside is still a minor repair',
    origin: 'published',
    source: RULE,
    inputs: { ...SMALL, interiorSf: 6, exteriorSf: 20 },
    expect: { verdict: 'meets', ratio: 1, severity: 'record' },
  },
  {
    name: 'each room has its own 6 SF',
    origin: 'published',
    source: RULE,
    inputs: {
      ...SMALL,
      interiorSf: [
        { name: 'bath', areaSf: 5 },
        { name: 'hall', areaSf: 5 },
      ],
    },
    expect: { verdict: 'meets', ratio: 5 / 6, values: { largestRoomSf: 5 } },
  },
  {
    name: '8 SF in one room is over the limit: do not disturb, bring in a certified firm',
    origin: 'published',
    source: RULE,
    inputs: { ...SMALL, interiorSf: [4, 8] },
    expect: {
      verdict: 'fails',
      ratio: 8 / 6,
      severity: 'repair',
      referrals: ['specialist'],
      repairs: ['lead-safe-work'],
    },
  },
  {
    name: '8 SF on each of three outside walls is 24 SF and over the limit',
    origin: 'published',
    source: 'EPA answer 23002-18379: the sides are summed',
    inputs: { ...SMALL, exteriorSf: 24 },
    expect: { verdict: 'fails', ratio: 1.2, severity: 'repair' },
  },
  {
    name: 'tearing out painted surfaces is never a minor repair: stop',
    origin: 'published',
    source: 'EPA answer 23002-18515: hammering a hole is demolition',
    inputs: { yearBuilt: 1955, interiorSf: 2, exteriorSf: 0, demolition: true, windowReplaced: false },
    expect: { verdict: 'fails', ratio: null, severity: 'make-safe', referrals: ['specialist'] },
  },
  {
    name: 'replacing a window is never a minor repair',
    origin: 'published',
    source: RULE,
    inputs: { ...SMALL, windowReplaced: true },
    expect: { verdict: 'fails', ratio: null, severity: 'repair' },
  },
  {
    name: 'an unknown year is treated as old',
    origin: 'common-practice',
    source: 'unknown is treated as old',
    inputs: { ...SMALL, yearBuilt: undefined, interiorSf: 10 },
    expect: { verdict: 'fails', severity: 'repair', values: { treatAsOld: true } },
  },
  {
    name: 'a house of 1978 is outside the rule',
    origin: 'published',
    source: `${RULE}: housing built before 1978`,
    inputs: { yearBuilt: 1978 },
    expect: { verdict: 'not-applicable', severity: 'record' },
  },
  {
    name: 'without the areas an old house cannot be told, and is treated as lead until then',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { yearBuilt: 1977, demolition: false, windowReplaced: false },
    expect: { verdict: 'undetermined', missing: ['interiorSf', 'exteriorSf'], referrals: ['specialist'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'In a house of before the cut-off year, or of unknown year, disturbing more paint than a small job takes lead-safe work.',
  'En una casa anterior al año límite, o de año desconocido, alterar más pintura que un trabajo menor exige trabajo seguro con plomo.',
);

/** What the check answers. */
export const values: ValueWords = {
  treatAsOld: {
    label: text('Treated as old', 'Se trata como antigua'),
    how: text(
      'Built before the year of the rule, or of unknown age.',
      'Construida antes del año de la regla, o de edad desconocida.',
    ),
  },
  largestRoomSf: {
    label: text('Largest room area', 'Área del cuarto mayor'),
    how: text(
      'The largest painted surface disturbed in one room.',
      'La mayor superficie pintada alterada en un cuarto.',
    ),
  },
  exteriorSf: {
    label: text('Outside area', 'Área exterior'),
    how: text(
      'Painted surface disturbed outside, all sides together.',
      'Superficie pintada alterada afuera, todos los lados.',
    ),
  },
};
