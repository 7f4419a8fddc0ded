import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const ROUNDED = { within: 0.0006, reason: 'the worked numbers are written to three decimals' };
const joist = (name: string, more: object) => ({ name, kind: 'sawn', grain: 'mixed', sizeIn: 9.25, ...more });

export const cases: readonly CheckCase[] = [
  {
    name: 'a 2x12 of mixed grain drying from 19 to 9% loses 0.281 in',
    origin: 'hand-worked',
    source: '11.25 x 0.0025 x 10, AWC 1% for 4%',
    inputs: { members: [joist('joist A', { sizeIn: 11.25, fromPct: 19, toPct: 9 })] },
    expect: {
      verdict: 'undetermined',
      missing: ['toleranceIn'],
      severity: 'record',
      values: { 'changeIn.joist A': -0.281 },
    },
    tolerance: ROUNDED,
  },
  {
    name: 'by 0.0020 per percent the same 2x12 loses 0.225 in: the sources disagree',
    origin: 'second-hand',
    source: 'university notes, 6% over 30%: 11.25 x 0.0020 x 10',
    inputs: {
      members: [joist('joist A', { sizeIn: 11.25, fromPct: 19, toPct: 9 })],
      mixedGrainRule: '0.0020',
      toleranceIn: 0.25,
    },
    expect: { verdict: 'meets', values: { 'changeIn.joist A': -0.225, 'method.joist A': 'rule-of-thumb' } },
  },
  {
    name: 'by the grading-rule equation it loses 0.247 in',
    origin: 'second-hand',
    source: 'FPL-RP-489 abstract, width 6.031 - 0.215 M: 11.25 (1 - 0.95904 / 0.98054)',
    inputs: {
      members: [joist('joist A', { sizeIn: 11.25, fromPct: 19, toPct: 9 })],
      mixedGrainRule: 'grading-rule',
      toleranceIn: 0.25,
    },
    expect: { verdict: 'meets', values: { 'changeIn.joist A': -0.247, 'method.joist A': 'grading-rule' } },
    tolerance: ROUNDED,
  },
  {
    name: 'flat-grained coast Douglas fir loses 0.293 in, a little less than its coefficient says outside 6 to 14%',
    origin: 'hand-worked',
    source: '11.25 x 10 / (3000/7.6 - 30 + 19); the coefficient alone gives 11.25 x 0.00267 x 10 = 0.300',
    inputs: {
      members: [
        joist('joist A', { sizeIn: 11.25, grain: 'tangential', species: 'douglas-fir-coast', fromPct: 19, toPct: 9 }),
      ],
      toleranceIn: 0.3,
    },
    expect: {
      verdict: 'meets',
      values: { 'changeIn.joist A': -0.293, 'method.joist A': 'equation-13-3' },
      referrals: ['official'],
    },
    tolerance: ROUNDED,
  },
  {
    name: 'a 2x12 and three plates, 15.75 in, drying from 19 to 9% lose 0.394 in',
    origin: 'hand-worked',
    source: '15.75 x 0.0025 x 10',
    inputs: { members: [joist('floor', { sizeIn: 15.75, fromPct: 19, toPct: 9 })], toleranceIn: 0.5 },
    expect: { verdict: 'meets', values: { 'changeIn.floor': -0.394, differentialIn: 0.394 } },
    tolerance: ROUNDED,
  },
  {
    name: 'a green coast Douglas fir 2x10 drying from 28 to 9% loses 0.4475 in by Equation 13-3',
    origin: 'hand-worked',
    source: '9.25 x 19 / (3000/7.6 - 30 + 28); the equation is from memory',
    inputs: {
      members: [joist('joist A', { grain: 'tangential', species: 'douglas-fir-coast', fromPct: 28, toPct: 9 })],
    },
    expect: {
      verdict: 'undetermined',
      missing: ['toleranceIn'],
      values: { 'changeIn.joist A': -0.4475, 'method.joist A': 'equation-13-3' },
    },
    tolerance: { within: 0.00005, reason: 'the worked number is written to four decimals' },
  },
  {
    name: 'inside 6 to 14% coast Douglas fir moves 0.00267 of its size per percent',
    origin: 'second-hand',
    source: 'Wood Handbook Table 13-5, coefficient 0.00267: 10 x 0.00267 x 8',
    inputs: {
      members: [
        joist('joist A', { sizeIn: 10, grain: 'tangential', species: 'douglas-fir-coast', fromPct: 14, toPct: 6 }),
      ],
    },
    expect: {
      verdict: 'undetermined',
      missing: ['toleranceIn'],
      values: { 'changeIn.joist A': -0.2136, 'method.joist A': 'linear-coefficient' },
    },
    tolerance: { within: 0.0005, reason: 'the table prints three digits of the coefficient' },
  },
  {
    name: 'a sawn 2x10 beside an I-joist, 19 to 8%, differs by 0.19 in, 1/83 over 16 in',
    origin: 'hand-worked',
    source: '9.25 x 0.0025 x 11 less 1/16 in',
    inputs: {
      members: [
        joist('joist A', { fromPct: 19, toPct: 8 }),
        { name: 'joist B', kind: 'i-joist', sizeIn: 9.5, fromPct: 12, toPct: 8 },
      ],
      spacingIn: 16,
      toleranceIn: 0.125,
    },
    expect: {
      verdict: 'fails',
      ratio: 1.535,
      severity: 'repair',
      values: {
        'changeIn.joist A': -0.254,
        'changeIn.joist B': -0.0625,
        differentialIn: 0.192,
        slope: 0.012,
      },
      repairs: ['re-shim', 'member-replace'],
    },
    tolerance: ROUNDED,
  },
  {
    name: 'the same step over 48 in is 1/250',
    origin: 'hand-worked',
    source: '48 / (9.25 x 0.0025 x 11 - 1/16)',
    inputs: {
      members: [
        joist('joist A', { fromPct: 19, toPct: 8 }),
        { name: 'joist B', kind: 'i-joist', sizeIn: 9.5, fromPct: 12, toPct: 8 },
      ],
      spacingIn: 48,
      toleranceIn: 0.25,
    },
    expect: { verdict: 'meets', values: { differentialIn: 0.191875, slopeOneIn: 48 / 0.191875 } },
  },
  {
    name: 'air at 70 F and 50% brings wood to 9.2%, at 40 F and 80% to 16.5%',
    origin: 'second-hand',
    source: 'Wood Handbook Table 4-2, rows 70 F and 40 F',
    inputs: {
      members: [
        joist('joist A', {
          fromAir: { temperatureF: 70, humidityPct: 50 },
          toAir: { temperatureF: 40, humidityPct: 80 },
        }),
      ],
    },
    expect: {
      verdict: 'undetermined',
      missing: ['toleranceIn'],
      values: { 'fromPct.joist A': 9.2, 'toPct.joist A': 16.5 },
    },
    tolerance: { within: 0.06, reason: 'the table prints one decimal; the equation gives 9.25 at 70 F and 50%' },
  },
  {
    name: 'a 2x10 from 70 F 50% to 50 F 80% swells 0.165 in',
    origin: 'hand-worked',
    source: '0.0025 x 7.14 x 9.25, moisture 9.25 to 16.39%',
    inputs: {
      members: [
        joist('joist A', {
          fromAir: { temperatureF: 70, humidityPct: 50 },
          toAir: { temperatureF: 50, humidityPct: 80 },
        }),
      ],
      toleranceIn: 0.125,
    },
    expect: { verdict: 'fails', severity: 'repair', values: { 'changeIn.joist A': 0.165 } },
    tolerance: ROUNDED,
  },
  {
    name: 'a difference equal to the tolerance meets',
    origin: 'hand-worked',
    source: '10 x 0.0025 x 5 = 0.125',
    inputs: {
      members: [
        joist('joist A', { sizeIn: 10, fromPct: 13, toPct: 8 }),
        joist('joist B', { sizeIn: 10, fromPct: 8, toPct: 8 }),
      ],
      toleranceIn: 0.125,
    },
    expect: { verdict: 'meets', ratio: 1, severity: 'record' },
  },
  {
    name: 'flat grain of an unnamed species cannot be told',
    origin: 'hand-worked',
    source: 'no species, no coefficient',
    inputs: { members: [joist('joist A', { grain: 'tangential', fromPct: 19, toPct: 9 })], toleranceIn: 0.125 },
    expect: { verdict: 'undetermined', missing: ['members.0.species'] },
  },
  {
    name: 'an 8 ft panel taken from 50 to 90% humidity at 70 F grows 0.48 in',
    origin: 'memory',
    source: 'PS 2 linear expansion about 0.5%, not read: 96 x 0.005',
    inputs: {
      members: [
        {
          name: 'panel',
          kind: 'panel',
          sizeIn: 96,
          fromAir: { temperatureF: 70, humidityPct: 50 },
          toAir: { temperatureF: 70, humidityPct: 90 },
        },
      ],
      toleranceIn: 0.5,
    },
    expect: { verdict: 'meets', values: { 'changeIn.panel': 0.48, 'method.panel': 'panel-expansion' } },
  },
  {
    name: 'an LVL that dries and an I-joist that wets part by 1/8 in, whatever their depth',
    origin: 'common-practice',
    source: 'made dry; a change of depth of 1/16 in each way',
    inputs: {
      members: [
        { name: 'lvl', kind: 'lvl', sizeIn: 16, fromPct: 12, toAir: { temperatureF: 70, humidityPct: 30 } },
        { name: 'joist', kind: 'i-joist', sizeIn: 9.5, fromPct: 8, toPct: 12 },
      ],
      toleranceIn: 0.125,
    },
    expect: {
      verdict: 'meets',
      ratio: 1,
      values: { 'changeIn.lvl': -0.0625, 'changeIn.joist': 0.0625, 'method.lvl': 'engineered-allowance' },
    },
  },
  {
    name: 'of two members of one kind, one with upright grain, the upright one moves less',
    origin: 'hand-worked',
    source: 'Wood Handbook coefficients per percent for coast Douglas fir: 0.00267 flat, 0.00165 upright; 9.25 x 4',
    inputs: {
      members: [
        joist('flat', { grain: 'tangential', species: 'douglas-fir-coast', fromPct: 12, toPct: 8 }),
        joist('upright', { grain: 'radial', species: 'douglas-fir-coast', fromPct: 12, toPct: 8 }),
      ],
      toleranceIn: 0.25,
    },
    expect: {
      verdict: 'meets',
      values: { 'changeIn.flat': -0.099, 'changeIn.upright': -0.061, differentialIn: 0.038 },
    },
    tolerance: ROUNDED,
  },
  {
    name: 'an upright member alone is compared with a neighbor that does not move',
    origin: 'hand-worked',
    source: '9.25 x 4 x 0.00165',
    inputs: {
      members: [joist('upright', { grain: 'radial', species: 'douglas-fir-coast', fromPct: 12, toPct: 8 })],
      toleranceIn: 0.25,
    },
    expect: { verdict: 'meets', values: { differentialIn: 0.061 } },
    tolerance: ROUNDED,
  },
];

