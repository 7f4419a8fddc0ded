import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const IRC = 'IRC R403.1.6 (2006 as quoted, 2024 second-hand)';
const LOW = { storiesAbove: 1, seismicCategory: 'B', embedmentIn: 7, washer: 'round', middleThird: true };
/** All that is looked at on the bolts themselves, but for the washers. */
const SEEN = { embedmentIn: 7, middleThird: true };
const piece = (name: string, lengthIn: number, boltsIn: readonly number[]) => ({ name, lengthIn, boltsIn });

export const cases: readonly CheckCase[] = [
  {
    name: 'a 94 in piece bolted 14 in from both ends fails at the ends; 66 in between passes',
    origin: 'hand-worked',
    source: `${IRC}: within 12 in of each end, 6 ft apart`,
    inputs: { ...LOW, diameterIn: 0.5, plates: [piece('A', 94, [14, 80])] },
    expect: {
      verdict: 'fails',
      ratio: 14 / 12,
      remaining: 1,
      severity: 'repair',
      repairs: ['anchor-bolt-add', 'plate-washer'],
      values: {
        'endDistances.A left': 14,
        'endDistances.A right': 14,
        'spacings.A 1': 66,
        'fails.A': 'end-too-far',
      },
    },
  },
  {
    name: 'a 24 ft wall of a 16 ft and an 8 ft piece needs six bolts, exactly 12 in from ends and 72 in apart meets',
    origin: 'second-hand',
    source: `${IRC}: 12 in from each end, 6 ft apart, two in every piece`,
    inputs: { ...LOW, diameterIn: 0.5, plates: [piece('A', 192, [12, 68, 124, 180]), piece('B', 96, [84, 12])] },
    expect: {
      verdict: 'meets',
      ratio: 1,
      remaining: 1,
      severity: 'record',
      values: { boltsNeeded: 6, boltsFound: 6, 'boltsNeeded.A': 4, 'boltsNeeded.B': 2, 'spacings.B 1': 72 },
    },
  },
  {
    name: 'a 5/8 bolt stands 4-3/8 in from the end or more: at 4 in it is too near',
    origin: 'second-hand',
    source: `${IRC}: not nearer than seven bolt diameters`,
    inputs: { ...LOW, diameterIn: 0.625, plates: [piece('A', 60, [4, 55])] },
    expect: { verdict: 'fails', ratio: 4.375 / 4, values: { leastEndIn: 4.375, 'fails.A': 'end-too-near' } },
  },
  {
    name: 'exactly seven diameters from the end meets',
    origin: 'second-hand',
    source: `${IRC}: not nearer than seven bolt diameters`,
    inputs: { ...LOW, diameterIn: 0.625, plates: [piece('A', 60, [4.375, 55])] },
    expect: { verdict: 'meets', ratio: 1 },
  },
  {
    name: 'one bolt in a 4 ft piece is half of what it needs and goes to an engineer',
    origin: 'hand-worked',
    source: `${IRC}: two bolts in every piece`,
    inputs: { ...LOW, diameterIn: 0.5, plates: [piece('A', 48, [10])] },
    expect: {
      verdict: 'fails',
      remaining: 0.5,
      severity: 'engineer',
      values: { 'fails.A': 'too-few-bolts, end-too-far' },
    },
  },
  {
    name: 'a 20 in piece that joins offset braced panels needs one bolt in its middle third, a 12 in piece none',
    origin: 'second-hand',
    source: 'IRC 2024 R403.1.6 exceptions (second-hand)',
    inputs: {
      ...LOW,
      diameterIn: 0.5,
      plates: [
        { ...piece('A', 20, [10]), joinsOffsetPanels: true },
        { ...piece('B', 12, []), joinsOffsetPanels: true },
      ],
    },
    expect: { verdict: 'meets', remaining: 1, values: { 'boltsNeeded.A': 1, 'boltsNeeded.B': 0 } },
  },
  {
    name: 'in that piece a bolt outside the middle third fails',
    origin: 'second-hand',
    source: 'IRC 2024 R403.1.6 exceptions (second-hand)',
    inputs: { ...LOW, diameterIn: 0.5, plates: [{ ...piece('A', 21, [6.9]), joinsOffsetPanels: true }] },
    expect: { verdict: 'fails', values: { 'fails.A': 'center-third' } },
  },
  {
    name: 'under three stories in D1 bolts 60 in apart are too far, 4 ft is the limit',
    origin: 'second-hand',
    source: 'IRC 2024 R403.1.6.1 item 4 (second-hand)',
    inputs: {
      ...LOW,
      storiesAbove: 3,
      seismicCategory: 'D1',
      washer: 'plate-3x3',
      diameterIn: 0.625,
      plates: [piece('A', 84, [12, 72])],
    },
    expect: {
      verdict: 'fails',
      ratio: 1.25,
      severity: 'engineer',
      values: { spacingLimitIn: 48, 'fails.A': 'spacing', 'boltsNeeded.A': 3 },
    },
  },
  {
    name: 'under three stories 60 in apart cannot be told without the seismic category, plate washers or not',
    origin: 'hand-worked',
    source: 'IRC 2024 R403.1.6.1 item 4 (second-hand)',
    inputs: {
      ...SEEN,
      washer: 'plate-3x3',
      diameterIn: 0.625,
      storiesAbove: 3,
      plates: [piece('A', 84, [12, 72])],
    },
    expect: { verdict: 'undetermined', missing: ['seismicCategory'] },
  },
  {
    name: 'a round washer under a braced wall in D2 is replaced by a plate',
    origin: 'second-hand',
    source: 'IRC 2024 R403.1.6.1 item 1 (second-hand), R602.11.1',
    inputs: {
      ...LOW,
      seismicCategory: 'D2',
      diameterIn: 0.625,
      plates: [piece('A', 72, [10, 62])],
    },
    expect: { verdict: 'fails', ratio: null, repairs: ['plate-washer'], values: { fails: 'plate-washer' } },
  },
  {
    name: 'in D2 it cannot be told without a look under the nuts',
    origin: 'hand-worked',
    source: 'IRC 2024 R403.1.6.1 item 1 (second-hand)',
    inputs: {
      embedmentIn: 7,
      middleThird: true,
      diameterIn: 0.625,
      storiesAbove: 1,
      seismicCategory: 'D2',
      plates: [piece('A', 72, [10, 62])],
    },
    expect: { verdict: 'undetermined', remaining: null, missing: ['washer'] },
  },
  {
    name: 'a thin, shallow, off-center bolt without a washer breaks four rules at once',
    origin: 'hand-worked',
    source: IRC,
    inputs: {
      ...LOW,
      diameterIn: 0.375,
      embedmentIn: 5,
      washer: 'none',
      middleThird: false,
      plates: [piece('A', 60, [10, 50])],
    },
    expect: { verdict: 'fails', ratio: 1.4, values: { fails: 'diameter, embedment, middle-third, washer' } },
  },
  {
    name: 'the 2006 code does not ask for the middle third',
    origin: 'hand-worked',
    source: 'IRC 2006 R403.1.6 as quoted',
    edition: 'irc-2006',
    inputs: { ...LOW, diameterIn: 0.5, middleThird: false, plates: [piece('A', 60, [10, 50])] },
    expect: { verdict: 'meets' },
  },
  {
    name: 'without the bolts of a piece it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { diameterIn: 0.5, storiesAbove: 1, plates: [{ lengthIn: 60 }] },
    expect: { verdict: 'undetermined', missing: ['plates.0.boltsIn'] },
  },
  {
    name: 'one good piece does not make up for a bad one',
    origin: 'hand-worked',
    source: `${IRC}: every piece`,
    inputs: { ...LOW, diameterIn: 0.5, plates: [piece('A', 60, [10, 50]), piece('B', 48, [10])] },
    expect: { verdict: 'fails', remaining: 0.5, repairs: ['anchor-bolt-add', 'plate-washer', 'engineer-letter'] },
  },
  {
    name: 'under exactly two stories in D1 bolts 60 in apart are near enough',
    origin: 'second-hand',
    source: 'IRC 2024 R403.1.6.1 item 4 (second-hand): more than two stories',
    inputs: {
      ...LOW,
      storiesAbove: 2,
      seismicCategory: 'D1',
      washer: 'plate-3x3',
      diameterIn: 0.625,
      plates: [piece('A', 84, [12, 72])],
    },
    expect: { verdict: 'meets', values: { spacingLimitIn: 72 } },
  },
  {
    name: 'under three stories bolts 4 ft apart with plate washers meet whatever the seismic category',
    origin: 'hand-worked',
    source: 'IRC 2024 R403.1.6.1 items 1 and 4 (second-hand)',
    inputs: {
      ...SEEN,
      washer: 'plate-3x3',
      diameterIn: 0.625,
      storiesAbove: 3,
      plates: [piece('A', 72, [12, 60])],
    },
    expect: { verdict: 'meets' },
  },
  {
    name: 'bolts in place of which nothing else was seen cannot be told, and every open question is named',
    origin: 'hand-worked',
    source: `${IRC}: 7 in deep, a nut and washer; R403.1.6.1 plate washers by category`,
    inputs: { diameterIn: 0.625, storiesAbove: 1, plates: [piece('A', 72, [10, 62])] },
    expect: {
      verdict: 'undetermined',
      remaining: null,
      severity: 'engineer',
      missing: ['embedmentIn', 'washer', 'seismicCategory'],
    },
  },
  {
    name: 'round washers under a braced wall cannot be told while the category is not known',
    origin: 'hand-worked',
    source: 'IRC 2024 R403.1.6.1 item 1 (second-hand)',
    inputs: { ...SEEN, washer: 'round', diameterIn: 0.625, storiesAbove: 1, plates: [piece('A', 72, [10, 62])] },
    expect: { verdict: 'undetermined', missing: ['seismicCategory'] },
  },
  {
    name: 'in category C they cannot be told while it is not known whether the house is a townhouse',
    origin: 'hand-worked',
    source: 'IRC 2024 R403.1.6.1 (second-hand): townhouses in C',
    inputs: { ...LOW, seismicCategory: 'C', diameterIn: 0.625, plates: [piece('A', 72, [10, 62])] },
    expect: { verdict: 'undetermined', missing: ['townhouse'] },
  },
  {
    name: 'in category C round washers meet where the house is no townhouse',
    origin: 'hand-worked',
    source: 'IRC 2024 R403.1.6.1 (second-hand): townhouses in C',
    inputs: { ...LOW, seismicCategory: 'C', townhouse: false, diameterIn: 0.625, plates: [piece('A', 72, [10, 62])] },
    expect: { verdict: 'meets' },
  },
  {
    name: 'too few bolts fail whatever was not seen',
    origin: 'hand-worked',
    source: `${IRC}: two bolts in every piece`,
    inputs: { diameterIn: 0.625, storiesAbove: 1, plates: [piece('A', 72, [10])] },
    expect: { verdict: 'fails', remaining: 0.5, missing: [] },
  },
  {
    name: 'under three stories too few bolts are counted against the closer spacing while the category is not known',
    origin: 'hand-worked',
    source: 'IRC 2024 R403.1.6.1 item 4 (second-hand): (400 - 24) / 48, rounded up, plus one = 9 bolts; 7 at 6 ft',
    inputs: { ...SEEN, washer: 'plate-3x3', diameterIn: 0.625, storiesAbove: 3, plates: [piece('A', 400, [12, 388])] },
    expect: { verdict: 'fails', remaining: 2 / 9, values: { 'boltsNeeded.A': 7 } },
  },
  {
    name: 'a short piece that joins offset panels and is bolted as any other needs no bolt in its middle third',
    origin: 'hand-worked',
    source: 'the exception of IRC 2024 R403.1.6 permits less, it asks for nothing more',
    inputs: { ...LOW, diameterIn: 0.5, plates: [{ ...piece('A', 21, [4, 17]), joinsOffsetPanels: true }] },
    expect: { verdict: 'meets', values: { 'boltsNeeded.A': 1 } },
  },
  {
    name: 'shallow bolts go to an engineer where two stories stand on them',
    origin: 'common-practice',
    source: 'severity table, two or more stories above',
    inputs: { ...LOW, storiesAbove: 2, embedmentIn: 6, diameterIn: 0.5, plates: [piece('A', 60, [10, 50])] },
    expect: { verdict: 'fails', ratio: 7 / 6, remaining: 1, severity: 'engineer', values: { fails: 'embedment' } },
  },
  {
    name: 'where only washers are missing they are added',
    origin: 'second-hand',
    source: `${IRC}: a nut and washer on each bolt`,
    inputs: { ...LOW, washer: 'none', diameterIn: 0.5, plates: [piece('A', 60, [10, 50])] },
    expect: { verdict: 'fails', severity: 'repair', repairs: ['plate-washer'], values: { fails: 'washer' } },
  },
  {
    name: 'under the 2006 code nobody looks for the middle third',
    origin: 'hand-worked',
    source: 'IRC 2006 R403.1.6 as quoted',
    edition: 'irc-2006',
    inputs: {
      storiesAbove: 1,
      seismicCategory: 'B',
      embedmentIn: 7,
      washer: 'round',
      diameterIn: 0.5,
      plates: [{ lengthIn: 60, boltsIn: [10, 50] }],
    },
    expect: { verdict: 'meets', values: { 'boltsFound.plate 1': 2 } },
  },
];

