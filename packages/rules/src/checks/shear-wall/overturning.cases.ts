import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

/** 8 ft by 8 ft, 3,040 lb at the top, 150 plf of dead load. */
const WALL = { shearLb: 3040, heightFt: 8, lengthFt: 8, deadLoadPlf: 150 } as const;
const WIND = { ...WALL, deadFactor: 0.6 } as const;

export const cases: readonly CheckCase[] = [
  {
    name: 'in wind the end lifts with 2680 lb, and a hold-down of exactly that meets',
    origin: 'hand-worked',
    source: '(3040 x 8 - 0.6 x 150 x 8 x 8 / 2) / 8, SDPWS Eq. 4.3-7',
    inputs: { ...WIND, leverFt: 8, holdDownCapacityLb: 2680 },
    expect: {
      verdict: 'meets',
      ratio: 1,
      remaining: 1,
      severity: 'record',
      values: {
        overturningFtLb: 24320,
        deadMomentFtLb: 4800,
        resistingFtLb: 2880,
        upliftLb: 2680,
        leverFt: 8,
        holdDownLb: 2680,
      },
    },
  },
  {
    name: 'a lever of 7.5 ft makes it 2858.7 lb, and the same hold-down fails',
    origin: 'common-practice',
    source: 'lever of wall length less 6 in, city plan-check calculation; (24320 - 2880) / 7.5',
    inputs: { ...WIND, leverFt: 7.5, holdDownCapacityLb: 2680 },
    expect: { verdict: 'fails', remaining: 0.9375, referrals: ['engineer'], values: { upliftLb: 2858.7 } },
    tolerance: { within: 0.05, reason: 'the worked uplift is written to a tenth of a pound' },
  },
  {
    name: 'where the lever decides and was not measured it cannot be told',
    origin: 'common-practice',
    source: 'lever of wall length less 6 in, city plan-check calculation',
    inputs: { ...WIND, holdDownCapacityLb: 2700 },
    expect: { verdict: 'undetermined', missing: ['leverFt'], values: { upliftLb: 2680 } },
  },
  {
    name: 'where the usual lever holds too it meets without measuring it',
    origin: 'hand-worked',
    source: '2858.7 lb at 7.5 ft',
    inputs: { ...WIND, holdDownCapacityLb: 2859 },
    expect: { verdict: 'meets', values: { upliftLb: 2680 } },
  },
  {
    name: 'in an earthquake of S_DS 1.0 only 0.46 of the dead load counts: 2764 lb',
    origin: 'second-hand',
    source: 'city plan-check calculation, 0.6 - 0.14 S_DS; (24320 - 2208) / 8',
    inputs: { ...WALL, leverFt: 8, sds: 1, holdDownCapacityLb: 2700 },
    expect: { verdict: 'fails', ratio: 2764 / 2700, values: { deadFactor: 0.46, resistingFtLb: 2208, upliftLb: 2764 } },
  },
  {
    name: 'two stories add their moments: 4000 lb',
    origin: 'hand-worked',
    source: '(2000 x 8 + 3500 x 9 - 0.6 x 250 x 10 x 10 / 2) / 10',
    inputs: {
      shearLb: 3500,
      heightFt: 9,
      lengthFt: 10,
      leverFt: 10,
      deadLoadPlf: 250,
      deadFactor: 0.6,
      stories: [{ shearLb: 2000, heightFt: 8 }],
      holdDownCapacityLb: 4000,
    },
    expect: { verdict: 'meets', ratio: 1, values: { overturningFtLb: 47500, upliftLb: 4000 } },
  },
  {
    name: 'dead load of the story above may be given with it',
    origin: 'hand-worked',
    source: 'the same wall, 150 plf and 100 plf',
    inputs: {
      shearLb: 3500,
      heightFt: 9,
      lengthFt: 10,
      deadLoadPlf: 150,
      deadFactor: 0.6,
      stories: [{ shearLb: 2000, heightFt: 8, deadLoadPlf: 100 }],
    },
    expect: {
      verdict: 'undetermined',
      missing: ['holdDownCapacityLb'],
      values: { totalDeadLoadPlf: 250, upliftLb: 4000 },
    },
  },
  {
    name: 'a rod that fills 0.6 of its nut leaves 0.6 of the hold-down',
    origin: 'hand-worked',
    source: '2680 / (4000 x 0.6)',
    inputs: { ...WIND, leverFt: 8, holdDownCapacityLb: 4000, holdDownRemaining: 0.6 },
    expect: {
      verdict: 'fails',
      ratio: 2680 / 2400,
      remaining: 2400 / 2680,
      repairs: ['hold-down-new', 'rod-replace', 'engineer-letter'],
      values: { holdDownLb: 2400 },
    },
  },
  {
    name: 'a hold-down of which nothing is left fails with no ratio',
    origin: 'hand-worked',
    source: 'capacity x 0',
    inputs: { ...WIND, leverFt: 8, holdDownCapacityLb: 4000, holdDownRemaining: 0 },
    expect: { verdict: 'fails', ratio: null, remaining: 0, severity: 'engineer' },
  },
  {
    name: 'a long heavy wall needs no tie and meets without one',
    origin: 'second-hand',
    source: 'SDPWS Eq. 4.3-7 (second-hand), negative uplift; (8000 - 0.6 x 300 x 20 x 20 / 2) / 20',
    inputs: { shearLb: 1000, heightFt: 8, lengthFt: 20, deadLoadPlf: 300, deadFactor: 0.6 },
    expect: { verdict: 'meets', ratio: null, remaining: 1, severity: 'record', values: { upliftLb: -1400 } },
  },
  {
    name: 'an uplift of exactly zero needs no tie',
    origin: 'hand-worked',
    source: '360 x 8 = 0.6 x 150 x 8 x 8 / 2',
    inputs: { shearLb: 360, heightFt: 8, lengthFt: 8, deadLoadPlf: 150, deadFactor: 0.6 },
    expect: { verdict: 'meets', values: { upliftLb: 0 } },
  },
  {
    name: 'a share of dead load that is that of the site agrees with it',
    origin: 'hand-worked',
    source: '0.6 - 0.14 x 1',
    inputs: { ...WALL, deadFactor: 0.46, leverFt: 8, sds: 1, holdDownCapacityLb: 3000 },
    expect: { verdict: 'meets', values: { deadFactor: 0.46 } },
  },
  {
    name: 'where a story stands above and its wall was not given it cannot be told',
    origin: 'hand-worked',
    source: 'forces accumulate from above, SDPWS 4.3.6.4.4',
    inputs: { ...WIND, leverFt: 8, holdDownCapacityLb: 2680 },
    situation: { storiesAbove: 1 },
    expect: { verdict: 'undetermined', remaining: null, missing: ['stories'], severity: 'engineer' },
  },
  {
    name: 'where a story stands above and no wall of it on this one, it is judged alone',
    origin: 'hand-worked',
    source: 'an empty list says that nothing is stacked',
    inputs: { ...WIND, leverFt: 8, holdDownCapacityLb: 2680, stories: [] },
    situation: { storiesAbove: 1 },
    expect: { verdict: 'meets', remaining: 1 },
  },
  {
    name: 'a tie that is too weak is too weak whatever stands above',
    origin: 'hand-worked',
    source: '2000 / 2680',
    inputs: { ...WIND, leverFt: 8, holdDownCapacityLb: 2000 },
    situation: { storiesAbove: 1 },
    expect: { verdict: 'fails', remaining: 2000 / 2680, missing: [] },
  },
  {
    name: 'without a dead load factor or S_DS it cannot be told',
    origin: 'hand-worked',
    source: 'no share, no verdict',
    inputs: { ...WALL, holdDownCapacityLb: 3000 },
    expect: { verdict: 'undetermined', missing: ['deadFactor', 'sds'] },
  },
  {
    name: 'a wall whose dead load just holds it down needs no hold-down',
    origin: 'hand-worked',
    source: '600 x 8 = 0.6 x 250 x 8 x 8 / 2 = 4800 ft-lb',
    inputs: { shearLb: 600, heightFt: 8, lengthFt: 8, deadLoadPlf: 250, deadFactor: 0.6 },
    expect: { verdict: 'meets', remaining: 1, values: { overturningFtLb: 4800, resistingFtLb: 4800, upliftLb: 0 } },
  },
  {
    name: 'a wall that lifts, with a hold-down nobody has rated, cannot be told',
    origin: 'hand-worked',
    source: 'no capacity, no verdict',
    inputs: { ...WIND, leverFt: 8 },
    expect: { verdict: 'undetermined', remaining: null, missing: ['holdDownCapacityLb'], values: { upliftLb: 2680 } },
  },
  {
    name: 'a wall no longer than the usual offset of its hold-down is judged by its whole length',
    origin: 'hand-worked',
    source: '(100 x 8 - 0.6 x 150 x 0.5 x 0.5 / 2) / 0.5',
    inputs: { shearLb: 100, heightFt: 8, lengthFt: 0.5, deadLoadPlf: 150, deadFactor: 0.6, holdDownCapacityLb: 1600 },
    expect: { verdict: 'meets', values: { upliftLb: 1577.5 } },
  },
];

