import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const TABLE = 'Wood Handbook Table 4-2';
const ONE_DECIMAL = { within: 0.06, reason: 'the table prints one decimal; the equation gives 9.25 at 70 F and 50%' };
const TWO_DECIMALS = { within: 0.006, reason: 'the worked number is written to two decimals' };

export const cases: readonly CheckCase[] = [
  {
    name: 'air at 70 F and 50% brings wood to 9.2%',
    origin: 'second-hand',
    source: `${TABLE}, row 70 F`,
    inputs: { temperatureF: 70, humidityPct: 50 },
    expect: { verdict: 'meets', severity: 'record', values: { moisturePct: 9.2, limitPct: 19 } },
    tolerance: ONE_DECIMAL,
  },
  {
    name: 'air at 40 F and 90% brings wood to 21.0%, past dry lumber',
    origin: 'second-hand',
    source: `${TABLE}, row 40 F`,
    inputs: { temperatureF: 40, humidityPct: 90 },
    expect: { verdict: 'fails', ratio: 21 / 19, severity: 'repair', values: { moisturePct: 21 }, repairs: ['dry-out'] },
    tolerance: ONE_DECIMAL,
  },
  {
    name: 'a crawlspace at 50 F and 80% brings wood to 16.39%',
    origin: 'hand-worked',
    source: 'Equation 4-5',
    inputs: { temperatureF: 50, humidityPct: 80 },
    expect: { verdict: 'meets', values: { moisturePct: 16.39 } },
    tolerance: TWO_DECIMALS,
  },
  {
    name: 'at 70 F and 87% wood comes to 19.0%, as published for exactly that air',
    origin: 'second-hand',
    source: 'FPL data as quoted: 25% -> 5.3, 60% -> 11.1, 84% -> 17.6, 87% -> 19.0',
    inputs: { temperatureF: 70, humidityPct: 87 },
    expect: { verdict: 'meets', values: { moisturePct: 19 } },
    tolerance: { within: 0.12, reason: 'those data differ from the equation by up to 0.13 at 60%' },
  },
  {
    name: 'bone-dry air leaves nothing',
    origin: 'hand-worked',
    source: 'Equation 4-5 at 0%',
    inputs: { temperatureF: 70, humidityPct: 0 },
    expect: { verdict: 'meets', ratio: 0, values: { moisturePct: 0 } },
  },
  {
    name: 'for a finish that asks 8% the same air is too damp',
    origin: 'hand-worked',
    source: '9.25 / 8',
    inputs: { temperatureF: 70, humidityPct: 50, limitPct: 8 },
    expect: { verdict: 'fails', values: { moisturePct: 9.25 } },
    tolerance: TWO_DECIMALS,
  },
  {
    name: 'outside 20 to 150 F it cannot be told',
    origin: 'hand-worked',
    source: 'range of the equation',
    inputs: { temperatureF: 5, humidityPct: 80 },
    expect: { verdict: 'undetermined', ratio: null, missing: [], severity: 'record' },
  },
  {
    name: 'without the humidity it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { temperatureF: 70 },
    expect: { verdict: 'undetermined', missing: ['humidityPct'] },
  },
  {
    name: 'at the coldest air the equation is for, 20 F, it still answers',
    origin: 'hand-worked',
    source: 'Equation 4-5 from 20 F',
    inputs: { temperatureF: 20, humidityPct: 30 },
    expect: { verdict: 'meets' },
  },
  {
    name: 'at the hottest, 150 F, too',
    origin: 'hand-worked',
    source: 'Equation 4-5 to 150 F',
    inputs: { temperatureF: 150, humidityPct: 30 },
    expect: { verdict: 'meets' },
  },
  {
    name: 'in colder air it cannot be told',
    origin: 'hand-worked',
    source: 'Equation 4-5 from 20 F',
    inputs: { temperatureF: 19, humidityPct: 30 },
    expect: { verdict: 'undetermined' },
  },
  {
    name: 'in hotter air neither',
    origin: 'hand-worked',
    source: 'Equation 4-5 to 150 F',
    inputs: { temperatureF: 151, humidityPct: 30 },
    expect: { verdict: 'undetermined' },
  },
];

/** What the rule asks. */
export const rule = text(
  'Wood left in this air comes to rest at a moisture; it must not be above the one accepted.',
  'La madera en este aire llega a una humedad de reposo; no debe pasar de la aceptada.',
);

/** What the check answers. */
export const values: ValueWords = {
  moisturePct: {
    label: text('Moisture of wood at rest', 'Humedad de la madera en reposo'),
    how: text(
      '(1800/W) [Kh/(1-Kh) + (K1 Kh + 2 K1 K2 K²h²)/(1 + K1 Kh + K1 K2 K²h²)], h the humidity 0 to 1; W, K, K1, K2 from the temperature.',
      '(1800/W) [Kh/(1-Kh) + (K1 Kh + 2 K1 K2 K²h²)/(1 + K1 Kh + K1 K2 K²h²)], h la humedad de 0 a 1; W, K, K1, K2 según la temperatura.',
    ),
  },
  limitPct: { label: text('Moisture accepted', 'Humedad aceptada'), how: text('As chosen.', 'La elegida.') },
};
