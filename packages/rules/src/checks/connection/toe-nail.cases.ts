import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';
import { YIELD_WORDS } from '../../standards/nds-2018/yield-words.ts';

const END = { nail: '16d-common', count: 3, species: 'douglas-fir-larch', direction: 'lateral' };

export const cases: readonly CheckCase[] = [
  {
    name: 'three 16d common toe-nails take 351 lb of a joist that brings 467 lb',
    origin: 'second-hand',
    source: 'NDS 2018 Table 12N (141 lb) and 12.5.4 (0.83), second-hand: 3 x 141 x 0.83',
    inputs: { ...END, reactionLb: 466.7 },
    expect: { verdict: 'fails', ratio: 1.33, severity: 'engineer', values: { capacityLb: 351, perNailLb: 117 } },
    tolerance: { within: 0.5, reason: 'the table prints whole pounds' },
  },
  {
    name: 'four 16d common toe-nails carry it',
    origin: 'hand-worked',
    source: 'NDS 2018 12.3.1 equations, by hand',
    inputs: { ...END, count: 4, reactionLb: 466.7 },
    expect: { verdict: 'meets', remaining: 1, values: { capacityLb: 467.8, referenceLb: 140.9, penetrationIn: 1.864 } },
    tolerance: { within: 0.05, reason: 'the worked numbers are written to a tenth of a pound' },
  },
  {
    name: 'no load at all on sound nails is just met with a ratio of 0',
    origin: 'hand-worked',
    source: 'nothing asks nothing',
    inputs: { ...END, count: 1, reactionLb: 0 },
    expect: { verdict: 'meets', ratio: 0, remaining: 1 },
  },
  {
    name: 'three times the capacity of the nails is to be made safe',
    origin: 'hand-worked',
    source: 'the severity table: a ratio over 1.5 with weight on it',
    inputs: { ...END, reactionLb: 1053 },
    expect: { verdict: 'fails', ratio: 3, severity: 'make-safe' },
    tolerance: { within: 0.002, reason: 'the load was chosen to four figures' },
  },
  {
    name: 'pulled out, an 8d common toe-nail keeps 0.67 of 1.538 in at 32 lb an inch',
    origin: 'second-hand',
    source: 'NDS 2018 Table 12.2C and 12.5.4 (second-hand), with the 30 degree figure',
    inputs: { ...END, nail: '8d-common', count: 1, direction: 'withdrawal', reactionLb: 30 },
    expect: { verdict: 'meets', values: { perNailLb: 33, penetrationIn: 1.538 } },
    tolerance: { within: 0.5, reason: 'the table prints whole pounds' },
  },
  {
    name: 'for wind the same nails take 1.6 times as much',
    origin: 'second-hand',
    source: 'NDS 2018 2.3.2 (second-hand): 1.6 for wind or earthquake, on 3 x 141 x 0.83',
    inputs: { ...END, loadDuration: 1.6, reactionLb: 466.7 },
    expect: { verdict: 'meets', values: { capacityLb: 561.6 } },
    tolerance: { within: 1, reason: 'the table prints whole pounds, here times 3 x 0.83 x 1.6' },
  },
  {
    name: 'an end without a nail is held by nothing, whatever its load',
    origin: 'hand-worked',
    source: 'no connection',
    inputs: { ...END, count: 0 },
    expect: { verdict: 'fails', remaining: 0, severity: 'make-safe', values: { capacityLb: 0 } },
  },
  {
    name: 'without a load it cannot be told, but what the nails take is said',
    origin: 'hand-worked',
    source: 'NDS 2018 12.3.1 equations, by hand',
    inputs: END,
    expect: { verdict: 'undetermined', missing: ['reactionLb'], severity: 'record', values: { capacityLb: 350.8 } },
    tolerance: { within: 0.05, reason: 'the worked numbers are written to a tenth of a pound' },
  },
  {
    name: 'without the species it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { nail: '8d-common', count: 3, direction: 'lateral', reactionLb: 100 },
    expect: { verdict: 'undetermined', missing: ['species'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'Toe-nails carry what straight nails do, less for the slant; together at least the load of the end they hold.',
  'Los clavos en ángulo soportan lo que uno recto, menos por el ángulo; juntos al menos la carga de la punta que sujetan.',
);

/** What the check answers. */
export const values: ValueWords = {
  sideBearingIn: {
    label: text('Bearing in the piece held', 'Apoyo en la pieza sujeta'),
    how: text('A third of the nail.', 'Un tercio del clavo.'),
  },
  penetrationIn: {
    label: text('Penetration', 'Penetración'),
    how: text(
      'Across: length x cos 30 less a third of it. Pulling: length less a third of it over cos 30.',
      'De lado: largo x cos 30 menos su tercio. Sacando: largo menos su tercio entre cos 30.',
    ),
  },
  ...YIELD_WORDS,
  referenceLb: {
    label: text('Reference load of a straight nail', 'Carga de referencia de un clavo recto'),
    how: text(
      'Across: the mode that governs. Pulling: 1380 x G to the power 2.5 x diameter x penetration.',
      'De lado: el modo que rige. Sacando: 1380 x G a la 2.5 x diámetro x penetración.',
    ),
  },
  perNailLb: {
    label: text('Each toe-nail', 'Cada clavo en ángulo'),
    how: text(
      'Reference load x load duration x 0.83 across, 0.67 pulling.',
      'Referencia x duración x 0.83 de lado, 0.67 sacando.',
    ),
  },
  capacityLb: {
    label: text('All of them', 'Todos juntos'),
    how: text('Each toe-nail x how many.', 'Cada clavo x cuántos.'),
  },
};