/** What the check answers. */
export const values: ValueWords = {
  overturningFtLb: {
    label: text('Overturning moment', 'Momento de vuelco'),
    how: text(
      'Shear times height, summed over this wall and those above.',
      'Cortante por altura, sumado hacia arriba.',
    ),
  },
  totalDeadLoadPlf: {
    label: text('Dead load, all stories', 'Carga muerta, todos los pisos'),
    how: text('This wall and those above.', 'Esta pared y las de arriba.'),
  },
  deadMomentFtLb: {
    label: text('Moment of the dead load', 'Momento de la carga muerta'),
    how: text('Dead load x length x length / 2.', 'Carga muerta x largo x largo / 2.'),
  },
  deadFactor: {
    label: text('Share of dead load counted', 'Parte contada de la carga muerta'),
    how: text('Given, or 0.6 - 0.14 S_DS.', 'Dada, o 0.6 - 0.14 S_DS.'),
  },
  resistingFtLb: {
    label: text('Resisting moment', 'Momento resistente'),
    how: text('Moment of the dead load times its share.', 'Momento de la carga muerta por su parte.'),
  },
  leverFt: {
    label: text('Lever', 'Palanca'),
    how: text('Measured, or the wall length.', 'Medida, o el largo de la pared.'),
  },
  upliftLb: {
    label: text('Uplift at the wall end', 'Levantamiento del extremo'),
    how: text(
      'Overturning less resisting moment, divided by the lever; zero or less needs no tie.',
      'Vuelco menos momento resistente, entre la palanca; cero o menos no necesita anclaje.',
    ),
  },
  holdDownLb: {
    label: text('Hold-down, what is left', 'Anclaje, lo que queda'),
    how: text('Published capacity times the share left.', 'Capacidad publicada por la parte que queda.'),
  },
};

export const rule = text(
  'What tips the wall, less the dead load that may be counted, must be held by the tie at its end.',
  'Lo que vuelca la pared, menos la carga muerta que puede contarse, lo debe sostener el anclaje del extremo.',
);
