import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const POUND = { within: 0.5, reason: 'the worked numbers are written to the pound' };
const END = {
  widthIn: 1.5,
  bearingLengthIn: 1.5,
  support: 'wood',
  positiveConnection: true,
  atMemberEnd: true,
} as const;

export const cases: readonly CheckCase[] = [
  {
    name: 'a 2x Douglas fir joist on exactly 1-1/2 in meets and takes 1406 lb at its end',
    origin: 'hand-worked',
    source: '625 psi x 1.5 in x 1.5 in, IRC R502.6',
    inputs: { ...END, species: 'douglas-fir-larch' },
    expect: {
      verdict: 'meets',
      ratio: 1,
      remaining: 1,
      severity: 'record',
      values: { capacityLb: 1406, bearingFactor: 1, requiredIn: 1.5 },
    },
    tolerance: POUND,
  },
  {
    name: 'the same joist of hem-fir on 1 in keeps 67% and 607.5 lb',
    origin: 'hand-worked',
    source: '405 psi x 1.5 in x 1.0 in; 1.0 / 1.5',
    inputs: { ...END, species: 'hem-fir', bearingLengthIn: 1 },
    expect: { verdict: 'fails', ratio: 1.5, remaining: 2 / 3, severity: 'engineer', values: { capacityLb: 607.5 } },
  },
  {
    name: 'at 466.7 lb the load needs 0.77 in and the 1-1/2 in of the code still governs',
    origin: 'hand-worked',
    source: '466.7 / (405 x 1.5)',
    inputs: { ...END, species: 'hem-fir', reactionLb: 466.7 },
    expect: { verdict: 'meets', values: { requiredByLoadIn: 0.768, requiredIn: 1.5, stressPsi: 207.4 } },
    tolerance: { within: 0.05, reason: 'the worked numbers are rounded' },
  },
  {
    name: 'a 3-1/2 in beam on a 3 in post takes 6562 lb at its end',
    origin: 'hand-worked',
    source: '625 x 3.5 x 3.0',
    inputs: { ...END, widthIn: 3.5, bearingLengthIn: 3, species: 'douglas-fir-larch' },
    expect: { verdict: 'meets', values: { capacityLb: 6562, bearingFactor: 1 } },
    tolerance: { within: 0.6, reason: 'the worked number drops the half pound' },
  },
  {
    name: 'the same beam away from its end takes 7383 lb, bearing factor 1.125',
    origin: 'second-hand',
    source: 'NDS Table 3.10.4 prints 1.13 for 3 in; equation (lb + 0.375)/lb',
    inputs: { ...END, widthIn: 3.5, bearingLengthIn: 3, species: 'douglas-fir-larch', atMemberEnd: false },
    expect: { verdict: 'meets', values: { capacityLb: 7383, bearingFactor: 1.125 } },
    tolerance: POUND,
  },
  {
    name: 'masonry asks 3 in',
    origin: 'second-hand',
    source: 'IRC R502.6 as quoted, 2009 and 2015',
    inputs: { ...END, species: 'hem-fir', support: 'masonry', bearingLengthIn: 2.5 },
    expect: { verdict: 'fails', ratio: 1.2, remaining: 2.5 / 3, severity: 'engineer', values: { requiredIn: 3 } },
  },
  {
    name: 'on a sill over masonry 2 in meet or not, as the official reads R502.6',
    origin: 'second-hand',
    source: 'IRC R502.6 commentary as read: 3 in also through a sill, disputed',
    inputs: { ...END, species: 'hem-fir', bearingLengthIn: 2, sillOnMasonry: 'three-inches' },
    expect: { verdict: 'fails', ratio: 1.5, values: { requiredIn: 3 } },
  },
  {
    name: 'read as any wood the same 2 in meet',
    origin: 'second-hand',
    source: 'IRC R502.6 as quoted: 1-1/2 in on wood',
    inputs: { ...END, species: 'hem-fir', bearingLengthIn: 2, sillOnMasonry: 'as-wood' },
    expect: { verdict: 'meets', ratio: 0.75, values: { requiredIn: 1.5 } },
  },
  {
    name: 'a seat of 2 in that keeps exactly 1-1/2 in after moving 1/2 in meets',
    origin: 'hand-worked',
    source: '2.0 - 0.5 against 1.5 in; 625 x 3.5 x 1.5',
    inputs: { ...END, widthIn: 3.5, species: 'douglas-fir-larch', bearingLengthIn: 2, expectedMovementIn: 0.5 },
    expect: { verdict: 'meets', ratio: 0.75, values: { seatMarginIn: 1.5, capacityAfterLb: 3281.25 } },
  },
  {
    name: 'a seat enough today that keeps 1-1/4 in after moving 1/4 in does not meet',
    origin: 'hand-worked',
    source: '1.5 / 1.25; today 1.5 / 1.5',
    inputs: { ...END, widthIn: 3.5, species: 'douglas-fir-larch', expectedMovementIn: 0.25 },
    expect: { verdict: 'fails', ratio: 1.2, remaining: 1, severity: 'engineer', values: { seatMarginIn: 1.25 } },
  },
  {
    name: 'a strapped seat that moves off altogether hangs on its strap: engineer',
    origin: 'hand-worked',
    source: '1.5 - 1.5 in; no ratio with nothing left',
    inputs: { ...END, species: 'douglas-fir-larch', expectedMovementIn: 1.5 },
    expect: { verdict: 'fails', ratio: null, severity: 'engineer', values: { seatMarginIn: 0, capacityAfterLb: 0 } },
  },
  {
    name: 'a sliver of 1/2 in that will shrink away, with no connection, is unsafe now',
    origin: 'common-practice',
    source: 'severity table, seat left after the movement is 0',
    inputs: { ...END, species: 'hem-fir', bearingLengthIn: 0.5, expectedMovementIn: 0.5, positiveConnection: false },
    expect: { verdict: 'fails', remaining: 0, severity: 'make-safe', values: { seatMarginIn: 0 } },
  },
  {
    name: 'the same sliver, shored, goes to the engineer',
    origin: 'common-practice',
    source: 'severity table, not shored',
    inputs: { ...END, species: 'hem-fir', bearingLengthIn: 0.5, expectedMovementIn: 0.5, positiveConnection: false },
    situation: { shored: true },
    expect: { verdict: 'fails', remaining: 0, severity: 'engineer' },
  },
  {
    name: 'a design value typed in stands for the species: 565 psi take 1271.25 lb',
    origin: 'hand-worked',
    source: '565 x 1.5 x 1.5',
    inputs: { ...END, fcPerpPsi: 565 },
    expect: { verdict: 'meets', values: { capacityLb: 1271.25 } },
  },
  {
    name: 'a load that needs 2 in on 1-1/2 in of seat leaves three quarters and goes to an engineer',
    origin: 'hand-worked',
    source: '810 / (405 x 1.0) = 2.0 in for 1 in of width; 2.0 / 1.5',
    inputs: { ...END, widthIn: 1, species: 'hem-fir', reactionLb: 810 },
    expect: {
      verdict: 'fails',
      ratio: 4 / 3,
      remaining: 0.75,
      severity: 'engineer',
      values: { requiredByLoadIn: 2, requiredIn: 2, stressPsi: 540 },
      repairs: ['seat-restore', 'seat-connect', 'engineer-letter'],
    },
  },
  {
    name: 'with more than one and a half times its load on the wood the seat is unsafe now',
    origin: 'hand-worked',
    source: '1000 / (335 x 1.0 x 1.5) is over 1.5; the value of this species is from memory',
    inputs: { ...END, widthIn: 1, species: 'spruce-pine-fir-south', reactionLb: 1000 },
    expect: { verdict: 'fails', ratio: 1000 / 502.5, severity: 'make-safe' },
  },
  {
    name: 'less than half of the seat left is unsafe now, strapped or not',
    origin: 'common-practice',
    source: 'severity table, a seat under one half; 0.7 / 1.5',
    inputs: { ...END, species: 'hem-fir', bearingLengthIn: 0.7 },
    expect: { verdict: 'fails', remaining: 0.7 / 1.5, severity: 'make-safe' },
  },
  {
    name: '6 in away from the end take less than the load that 5-7/8 in take: the factor ends at 6 in',
    origin: 'hand-worked',
    source: 'NDS 3.10.4: 625 x 1.5 x 6.0 = 5625 lb against 5812.5 lb; 625 x 1.5 x (5.825 + 0.375) = 5812.5 lb',
    inputs: {
      ...END,
      species: 'douglas-fir-larch',
      atMemberEnd: false,
      bearingLengthIn: 6,
      reactionLb: 5812.5,
      expectedMovementIn: 0,
    },
    expect: {
      verdict: 'fails',
      ratio: 5812.5 / 5625,
      values: { requiredByLoadIn: 5.825, bearingFactor: 1, capacityAfterLb: 5625 },
    },
  },
  {
    name: 'away from the end the seat left after the movement has a bearing factor of its own',
    origin: 'hand-worked',
    source: '625 x 1.5 x 3.0 x 1.125 = 3164.06 lb today; 625 x 1.5 x 2.0 x 1.1875 = 2226.56 lb with 2 in left',
    inputs: {
      ...END,
      species: 'douglas-fir-larch',
      atMemberEnd: false,
      bearingLengthIn: 3,
      reactionLb: 2200,
      expectedMovementIn: 1,
    },
    expect: { verdict: 'meets', values: { capacityLb: 3164.0625, capacityAfterLb: 2226.5625 } },
  },
  {
    name: 'a beam that bears 3 in and that nothing but friction holds fails, and asks for a connector',
    origin: 'second-hand',
    source: 'IRC R502.9 as quoted: gravity or friction alone is not enough',
    inputs: { ...END, widthIn: 3.5, bearingLengthIn: 3, species: 'douglas-fir-larch', positiveConnection: false },
    expect: {
      verdict: 'fails',
      ratio: null,
      remaining: 1,
      severity: 'repair',
      values: { sidewaysShare: 0, capacityLb: 6562.5 },
      repairs: ['seat-connect'],
    },
  },
  {
    name: 'enough length, and nobody looked for a connection: it cannot be told',
    origin: 'second-hand',
    source: 'IRC R502.9 as quoted',
    inputs: { ...END, species: 'douglas-fir-larch', bearingLengthIn: 3, positiveConnection: undefined },
    expect: { verdict: 'undetermined', missing: ['positiveConnection'], severity: 'engineer' },
  },
  {
    name: 'a loose seat too short for the code gets wood and a connector',
    origin: 'hand-worked',
    source: '1.0 / 1.5',
    inputs: { ...END, species: 'hem-fir', bearingLengthIn: 1, positiveConnection: false },
    expect: {
      verdict: 'fails',
      remaining: 2 / 3,
      severity: 'engineer',
      repairs: ['seat-restore', 'seat-connect', 'engineer-letter'],
    },
  },
  {
    name: 'a loose seat, long enough today, that moves too far asks first for a connection',
    origin: 'common-practice',
    source: 'the seat itself is long enough',
    inputs: { ...END, species: 'hem-fir', bearingLengthIn: 1.75, expectedMovementIn: 1, positiveConnection: false },
    expect: {
      verdict: 'fails',
      ratio: 2,
      remaining: 1,
      severity: 'engineer',
      repairs: ['seat-connect', 'engineer-letter'],
    },
  },
  {
    name: 'a seat that will move off is unsafe before anything else is measured',
    origin: 'common-practice',
    source: 'severity table, first row',
    inputs: { bearingLengthIn: 0.5, expectedMovementIn: 0.5, positiveConnection: false },
    expect: { verdict: 'undetermined', severity: 'make-safe' },
  },
  {
    name: 'a loose seat with wood under it still waits for its measurements',
    origin: 'common-practice',
    source: 'severity table: the seat may be long enough',
    inputs: { bearingLengthIn: 1.5, positiveConnection: false },
    expect: { verdict: 'undetermined', severity: 'engineer' },
  },
  {
    name: 'no seat, and nobody has looked for a connection yet: it waits, with an engineer',
    origin: 'common-practice',
    source: 'severity table: a connection may hold it',
    inputs: { bearingLengthIn: 0 },
    expect: { verdict: 'undetermined', severity: 'engineer' },
  },
  {
    name: 'no seat and no connection is unsafe before anything else is measured',
    origin: 'common-practice',
    source: 'severity table, first row',
    inputs: { bearingLengthIn: 0, positiveConnection: false },
    expect: {
      verdict: 'undetermined',
      severity: 'make-safe',
      missing: ['widthIn', 'support', 'species', 'atMemberEnd'],
    },
  },
];

