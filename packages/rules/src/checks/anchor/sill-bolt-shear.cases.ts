import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';
import { YIELD_WORDS } from '../../standards/nds-2018/yield-words.ts';

const TABLE = 'NDS 2018 Table 12E (second-hand)';
const TEN_POUNDS = { within: 5, reason: 'the table prints bolts to ten pounds' };
const FOUR = { count: 4, diameterIn: 0.5, species: 'douglas-fir-larch' };

export const cases: readonly CheckCase[] = [
  {
    name: 'a 1/2 in bolt along a Douglas fir-larch sill takes 650 lb',
    origin: 'second-hand',
    source: TABLE,
    inputs: { ...FOUR, demandLb: 2500 },
    expect: { verdict: 'meets', remaining: 1, severity: 'record', values: { perBoltLb: 650, governingMode: 'IIIs' } },
    tolerance: TEN_POUNDS,
  },
  {
    name: 'a 5/8 in bolt in spruce-pine-fir takes 850 lb',
    origin: 'second-hand',
    source: TABLE,
    inputs: { ...FOUR, diameterIn: 0.625, species: 'spruce-pine-fir', demandLb: 3000 },
    expect: { verdict: 'meets', values: { perBoltLb: 850 } },
    tolerance: TEN_POUNDS,
  },
  {
    name: 'out of the wall the same bolt takes 530 lb in Douglas fir-larch, crushing the sill',
    origin: 'second-hand',
    source: TABLE,
    inputs: { ...FOUR, diameterIn: 0.625, direction: 'perpendicular', demandLb: 2000 },
    expect: { verdict: 'meets', values: { perBoltLb: 530, governingMode: 'Is' } },
    tolerance: TEN_POUNDS,
  },
  {
    name: 'four 1/2 in bolts do not carry 2500 lb in spruce-pine-fir',
    origin: 'second-hand',
    source: `${TABLE}: 4 x 590`,
    inputs: { ...FOUR, species: 'spruce-pine-fir', demandLb: 2500 },
    expect: {
      verdict: 'fails',
      severity: 'repair',
      repairs: ['anchor-bolt-add', 'engineer-letter'],
      values: { capacityLb: 2360 },
    },
    tolerance: { within: 20, reason: 'the table prints each of four bolts to ten pounds' },
  },
  {
    name: 'for an earthquake they do, 1.6 times as much',
    origin: 'hand-worked',
    source: '588.2 lb by the NDS 2018 12.3.1 equations, times 1.6',
    inputs: { ...FOUR, species: 'spruce-pine-fir', loadDuration: 1.6, demandLb: 2500 },
    expect: { verdict: 'meets', values: { perBoltLb: 941.1, capacityLb: 3764.3 } },
    tolerance: { within: 0.05, reason: 'the worked numbers are written to a tenth of a pound' },
  },
  {
    name: 'a 3/4 in bolt takes 1274 lb',
    origin: 'hand-worked',
    source: 'NDS 2018 12.3.1 equations, by hand',
    inputs: { ...FOUR, count: 1, diameterIn: 0.75, demandLb: 2000 },
    expect: { verdict: 'fails', severity: 'engineer', values: { perBoltLb: 1274 } },
    tolerance: { within: 0.5, reason: 'the worked number is written to a pound' },
  },
  {
    name: 'no load is just met, whatever the bolts',
    origin: 'hand-worked',
    source: 'nothing asks nothing',
    inputs: { ...FOUR, count: 1, demandLb: 0 },
    expect: { verdict: 'meets', ratio: 0 },
  },
  {
    name: 'a sill without a bolt fails without knowing the load',
    origin: 'hand-worked',
    source: 'no bolt',
    inputs: { ...FOUR, count: 0 },
    expect: { verdict: 'fails', remaining: 0, severity: 'engineer', values: { capacityLb: 0 } },
  },
  {
    name: 'redwood goes to an engineer to confirm, its gravity is from memory',
    origin: 'memory',
    source: 'NDS 2018 Table 12.3.3A, redwood not read',
    inputs: { ...FOUR, species: 'redwood', demandLb: 1000 },
    expect: { verdict: 'meets', referrals: ['engineer'] },
  },
  {
    name: 'without a load it cannot be told, but what the bolts take is said',
    origin: 'hand-worked',
    source: 'NDS 2018 12.3.1 equations, by hand',
    inputs: FOUR,
    expect: { verdict: 'undetermined', severity: 'record', missing: ['demandLb'], values: { capacityLb: 2592 } },
    tolerance: { within: 0.5, reason: 'the worked number is written to a pound' },
  },
  {
    name: 'a sill without a bolt fails under no load too',
    origin: 'hand-worked',
    source: 'no bolt',
    inputs: { ...FOUR, count: 0, demandLb: 0 },
    expect: { verdict: 'fails', remaining: 0, repairs: ['anchor-bolt-add', 'engineer-letter'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'The bolts together carry at least the load that slides the wall: each the weakest of its yield modes, times the load-duration factor.',
  'Los pernos juntos soportan al menos la carga que desliza la pared: cada uno su modo de falla más débil, por el factor de duración.',
);

/** What the check answers. */
export const values: ValueWords = {
  sidePsi: {
    label: text('Strength of the sill under the bolt', 'Resistencia de la solera bajo el perno'),
    how: text(
      'Along the grain 11200 x G; across it 6100 x G to the power 1.45, over the root of the diameter.',
      'Con la fibra 11200 x G; a través 6100 x G a la 1.45, entre la raíz del diámetro.',
    ),
  },
  ...YIELD_WORDS,
  referenceLb: {
    label: text('Reference load of a bolt', 'Carga de referencia de un perno'),
    how: text(
      'The mode that governs, 6 in deep in concrete of 7500 psi under the bolt.',
      'El modo que rige, con 6 in en concreto de 7500 psi bajo el perno.',
    ),
  },
  perBoltLb: {
    label: text('Each bolt', 'Cada perno'),
    how: text('Reference load x load duration.', 'Referencia x duración de la carga.'),
  },
  capacityLb: { label: text('All bolts', 'Todos los pernos'), how: text('Each x how many.', 'Cada uno x cuántos.') },
};
