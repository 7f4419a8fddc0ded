import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const TABLE = 'OSHA Table 1, same rows in California Title 8, 1532.3';

export const cases: readonly CheckCase[] = [
  {
    name: 'a hand-held saw with water outdoors, exactly 4 hours, needs no mask',
    origin: 'published',
    source: `${TABLE} (ii): 4 hours or less`,
    inputs: { task: 'handheld-saw', controlled: true, indoors: false, hoursPerShift: 4 },
    expect: { verdict: 'meets', severity: 'record', values: { inTable1: true, maskFactor: 0 }, referrals: [] },
  },
  {
    name: 'the same saw just over 4 hours needs a mask of factor 10',
    origin: 'published',
    source: `${TABLE} (ii)`,
    inputs: { task: 'handheld-saw', controlled: true, indoors: false, hoursPerShift: 4.25 },
    expect: { verdict: 'meets', values: { maskFactor: 10 } },
  },
  {
    name: 'indoors the saw needs the mask from the first hour',
    origin: 'published',
    source: `${TABLE} (ii)`,
    inputs: { task: 'handheld-saw', controlled: true, indoors: true, hoursPerShift: 1 },
    expect: { verdict: 'meets', values: { maskFactor: 10 } },
  },
  {
    name: 'unknown place and time are taken as indoors and long',
    origin: 'hand-worked',
    source: 'unknown is taken as the worse',
    inputs: { task: 'walk-behind-saw', controlled: true },
    expect: { verdict: 'meets', values: { maskFactor: 10 } },
  },
  {
    name: 'a dry drill fails until its dust is caught',
    origin: 'second-hand',
    source: 'OSHA Table 1 (vii) as quoted: a shroud and dust collector',
    inputs: { task: 'drill', controlled: false, indoors: true, hoursPerShift: 1 },
    expect: {
      verdict: 'fails',
      severity: 'repair',
      values: { maskFactor: 0 },
      referrals: [],
      repairs: ['dust-control'],
    },
  },
  {
    name: 'nobody knows whether the dust is kept: treated as over the limit',
    origin: 'hand-worked',
    source: 'unknown is treated as present',
    inputs: { task: 'masonry-saw' },
    expect: { verdict: 'fails', severity: 'repair', repairs: ['dust-control'] },
  },
  {
    name: 'a fiber-cement saw indoors is outside Table 1',
    origin: 'published',
    source: `${TABLE} (iii): for tasks performed outdoors only`,
    inputs: { task: 'fiber-cement-saw', controlled: true, indoors: true, hoursPerShift: 1 },
    expect: {
      verdict: 'fails',
      values: { inTable1: false },
      referrals: ['specialist'],
      repairs: ['dust-control', 'specialist-visit'],
    },
  },
  {
    name: 'grinding mortar needs a mask even with the dust caught: from memory, so it refers',
    origin: 'memory',
    source: 'OSHA Table 1 (xi), not read',
    inputs: { task: 'mortar-grinder', controlled: true, indoors: false, hoursPerShift: 2 },
    expect: { verdict: 'meets', values: { maskFactor: 10 }, referrals: ['specialist'] },
  },
  {
    name: 'exactly 50 micrograms measured meets the limit',
    origin: 'second-hand',
    source: 'OSHA 1926.1153 as quoted: limit 50, action level 25',
    inputs: { task: 'other', measuredUgM3: 50 },
    expect: { verdict: 'meets', ratio: 1, severity: 'record', values: { actionLevelReached: true } },
  },
  {
    name: '24 micrograms stay under the action level',
    origin: 'second-hand',
    source: 'OSHA 1926.1153 as quoted: limit 50, action level 25',
    inputs: { task: 'other', measuredUgM3: 24 },
    expect: { verdict: 'meets', ratio: 0.48, values: { actionLevelReached: false } },
  },
  {
    name: '65 micrograms are 1.3 times the limit',
    origin: 'second-hand',
    source: 'OSHA 1926.1153 as quoted: limit 50, action level 25',
    inputs: { task: 'jackhammer', controlled: false, measuredUgM3: 65 },
    expect: { verdict: 'fails', ratio: 1.3, repairs: ['dust-control'] },
  },
  {
    name: 'air measured over the limit fails even with the control of Table 1',
    origin: 'hand-worked',
    source: '75 / 50; the measured air counts, not the control that should keep it down',
    inputs: { task: 'drill', controlled: true, indoors: true, hoursPerShift: 1, measuredUgM3: 75 },
    expect: {
      verdict: 'fails',
      ratio: 1.5,
      severity: 'repair',
      referrals: ['specialist'],
      repairs: ['dust-control', 'specialist-visit'],
    },
  },
  {
    name: 'sawing wood is outside the standard',
    origin: 'hand-worked',
    source: 'no silica, no limit',
    inputs: { task: 'none' },
    expect: { verdict: 'not-applicable', severity: 'record' },
  },
  {
    name: 'without the task it cannot be told',
    origin: 'hand-worked',
    source: 'no answer, no verdict',
    inputs: { controlled: true },
    expect: { verdict: 'undetermined', missing: ['task'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'Dust stays under the limit in the air: by the control the table lists for the task, or by measured air.',
  'El polvo queda bajo el límite en el aire: por el control que la tabla da para la tarea, o por aire medido.',
);

/** What the check answers. */
export const values: ValueWords = {
  inTable1: {
    label: text('Has a row in Table 1', 'Tiene renglón en la Tabla 1'),
    how: text('By the work and where it is done.', 'Por el trabajo y el lugar.'),
  },
  maskFactor: {
    label: text('Protection factor of the mask', 'Factor de protección de la mascarilla'),
    how: text(
      'From the row, by place and hours; 0 is no mask. It goes with the control at the tool.',
      'Del renglón, por lugar y horas; 0 es sin mascarilla. Va con el control en la herramienta.',
    ),
  },
  actionLevelReached: {
    label: text('Action level reached', 'Nivel de acción alcanzado'),
    how: text('25 micrograms per cubic meter or more.', '25 microgramos por metro cúbico o más.'),
  },
};
