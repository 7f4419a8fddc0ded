import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const ONE_STORY = { weightLb: 40_000, stories: 1, sds: 1, system: 'bearing-wall' } as const;
const TWO_STORIES = { weightLb: 90_000, stories: 2, sds: 1, system: 'bearing-wall' } as const;
const ends = (wallFt: number, capacityPlf?: number) => [
  { name: 'A', positionFt: 0, wallFt, ...(capacityPlf !== undefined && { capacityPlf }) },
  { name: 'B', positionFt: 30, wallFt, ...(capacityPlf !== undefined && { capacityPlf }) },
];
const WORKED = { within: 0.5, reason: 'the worked loads are written to the pound and the shares to two decimals' };
const FORMULA = 'ASCE 7 12.14.8, V = F S_DS W / R, 0.7 E';

export const cases: readonly CheckCase[] = [
  {
    name: 'a one-story house of 40,000 lb: 6154 lb, 4308 by ASD, 179.5 plf on 12 ft of wall at each end',
    origin: 'memory',
    source: FORMULA,
    inputs: { ...ONE_STORY, lines: ends(12, 260) },
    expect: {
      verdict: 'meets',
      severity: 'record',
      referrals: ['engineer'],
      values: { baseShearLb: 6154, asdLb: 4308, 'lineLb.A': 2154, 'lineLb.B': 2154, 'linePlf.A': 179.5 },
    },
    tolerance: WORKED,
  },
  {
    name: 'that is 0.69 of a 260 plf wall',
    origin: 'memory',
    source: FORMULA,
    inputs: { ...ONE_STORY, lines: ends(12, 260) },
    expect: { verdict: 'meets', ratio: 0.69, values: { 'lineRatio.A': 0.69 } },
    tolerance: { within: 0.005, reason: 'the worked shares are written to two decimals' },
  },
  {
    name: 'a two-story house of 90,000 lb on 16 ft of wall at each end is 0.877 of 380 plf',
    origin: 'memory',
    source: `${FORMULA}, F 1.1`,
    inputs: { ...TWO_STORIES, lines: ends(16, 380) },
    expect: { verdict: 'meets', ratio: 0.877, values: { storyFactor: 1.1 } },
    tolerance: { within: 0.0005, reason: 'the worked shares are written to three decimals' },
  },
  {
    name: 'and takes 15,231 lb, 10,662 by ASD, 333 plf: over 260 plf it fails',
    origin: 'memory',
    source: `${FORMULA}, F 1.1`,
    inputs: { ...TWO_STORIES, lines: ends(16, 260) },
    expect: {
      verdict: 'fails',
      severity: 'engineer',
      repairs: ['engineer-letter'],
      values: { baseShearLb: 15_231, asdLb: 10_662, 'lineLb.A': 5331, 'linePlf.A': 333 },
    },
    tolerance: WORKED,
  },
  {
    name: 'walls of unknown nailing are compared with 260 plf and it cannot be told',
    origin: 'common-practice',
    source: 'the weakest likely wall, 15/32 with 8d at 6 in, 260 plf',
    inputs: { ...TWO_STORIES, lines: ends(16) },
    expect: {
      verdict: 'undetermined',
      missing: ['lines.0.capacityPlf', 'lines.1.capacityPlf'],
      values: { 'unverifiedRatio.A': 1.28 },
    },
    tolerance: { within: 0.005, reason: 'the worked shares are written to two decimals' },
  },
  {
    name: 'three lines equally far apart take 25, 50 and 25 percent, however they are listed',
    origin: 'hand-worked',
    source: 'half of the width to each neighbor',
    inputs: {
      ...ONE_STORY,
      lines: [
        { name: 'middle', positionFt: 15 },
        { name: 'left', positionFt: 0 },
        { name: 'right', positionFt: 30 },
      ],
    },
    expect: {
      verdict: 'undetermined',
      values: { 'tributaryShare.left': 0.25, 'tributaryShare.middle': 0.5, 'tributaryShare.right': 0.25 },
    },
  },
  {
    name: 'Ss 1.5 on soil is an S_DS of exactly 1.4',
    origin: 'second-hand',
    source: 'ASCE 7-22 12.14.8.1 (second-hand): (2/3) x 1.4 x 1.5',
    inputs: { weightLb: 40_000, stories: 1, ss: 1.5, site: 'soil', system: 'bearing-wall' },
    expect: { verdict: 'undetermined', missing: ['lines'], severity: 'record', values: { sds: 1.4 } },
  },
  {
    name: 'Ss over 1.5 counts as 1.5, on rock an S_DS of 1',
    origin: 'memory',
    source: 'ASCE 7 12.14.8.1, Ss need not exceed 1.5',
    inputs: { weightLb: 40_000, stories: 1, ss: 2.2, site: 'rock', system: 'bearing-wall' },
    expect: { verdict: 'undetermined', values: { sds: 1 } },
  },
  {
    name: 'gypsum and stucco take 6.5 / 2 times the load of panel walls',
    origin: 'second-hand',
    source: 'ASCE 7-16 Table 12.2-1 (second-hand), R 2.0',
    inputs: { ...ONE_STORY, system: 'other-panels' },
    expect: { verdict: 'undetermined', values: { responseFactor: 2, baseShearLb: 20_000, asdLb: 14_000 } },
  },
  {
    name: 'a frame has R 7 and importance 1.5 adds half',
    origin: 'second-hand',
    source: 'ASCE 7-16 Table 12.2-1 (second-hand), R 7.0; R / Ie',
    inputs: { ...ONE_STORY, weightLb: 70_000, system: 'building-frame', importance: 1.5 },
    expect: { verdict: 'undetermined', values: { baseShearLb: 15_000 } },
  },
  {
    name: 'a line exactly as strong as its load meets',
    origin: 'hand-worked',
    source: '65,000 x 0.7 / 6.5 / 2 / 10',
    inputs: { ...ONE_STORY, weightLb: 65_000, lines: ends(10, 350) },
    expect: { verdict: 'meets', ratio: 1 },
  },
  {
    name: 'a three-story house has F 1.2',
    origin: 'memory',
    source: 'ASCE 7 12.14.8.1',
    inputs: { ...ONE_STORY, stories: 3 },
    expect: { verdict: 'undetermined', values: { storyFactor: 1.2 } },
  },
  {
    name: 'four stories are past the simplified procedure',
    origin: 'memory',
    source: 'ASCE 7 12.14, up to three stories',
    inputs: { ...ONE_STORY, stories: 4 },
    expect: { verdict: 'not-applicable', severity: 'record', referrals: ['engineer'] },
  },
  {
    name: 'without S_DS or Ss it cannot be told',
    origin: 'hand-worked',
    source: 'no site, no load',
    inputs: { weightLb: 40_000, stories: 1, system: 'bearing-wall' },
    expect: { verdict: 'undetermined', missing: ['sds'] },
  },
];