/** What the rule asks. */
export const rule = text(
  'The member rests on enough length for the code and for its load, also after the building has moved, and something besides friction holds it.',
  'El elemento se apoya en largo suficiente para el código y para su carga, también después de moverse la casa, y algo más que la fricción lo sujeta.',
);

/** What the check answers. */
export const values: ValueWords = {
  requiredIn: {
    label: text('Bearing needed', 'Apoyo necesario'),
    how: text('The larger of what the code and the load ask.', 'El mayor entre lo que piden el código y la carga.'),
  },
  requiredByCodeIn: {
    label: text('Bearing the code asks', 'Apoyo que pide el código'),
    how: text('From the code, by what it sits on.', 'Del código, según en qué se apoya.'),
  },
  requiredByLoadIn: {
    label: text('Bearing the load asks', 'Apoyo que pide la carga'),
    how: text(
      'The length at which width, length, design value and bearing factor carry the load.',
      'El largo con que ancho, largo, valor de diseño y factor resisten la carga.',
    ),
  },
  stressPsi: {
    label: text('Pressure on the wood', 'Presión en la madera'),
    how: text('Load, divided by width and bearing length.', 'Carga, dividida entre ancho y largo de apoyo.'),
  },
  bearingFactor: {
    label: text('Bearing area factor', 'Factor de área de apoyo'),
    how: text(
      'Bearing length plus 0.375 in, over the length; 1 near the end or from 6 in.',
      'Largo más 0.375 in, entre el largo; 1 cerca de la punta o desde 6 in.',
    ),
  },
  capacityLb: {
    label: text('Can carry', 'Puede cargar'),
    how: text(
      'Design value across the grain times width, bearing length and bearing factor.',
      'Valor de diseño por ancho, largo de apoyo y factor.',
    ),
  },
  capacityAfterLb: {
    label: text('Can carry after movement', 'Puede cargar tras el movimiento'),
    how: text('The same with the seat left after movement.', 'Lo mismo con el apoyo que queda.'),
  },
  sidewaysShare: {
    label: text('Counts sideways and against uplift', 'Cuenta de lado y contra levantamiento'),
    how: text('Nothing without a positive connection.', 'Nada sin una conexión positiva.'),
  },
  seatMarginIn: {
    label: text('Seat left after movement', 'Apoyo que queda tras el movimiento'),
    how: text('Bearing length less the movement expected.', 'Largo de apoyo menos el movimiento esperado.'),
  },
};