/** What the rule asks. */
export const rule = text(
  'Every piece of the plate has enough bolts: near each end but not too near, no farther apart than the limit, thick and deep enough, each with its washer.',
  'Cada pieza de la solera tiene pernos suficientes: cerca de cada punta pero no demasiado, no más separados que el límite, gruesos y profundos, con su arandela.',
);

/** What the check answers. */
export const values: ValueWords = {
  boltsNeeded: {
    label: text('Bolts needed', 'Pernos necesarios'),
    how: text(
      'Length less 12 in at both ends, over the spacing limit, rounded up, plus one; at least two a piece.',
      'Largo menos 12 in por punta, entre la separación límite, hacia arriba, más uno; al menos dos por pieza.',
    ),
  },
  boltsFound: { label: text('Bolts found', 'Pernos encontrados'), how: text('As counted.', 'Los contados.') },
  leastEndIn: {
    label: text('Nearest to an end', 'Lo más cerca de una punta'),
    how: text('Seven bolt diameters.', 'Siete diámetros del perno.'),
  },
  mostEndIn: {
    label: text('Farthest from an end', 'Lo más lejos de una punta'),
    how: text('By the code.', 'Por el código.'),
  },
  spacingLimitIn: {
    label: text('Widest spacing', 'Separación máxima'),
    how: text(
      '6 ft; 4 ft over two stories in D0 to D2, and in townhouses in C.',
      '6 ft; 4 ft con más de dos pisos en D0 a D2, y en casas en hilera en C.',
    ),
  },
  endDistances: {
    label: text('End to nearest bolt', 'De la punta al perno más cercano'),
    how: text('From the bolt positions and the length.', 'De las posiciones y el largo.'),
  },
  spacings: {
    label: text('Between bolts', 'Entre pernos'),
    how: text('From one bolt to the next.', 'De un perno al siguiente.'),
  },
  fails: {
    label: text('Rules not kept', 'Reglas sin cumplir'),
    how: text('Each rule the piece, or every bolt, breaks.', 'Cada regla que la pieza o los pernos no cumplen.'),
  },
};
