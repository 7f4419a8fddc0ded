import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

/** 16 ft wall, 8 ft high, one 4 ft door 80 in high in its middle. */
const DOOR = {
  lengthFt: 16,
  heightFt: 8,
  segmentsFt: [6, 6],
  openings: [{ widthFt: 4, heightFt: 80 / 12 }],
  designPlf: 380,
} as const;
const FOUR = { within: 0.00005, reason: 'the worked factors are written to four decimals' };
const PRINTED = { within: 0.005, reason: 'the table prints two decimals' };

export const cases: readonly CheckCase[] = [
  {
    name: 'a door in a 16 ft wall leaves 0.7273 of its two 6 ft parts',
    origin: 'hand-worked',
    source: 'SDPWS Eq. 4.3-5: r = 1 / (1 + 26.667 / 96), r / (3 - 2r) x 16 / 12',
    inputs: DOOR,
    expect: {
      verdict: 'undetermined',
      severity: 'record',
      missing: ['shearLb'],
      values: { openingFactor: 0.7273, effectiveLengthFt: 12 },
    },
    tolerance: FOUR,
  },
  {
    name: 'it is worth 3316 lb; 2500 lb make 286.5 plf and lift its ends with 2292 lb',
    origin: 'hand-worked',
    source: '380 x 12 x 8 / 11; 2500 x 11 / (12 x 8); x 8 ft',
    inputs: { ...DOOR, shearLb: 2500 },
    expect: {
      verdict: 'meets',
      remaining: 1,
      values: { capacityLb: (380 * 12 * 8) / 11, maxShearPlf: (2500 * 11) / 96, upliftLb: (2500 * 11) / 12 },
    },
  },
  {
    name: 'the printed table gives 0.80 for half full height and openings half the wall high',
    origin: 'second-hand',
    source: 'SDPWS 2015 Table 4.3.3.5 (second-hand), 50%, h/2',
    inputs: { lengthFt: 20, heightFt: 8, segmentsFt: [5, 5], openings: [{ widthFt: 10, heightFt: 4 }], designPlf: 100 },
    expect: { verdict: 'undetermined', values: { openingFactor: 0.8, capacityLb: 800 } },
  },
  {
    name: 'the printed table gives 0.56 for 60% full height and openings as high as the wall',
    origin: 'second-hand',
    source: 'SDPWS 2015 Table 4.3.3.5 (second-hand), 60%, h',
    inputs: { lengthFt: 20, heightFt: 8, segmentsFt: [6, 6], openings: [{ widthFt: 8, heightFt: 8 }], designPlf: 100 },
    expect: { verdict: 'undetermined', values: { openingFactor: 0.56 } },
    tolerance: PRINTED,
  },
  {
    name: 'an opening a third of the wall high takes nothing, and its whole strength exactly meets',
    origin: 'second-hand',
    source: 'SDPWS 2015 Table 4.3.3.5 (second-hand), 50%, h/3',
    inputs: {
      lengthFt: 20,
      heightFt: 9,
      segmentsFt: [5, 5],
      openings: [{ widthFt: 10, heightFt: 3 }],
      designPlf: 100,
      shearLb: 1000,
    },
    expect: { verdict: 'meets', ratio: 1, remaining: 1, severity: 'record', values: { openingFactor: 1 } },
  },
  {
    name: 'a 4 ft part 9 ft high counts 3.556 ft; with two windows the factor is 0.9153',
    origin: 'hand-worked',
    source: 'SDPWS Eq. 4.3-5, 4.3-6: 6 + 4 x 8 / 9 + 6; 32 sf of openings; 24 ft',
    inputs: {
      lengthFt: 24,
      heightFt: 9,
      segmentsFt: [6, 4, 6],
      openings: [
        { widthFt: 4, heightFt: 4 },
        { widthFt: 4, heightFt: 4 },
      ],
      designPlf: 380,
    },
    expect: {
      verdict: 'undetermined',
      values: { effectiveLengthFt: 6 + 32 / 9 + 6, openingAreaSf: 32, openingFactor: 0.9153 },
    },
    tolerance: FOUR,
  },
  {
    name: 'asked for more than it is worth it fails',
    origin: 'hand-worked',
    source: '4000 / 3316.4',
    inputs: { ...DOOR, shearLb: 4000 },
    expect: { verdict: 'fails', ratio: 1.206, remaining: 0.829, severity: 'engineer', referrals: ['engineer'] },
    tolerance: { within: 0.0005, reason: 'the worked shares are written to three decimals' },
  },
  {
    name: 'a wall that ends at a door counts for nothing by this method',
    origin: 'second-hand',
    source: 'SDPWS 2021 4.3.2.3 (second-hand): a full-height segment at each end',
    inputs: { lengthFt: 12, heightFt: 8, segmentsFt: [8], openings: [{ widthFt: 4, heightFt: 6 }], designPlf: 380 },
    expect: { verdict: 'fails', ratio: null, remaining: 0, severity: 'engineer', values: { capacityLb: 0 } },
  },
  {
    name: 'an end part over 3.5 times as high as long is none',
    origin: 'second-hand',
    source: 'SDPWS 2021 4.3.2.3 (second-hand): h/b up to 3.5',
    inputs: {
      lengthFt: 12,
      heightFt: 8,
      segmentsFt: [6, 2],
      openings: [{ widthFt: 4, heightFt: 6 }],
      designPlf: 380,
      shearLb: 500,
    },
    expect: { verdict: 'fails', remaining: 0, values: { effectiveLengthFt: 6 } },
  },
  {
    name: 'with as many openings as parts it asks whether the ends are full height',
    origin: 'hand-worked',
    source: 'two parts and two openings: one opening may stand at an end',
    inputs: {
      lengthFt: 20,
      heightFt: 8,
      segmentsFt: [6, 6],
      openings: [
        { widthFt: 4, heightFt: 4 },
        { widthFt: 4, heightFt: 4 },
      ],
      designPlf: 380,
      shearLb: 100,
    },
    expect: { verdict: 'undetermined', missing: ['fullHeightEnds'] },
  },
  {
    name: 'asked for too much as well, nothing of it is counted until its ends are seen',
    origin: 'hand-worked',
    source: '380 plf x 12 ft = 4560 lb at most; 10,000 lb is over any strength it may have',
    inputs: {
      lengthFt: 20,
      heightFt: 8,
      segmentsFt: [6, 6],
      openings: [
        { widthFt: 4, heightFt: 4 },
        { widthFt: 4, heightFt: 4 },
      ],
      designPlf: 380,
      shearLb: 10_000,
    },
    expect: { verdict: 'fails', remaining: 0, severity: 'engineer', missing: [] },
  },
  {
    name: 'the same wall seen to be full height at both ends meets',
    origin: 'hand-worked',
    source: 'as answered',
    inputs: {
      lengthFt: 20,
      heightFt: 8,
      segmentsFt: [6, 6],
      openings: [
        { widthFt: 4, heightFt: 4 },
        { widthFt: 4, heightFt: 4 },
      ],
      designPlf: 380,
      shearLb: 100,
      fullHeightEnds: true,
    },
    expect: { verdict: 'meets' },
  },
  {
    name: 'a wall over 20 ft high is past the method',
    origin: 'second-hand',
    source: 'SDPWS 2021 4.3.2.3 (second-hand): height up to 20 ft',
    inputs: { ...DOOR, lengthFt: 40, segmentsFt: [18, 18], heightFt: 21, shearLb: 100 },
    expect: { verdict: 'fails', remaining: 0, severity: 'engineer' },
  },
  {
    name: 'exactly 20 ft high is within it',
    origin: 'second-hand',
    source: 'SDPWS 2021 4.3.2.3 (second-hand): height up to 20 ft',
    inputs: { ...DOOR, lengthFt: 40, segmentsFt: [18, 18], heightFt: 20, shearLb: 100 },
    expect: { verdict: 'meets' },
  },
  {
    name: 'without the strength of its panels it cannot be told',
    origin: 'hand-worked',
    source: 'no strength, no verdict',
    inputs: { ...DOOR, designPlf: undefined },
    expect: { verdict: 'undetermined', missing: ['designPlf'] },
  },
  {
    name: 'a wall asked for nothing keeps all of it',
    origin: 'hand-worked',
    source: 'no load',
    inputs: { ...DOOR, shearLb: 0 },
    expect: { verdict: 'meets', remaining: 1 },
  },
];