export const rule = text(
  'A share of the weight, by site and bracing, pushes sideways; each wall line takes the width nearest to it.',
  'Una parte del peso, según sitio y arriostramiento, empuja de lado; cada línea toma el ancho más cercano.',
);

/** What the check answers. */
export const values: ValueWords = {
  sds: {
    label: text('S_DS', 'S_DS'),
    how: text('Given, or (2/3) Fa Ss, Ss at most 1.5.', 'Dado, o (2/3) Fa Ss, Ss hasta 1.5.'),
  },
  storyFactor: {
    label: text('Story factor F', 'Factor de pisos F'),
    how: text('1.0, 1.1, 1.2 for one, two, three stories.', '1.0, 1.1, 1.2 para uno, dos, tres pisos.'),
  },
  responseFactor: {
    label: text('Response factor R', 'Factor de respuesta R'),
    how: text('From the table, by bracing.', 'De la tabla, según arriostramiento.'),
  },
  baseShearLb: {
    label: text('Push at the base', 'Empuje en la base'),
    how: text('F x S_DS x weight x importance / R.', 'F x S_DS x peso x importancia / R.'),
  },
  asdLb: { label: text('The same by ASD', 'Lo mismo por ASD'), how: text('0.7 of it.', '0.7 de eso.') },
  tributaryShare: {
    label: text('Share of the line', 'Parte de la línea'),
    how: text('Half of the width to each neighbor, over the whole.', 'Mitad del ancho a cada vecina, entre el total.'),
  },
  lineLb: {
    label: text('Load on the line', 'Carga en la línea'),
    how: text('Share x ASD push.', 'Parte x empuje ASD.'),
  },
  linePlf: {
    label: text('Load per foot of wall', 'Carga por pie de pared'),
    how: text('Load / full-height wall.', 'Carga / pared de altura completa.'),
  },
  lineRatio: {
    label: text('Load over strength', 'Carga entre resistencia'),
    how: text('Load per foot / strength.', 'Carga por pie / resistencia.'),
  },
  unverifiedRatio: {
    label: text('Load over the weakest likely wall', 'Carga entre la pared probable más débil'),
    how: text('Load per foot / 260 plf; unverified.', 'Carga por pie / 260 plf; sin verificar.'),
  },
};
