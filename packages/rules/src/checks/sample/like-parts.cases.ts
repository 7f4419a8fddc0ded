import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const group = (name: string, count: number, withHardware: number) => ({ name, count, withHardware });

export const cases: readonly CheckCase[] = [
  {
    name: 'four with and four without, dealt into two groups of four: 1 chance in 70',
    origin: 'second-hand',
    source: 'Fisher, The Design of Experiments (1935), as quoted: eight cups, four of each kind',
    inputs: { groups: [group('first crew', 4, 4), group('second crew', 4, 0)] },
    expect: {
      verdict: 'fails',
      values: { shareWith: 0.5, 'byLuck.second crew': 1 / 70, oddOnes: 'second crew', openMore: 4 },
    },
  },
  {
    name: 'one wall end of four shows no hold-down: open it next',
    origin: 'common-practice',
    source: 'like places are built alike',
    inputs: {
      groups: [group('north end', 1, 1), group('south end', 1, 1), group('east end', 1, 0), group('west end', 1, 1)],
    },
    expect: {
      verdict: 'fails',
      severity: 'repair',
      values: { shareWith: 0.75, 'shareWith.east end': 0, oddOnes: 'east end', openNext: 'east end', openMore: 1 },
      repairs: ['open-more'],
    },
  },
  {
    name: 'the group with the smallest share comes first, then the one that lacks more',
    origin: 'hand-worked',
    source: '2/8 before 6/8 before 3/4, the last two equal in share',
    inputs: { groups: [group('line A', 4, 3), group('line B', 8, 6), group('line C', 8, 2)] },
    expect: {
      verdict: 'fails',
      values: {
        oddOnes: 'line C, line B, line A',
        openNext: 'line C',
        openMore: 9,
        'missing.line C': 6,
        'missing.line A': 1,
      },
    },
  },
  {
    name: 'all with exactly as many as places meets',
    origin: 'hand-worked',
    source: '6 of 6 and 4 of 4',
    inputs: { groups: [group('first floor', 6, 6), group('second floor', 4, 4)] },
    expect: { verdict: 'meets', severity: 'record', values: { shareWith: 1, openMore: 0 }, repairs: [] },
  },
  {
    name: 'none with it: never asked for, or hidden; the engineer says',
    origin: 'hand-worked',
    source: 'no odd one among equals',
    inputs: { groups: [group('first floor', 6, 0), group('second floor', 4, 0)] },
    expect: { verdict: 'undetermined', severity: 'engineer', missing: [], referrals: ['engineer'] },
  },
  {
    name: 'without a count it cannot be told',
    origin: 'hand-worked',
    source: 'no count, no verdict',
    inputs: { groups: [{ name: 'first floor', count: 6 }] },
    expect: { verdict: 'undetermined', missing: ['groups.0.withHardware'] },
  },
  {
    name: 'groups alike in share and number come by name, and where fewer than half have it the plans decide',
    origin: 'hand-worked',
    source: '1/4, 1/4 and 3/4: 5 of 12',
    inputs: { groups: [group('west', 4, 1), group('east', 4, 1), group('north', 4, 3)] },
    expect: { verdict: 'fails', values: { shareWith: 5 / 12, oddOnes: 'east, west, north', openNext: 'east' } },
  },
];

/** What the rule asks. */
export const rule = text(
  "Like places have like hardware. Where some have it and others don't, those without are the ones to look behind.",
  'Lugares iguales llevan herrajes iguales. Donde unos los tienen y otros no, los que no son los que hay que revisar.',
);

/** What the check answers. */
export const values: ValueWords = {
  shareWith: {
    label: text('Share with the hardware', 'Parte con el herraje'),
    how: text('Places with it over all places; for each group too.', 'Lugares con él entre todos; también por grupo.'),
  },
  missing: {
    label: text('Without it', 'Sin él'),
    how: text('Places less those with it.', 'Lugares menos los que lo tienen.'),
  },
  byLuck: {
    label: text('Chance of so few there by luck', 'Probabilidad de tan pocos ahí por suerte'),
    how: text(
      'All places with the hardware dealt out over all places by luck, and at most so many fall in the group.',
      'Los que tienen el herraje, repartidos al azar entre todos, y a lo más tantos caen en el grupo.',
    ),
  },
  oddOnes: {
    label: text('Odd ones out', 'Los que no coinciden'),
    how: text(
      'Groups that lack some: smallest share first, then most missing, then by name.',
      'Grupos a los que les falta: primero la menor parte, luego los que más faltan, luego por nombre.',
    ),
  },
  openNext: {
    label: text('Open next', 'Abrir primero'),
    how: text('The first of the odd ones.', 'El primero de ellos.'),
  },
  openMore: {
    label: text('Places to open', 'Lugares por abrir'),
    how: text('Every like place that shows none.', 'Todo lugar igual donde no se ve.'),
  },
};