export const rule = text(
  'Full-height parts share the load; the openings lower what they are worth together by one factor.',
  'Las partes completas se reparten la carga; las aberturas bajan su valor conjunto con un solo factor.',
);

/** What the check answers. */
export const values: ValueWords = {
  effectiveLengthFt: {
    label: text('Full-height length that counts', 'Largo completo que cuenta'),
    how: text(
      'Sum of the parts; one over twice as high as long counts times 2 x length / height, one over 3.5 not at all.',
      'Suma de las partes; una más de dos veces más alta que larga cuenta por 2 x largo / altura, sobre 3.5 nada.',
    ),
  },
  openingAreaSf: {
    label: text('Area of the openings', 'Área de las aberturas'),
    how: text(
      'Width x height, the height at least a third of the wall.',
      'Ancho x altura, al menos un tercio de la pared.',
    ),
  },
  openingFactor: {
    label: text('Opening factor', 'Factor de aberturas'),
    how: text(
      'r = 1 / (1 + area / (wall height x counted length)); r / (3 - 2r) x wall length / counted length, at most 1.',
      'r = 1 / (1 + área / (altura x largo contado)); r / (3 - 2r) x largo de la pared / largo contado, hasta 1.',
    ),
  },
  capacityLb: {
    label: text('Strength of the wall', 'Resistencia de la pared'),
    how: text(
      'Panel strength x factor x counted length; 0 outside the method.',
      'Resistencia del panel x factor x largo contado; 0 fuera del método.',
    ),
  },
  maxShearPlf: {
    label: text('Largest shear in a part', 'Mayor cortante en una parte'),
    how: text('Shear / (factor x counted length).', 'Cortante / (factor x largo contado).'),
  },
  upliftLb: {
    label: text('Uplift at each end', 'Levantamiento en cada extremo'),
    how: text('Largest shear x wall height.', 'Mayor cortante x altura.'),
  },
};
