import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

export const cases: readonly CheckCase[] = [
  {
    name: 'exactly 19% is still dry lumber',
    origin: 'published',
    source: 'WWPA Tech Notes 10, 2002: S-DRY at most 19%',
    inputs: { readingPct: 19, meter: 'pin' },
    expect: { verdict: 'meets', ratio: 1, severity: 'record', values: { band: 'dry', limitPct: 19 } },
  },
  {
    name: '19.5% is past dry lumber though decay does not go on',
    origin: 'published',
    source: 'WWPA 19%; Wood Handbook chapter 5: kept below 20% decay neither starts nor goes on',
    inputs: { readingPct: 19.5, meter: 'pin' },
    expect: { verdict: 'fails', ratio: 19.5 / 19, severity: 'repair', values: { band: 'near-dry' } },
  },
  {
    name: 'at 20% decay that has begun goes on',
    origin: 'published',
    source: 'Wood Handbook chapter 5: below 20%',
    inputs: { readingPct: 20, meter: 'pin' },
    expect: { verdict: 'fails', severity: 'repair', values: { band: 'damp' }, repairs: ['dry-out'] },
  },
  {
    name: 'at 28% and 70 F decay can start by itself',
    origin: 'second-hand',
    source: 'research text as quoted: about fiber saturation, 28 to 30%; Wood Handbook chapter 14',
    inputs: { readingPct: 28, meter: 'pin', temperatureF: 70 },
    expect: { verdict: 'fails', severity: 'repair', values: { band: 'wet', growth: 'active' } },
  },
  {
    name: 'at 35 F fungi all but stop, and the wood is as wet as before',
    origin: 'published',
    source: 'Wood Handbook chapter 14: slow below 50 F, stops at 35 F',
    inputs: { readingPct: 24, meter: 'pin', temperatureF: 35 },
    expect: { verdict: 'fails', values: { band: 'damp', growth: 'stopped' } },
  },
  {
    name: 'a reading of 30% is the last a meter can be believed',
    origin: 'memory',
    source: 'Condition Assessment Manual, pin meters 7 to 30%',
    inputs: { readingPct: 30, meter: 'pin' },
    expect: { verdict: 'fails', ratio: 30 / 19, values: { band: 'wet' } },
  },
  {
    name: 'a reading above the range of the meter cannot be told, and the wood is dried all the same',
    origin: 'memory',
    source: 'Condition Assessment Manual, pin meters 7 to 30%',
    inputs: { readingPct: 42, meter: 'pinless' },
    expect: {
      verdict: 'undetermined',
      ratio: null,
      missing: [],
      severity: 'repair',
      values: { band: 'above-range' },
      repairs: ['dry-out'],
    },
  },
  {
    name: 'without the kind of meter it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { readingPct: 15 },
    expect: { verdict: 'undetermined', missing: ['meter'] },
  },
  {
    name: '6% is under what a meter reads well, and dry',
    origin: 'second-hand',
    source: 'meter range as quoted: 7% to about 30%',
    inputs: { readingPct: 6, meter: 'pin' },
    expect: { verdict: 'meets', values: { band: 'dry' } },
  },
  {
    name: '7% is within it',
    origin: 'second-hand',
    source: 'meter range as quoted: 7% to about 30%',
    inputs: { readingPct: 7, meter: 'pin' },
    expect: { verdict: 'meets', values: { band: 'dry' } },
  },
];

/** What the rule asks. */
export const rule = text(
  'Wood at or under the dry-lumber limit is dry. Above the range of a meter nothing but “wet” can be read.',
  'La madera en el límite de madera seca o menos está seca. Sobre el alcance del medidor solo se puede leer “mojada”.',
);

/** What the check answers. */
export const values: ValueWords = {
  band: {
    label: text('Band', 'Franja'),
    how: text(
      'Dry to 19%, near dry under 20, damp under 28, wet to 30, above that out of range.',
      'Seca hasta 19%, casi seca bajo 20, húmeda bajo 28, mojada hasta 30; más, fuera de rango.',
    ),
  },
  limitPct: {
    label: text('Dry lumber, at most', 'Madera seca, como máximo'),
    how: text('From the grading rule.', 'De la regla de clasificación.'),
  },
  growth: {
    label: text('Decay fungi at this temperature', 'Hongos a esta temperatura'),
    how: text(
      'Stopped to 35 and from 100 F, slow under 50 and over 95 F.',
      'Detenidos hasta 35 y desde 100 F, lentos bajo 50 y sobre 95 F.',
    ),
  },
};