/** What the rule asks. */
export const rule = text(
  'Neighbors may move differently by no more than the step accepted. Each shrinks by its species, grain, size and change of moisture.',
  'Las vecinas pueden moverse distinto hasta el escalón aceptado. Cada una se encoge según especie, veta, tamaño y cambio de humedad.',
);

/** What the check answers. */
export const values: ValueWords = {
  changeIn: {
    label: text('Change of size', 'Cambio de tamaño'),
    how: text(
      'Size times the change of moisture times the movement of the wood; negative shrinks.',
      'Tamaño por cambio de humedad por movimiento de la madera; negativo encoge.',
    ),
  },
  method: {
    label: text('Method', 'Método'),
    how: text(
      'Chosen by what it is, the grain and the moisture range.',
      'Según el elemento, la veta y el rango de humedad.',
    ),
  },
  fromPct: {
    label: text('Moisture before', 'Humedad antes'),
    how: text('As read, or the moisture at rest in that air.', 'La leída, o la de equilibrio en ese aire.'),
  },
  toPct: {
    label: text('Moisture after', 'Humedad después'),
    how: text('As read, or the moisture at rest in that air.', 'La leída, o la de equilibrio en ese aire.'),
  },
  differentialIn: {
    label: text('Step between members', 'Escalón entre elementos'),
    how: text('The largest change less the smallest.', 'El mayor cambio menos el menor.'),
  },
  slope: {
    label: text('Slope', 'Pendiente'),
    how: text('Step divided by the distance between members.', 'Escalón dividido entre la distancia.'),
  },
  slopeOneIn: {
    label: text('Slope, 1 in', 'Pendiente, 1 en'),
    how: text('Distance divided by the step.', 'Distancia dividida entre el escalón.'),
  },
};
