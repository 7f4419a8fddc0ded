import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const ROUNDED = { within: 0.001, reason: 'the worked numbers are written to three decimals' };
const WORKED = 'least nut thickness of ASME B18.2.2 less the recess, by hand';

export const cases: readonly CheckCase[] = [
  {
    name: 'a 5/8 rod 1/8 in below the face of a hex nut keeps 0.766 of it and fails flush',
    origin: 'hand-worked',
    source: WORKED,
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -0.125, rule: 'flush' },
    expect: {
      verdict: 'fails',
      remaining: 0.766,
      ratio: 1.305,
      severity: 'engineer',
      values: {
        engagedIn: 0.41,
        engagedThreads: 4.51,
        geometricShare: 0.905,
        equalStrengthIn: 0.453,
        passesThreeQuarterNut: true,
        passesHalfNut: true,
      },
    },
    tolerance: ROUNDED,
  },
  {
    name: 'a 7/8 rod 1/4 in below the face keeps 0.655 and passes only the half-nut rule',
    origin: 'hand-worked',
    source: WORKED,
    inputs: { diameterIn: 0.875, nut: 'hex', projectionIn: -0.25, rule: 'flush' },
    expect: {
      verdict: 'fails',
      remaining: 0.655,
      values: { engagedIn: 0.474, geometricShare: 0.736, passesThreeQuarterNut: false, passesHalfNut: true },
    },
    tolerance: ROUNDED,
  },
  {
    name: 'a flush rod meets the flush rule exactly',
    origin: 'second-hand',
    source: 'RCSC 2.3.2 as quoted: flush with or past the outer face',
    inputs: { diameterIn: 0.75, nut: 'heavy-hex', projectionIn: 0, rule: 'flush' },
    expect: { verdict: 'meets', ratio: 1, remaining: 1, severity: 'record' },
  },
  {
    name: 'two threads of a 1/2 rod stand 2/13 in proud and meet two pitches exactly',
    origin: 'hand-worked',
    source: 'IFI two pitches, 13 threads to the inch',
    inputs: { diameterIn: 0.5, nut: 'hex', threadsShowing: 2, rule: 'two-pitches' },
    expect: { verdict: 'meets', ratio: 1, remaining: 1, values: { threadsBeyond: 2, passesThreeThreads: false } },
  },
  {
    name: 'two threads showing fail the three-thread habit but keep the whole nut',
    origin: 'common-practice',
    source: 'trade habit, three threads showing',
    inputs: { diameterIn: 0.5, nut: 'hex', threadsShowing: 2, rule: 'three-threads' },
    expect: { verdict: 'fails', remaining: 1, severity: 'repair', repairs: ['coupler-and-rod'] },
  },
  {
    name: 'a rod that fills less than half of the nut counts for nothing and goes to an engineer',
    origin: 'second-hand',
    source: 'AISC Design Guide 1, 2.11.3 as quoted: only if at least half is engaged',
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -0.3, rule: 'flush' },
    expect: { verdict: 'fails', remaining: 0, severity: 'engineer', referrals: ['engineer'] },
  },
  {
    name: 'exactly half of the nut still counts',
    origin: 'second-hand',
    source: 'AISC Design Guide 1, 2.11.3 as quoted: at least half',
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -0.2675, rule: 'flush' },
    expect: { verdict: 'fails', remaining: 0.5 },
  },
  {
    name: 'a heavy 3/4 nut filled by its rod would strip over 1.22 square inches of its thread',
    origin: 'second-hand',
    source: 'fastener reference, internal thread stripping area 1.72 square inches an inch, times 0.71 in',
    inputs: { diameterIn: 0.75, nut: 'heavy-hex', projectionIn: 0.5 },
    expect: { verdict: 'meets', values: { nutStripIn2: 1.2212 } },
    tolerance: { within: 0.004, reason: 'the reference prints the area of an inch to two decimals' },
  },
  {
    name: 'a 5/8 rod of ordinary steel may carry 6.67 kips in a full nut',
    origin: 'memory',
    source: 'AISC 360 Table J3.2, ASTM F1554 grade 36: 0.75 x 58 ksi x 0.3068 square inches over 2',
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: 0.25 },
    expect: { verdict: 'meets', values: { ordinaryRodLb: 6670 } },
    tolerance: { within: 5, reason: 'the worked number is written to ten pounds' },
  },
  {
    name: 'an end measured by tape beside the threads it shows is taken by the tape',
    origin: 'hand-worked',
    source: '2.75 pitches show two whole threads; 11 threads to the inch',
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: 0.25, threadsShowing: 2, rule: 'two-pitches' },
    expect: { verdict: 'meets', remaining: 1, values: { threadsBeyond: 2.75 } },
  },
  {
    name: 'without the nut it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { diameterIn: 0.625, projectionIn: 0, rule: 'flush' },
    expect: { verdict: 'undetermined', missing: ['nut'] },
  },
  {
    name: 'no thread showing does not tell whether the rod is flush or short',
    origin: 'hand-worked',
    source: 'the recess was not measured',
    inputs: { diameterIn: 0.625, nut: 'hex', threadsShowing: 0, rule: 'flush' },
    expect: { verdict: 'undetermined', missing: ['projectionIn'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'The rod fills its nut: it ends flush with the outer face, or as far past it as the chosen rule asks.',
  'La varilla llena su tuerca: termina a ras de la cara exterior, o tan afuera como pide la regla elegida.',
);

/** What the check answers. */
export const values: ValueWords = {
  threadsBeyond: {
    label: text('Threads past the nut', 'Hilos más allá de la tuerca'),
    how: text(
      'The rod end past the nut face, divided by the pitch.',
      'Lo que sobresale la varilla, dividido entre el paso.',
    ),
  },
  engagedIn: {
    label: text('Thread engaged', 'Rosca agarrada'),
    how: text('Least nut thickness, less the recess of the rod.', 'Grueso mínimo de la tuerca, menos lo hundido.'),
  },
  engagedThreads: {
    label: text('Threads engaged', 'Hilos agarrados'),
    how: text('Thread engaged, divided by the pitch.', 'Rosca agarrada, dividida entre el paso.'),
  },
  engagedShare: {
    label: text('Share of the nut engaged', 'Parte de la tuerca agarrada'),
    how: text(
      'Thread engaged, divided by the least nut thickness.',
      'Rosca agarrada, dividida entre el grueso mínimo.',
    ),
  },
  nutMinIn: {
    label: text('Nut, least thickness', 'Tuerca, grueso mínimo'),
    how: text('From the nut table, for the diameter and kind of nut.', 'De la tabla, según diámetro y tipo de tuerca.'),
  },
  rodStripIn2: {
    label: text('Rod thread that would strip', 'Rosca de la varilla que se barrería'),
    how: text(
      'Stripping area per inch of the rod thread, at its least, times the thread engaged.',
      'Área de barrido por pulgada de la varilla, la mínima, por la rosca agarrada.',
    ),
  },
  nutStripIn2: {
    label: text('Nut thread that would strip', 'Rosca de la tuerca que se barrería'),
    how: text('The same for the thread of the nut.', 'Lo mismo para la rosca de la tuerca.'),
  },
  equalStrengthIn: {
    label: text('Thread of equal strength', 'Rosca de igual resistencia'),
    how: text(
      'Twice the stress area of the rod, divided by its stripping area per inch.',
      'El doble del área de tensión, dividido entre el área de barrido por pulgada.',
    ),
  },
  ordinaryRodLb: {
    label: text('Tension of an ordinary rod', 'Tensión de una varilla común'),
    how: text(
      'If it is grade 36 steel, the whole nut engaged: 0.75 x 58,000 psi x gross area, halved. Not less the recess.',
      'Si es acero grado 36 y la tuerca está llena: 0.75 x 58,000 psi x área, entre dos. Sin descontar lo hundido.',
    ),
  },
  geometricShare: {
    label: text('Share by thread stripping', 'Parte según el barrido de hilos'),
    how: text(
      'Thread engaged, divided by the length at which rod and thread are equally strong.',
      'Rosca agarrada, dividida entre el largo en que varilla y rosca resisten igual.',
    ),
  },
  passesFlush: {
    label: text('Meets flush', 'Cumple a ras'),
    how: text('The rod end is at or past the nut face.', 'La punta está a ras o más allá.'),
  },
  passesTwoPitches: {
    label: text('Meets two pitches past', 'Cumple dos pasos'),
    how: text('The rod end is two pitches or more past the nut face.', 'La punta sobresale dos pasos o más.'),
  },
  passesThreeThreads: {
    label: text('Meets three threads past', 'Cumple tres hilos'),
    how: text('The rod end is three threads or more past the nut face.', 'La punta sobresale tres hilos o más.'),
  },
  passesThreeQuarterNut: {
    label: text('Fills three quarters of the nut', 'Llena tres cuartos de la tuerca'),
    how: text('Share engaged of 0.75 or more.', 'Parte agarrada de 0.75 o más.'),
  },
  passesHalfNut: {
    label: text('Fills half the nut', 'Llena media tuerca'),
    how: text('Share engaged of 0.5 or more.', 'Parte agarrada de 0.5 o más.'),
  },
};
