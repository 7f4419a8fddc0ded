import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const GOOD = {
  memberWidthIn: 1.5,
  hangerWidthIn: 1.5625,
  seatGapIn: 0.0625,
  endGapIn: 0.0625,
  header: { specified: 10, installed: 10 },
  joist: { specified: 6, installed: 6 },
  rightFastener: true,
  loose: false,
} as const;
const HABIT = 'typical installation notes: gaps to 1/8 in, every hole nailed';

export const cases: readonly CheckCase[] = [
  {
    name: 'a hanger that fits with every hole nailed meets',
    origin: 'common-practice',
    source: HABIT,
    inputs: GOOD,
    expect: { verdict: 'meets', ratio: 1, remaining: 1, severity: 'record', repairs: [] },
  },
  {
    name: 'gaps of exactly 1/8 in still meet',
    origin: 'common-practice',
    source: HABIT,
    inputs: { ...GOOD, hangerWidthIn: 1.625, seatGapIn: 0.125, endGapIn: 0.125 },
    expect: { verdict: 'meets', ratio: 1, remaining: 1 },
  },
  {
    name: '6 of 10 header nails leave 0.6 and go to an engineer',
    origin: 'common-practice',
    source: 'least share of the fasteners, a screening assumption',
    inputs: { ...GOOD, header: { specified: 10, installed: 6 } },
    expect: {
      verdict: 'fails',
      ratio: 10 / 6,
      remaining: 0.6,
      severity: 'engineer',
      values: { headerShare: 0.6, joistShare: 1, headerToAdd: 4 },
      repairs: ['hanger-refasten', 'hanger-replace', 'engineer-letter'],
    },
  },
  {
    name: 'one nail of ten missing in the header is a nail to add, no matter for an engineer',
    origin: 'common-practice',
    source: 'severity table, nails missing in a hanger that holds',
    inputs: { ...GOOD, header: { specified: 10, installed: 9 } },
    expect: {
      verdict: 'fails',
      remaining: 0.9,
      severity: 'repair',
      referrals: [],
      repairs: ['hanger-refasten', 'hanger-replace'],
    },
  },
  {
    name: 'two nails of ten missing leave 0.8 and go to an engineer',
    origin: 'common-practice',
    source: 'severity table, 0.85',
    inputs: { ...GOOD, header: { specified: 10, installed: 8 } },
    expect: { verdict: 'fails', remaining: 0.8, severity: 'engineer' },
  },
  {
    name: 'a short gap of exactly 1/4 in at the joist end is a repair while every nail is in',
    origin: 'common-practice',
    source: 'severity table, a short gap',
    inputs: { ...GOOD, endGapIn: 0.25 },
    expect: { verdict: 'fails', ratio: 2, remaining: 1, severity: 'repair' },
  },
  {
    name: 'a gap of 1/2 in at the joist end goes to an engineer',
    origin: 'common-practice',
    source: 'severity table: no short gap',
    inputs: { ...GOOD, endGapIn: 0.5 },
    expect: { verdict: 'fails', ratio: 4, remaining: 1, severity: 'engineer' },
  },
  {
    name: 'a hanger of exactly 0.6 of the joist depth meets',
    origin: 'second-hand',
    source: 'IRC 2024 R507.6.2 as quoted, for decks: at least 60%; 6.0 / 10.0',
    inputs: { ...GOOD, hangerDepthIn: 6, joistDepthIn: 10 },
    expect: { verdict: 'meets', ratio: 1, values: { depthShare: 0.6 } },
  },
  {
    name: 'a hanger 5 in deep lets a 2x10 roll: a deeper one, and no engineer',
    origin: 'second-hand',
    source: 'IRC 2024 R507.6.2 as quoted, for decks; 0.6 x 9.25 / 5',
    inputs: { ...GOOD, hangerDepthIn: 5, joistDepthIn: 9.25 },
    expect: {
      verdict: 'fails',
      ratio: (0.6 * 9.25) / 5,
      remaining: 1,
      severity: 'repair',
      values: { depthShare: 5 / 9.25 },
      repairs: ['hanger-replace'],
    },
  },
  {
    name: 'the depth of the hanger alone asks for that of the joist',
    origin: 'hand-worked',
    source: 'a share needs both',
    inputs: { ...GOOD, hangerDepthIn: 5 },
    expect: { verdict: 'undetermined', missing: ['joistDepthIn'] },
  },
  {
    name: 'the side with the smaller share governs',
    origin: 'common-practice',
    source: 'least share of the fasteners, a screening assumption',
    inputs: { ...GOOD, header: { specified: 10, installed: 9 }, joist: { specified: 6, installed: 3 } },
    expect: { verdict: 'fails', remaining: 0.5 },
  },
  {
    name: 'a loose hanger counts for nothing and is unsafe',
    origin: 'common-practice',
    source: 'severity table, hanger loose',
    inputs: { ...GOOD, loose: true },
    expect: { verdict: 'fails', ratio: null, remaining: 0, severity: 'make-safe' },
  },
  {
    name: 'screws in place of nails count for nothing',
    origin: 'second-hand',
    source: 'inspector notes: screws not accepted in place of nails',
    inputs: { ...GOOD, rightFastener: false },
    expect: { verdict: 'fails', remaining: 0, severity: 'make-safe' },
  },
  {
    name: 'a hanger 1/2 in wider than its joist fails though every hole is nailed',
    origin: 'common-practice',
    source: HABIT,
    inputs: { ...GOOD, hangerWidthIn: 2 },
    expect: {
      verdict: 'fails',
      ratio: 4,
      remaining: 1,
      severity: 'engineer',
      repairs: ['hanger-replace', 'engineer-letter'],
    },
  },
  {
    name: 'a loose hanger is unsafe before its nails are counted',
    origin: 'common-practice',
    source: 'severity table, first row',
    inputs: { loose: true, rightFastener: true, memberWidthIn: 1.5, hangerWidthIn: 1.5, seatGapIn: 0, endGapIn: 0 },
    expect: { verdict: 'undetermined', severity: 'make-safe', missing: ['header', 'joist'] },
  },
  {
    name: 'without the nail counts it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { ...GOOD, header: { specified: 10 } },
    expect: { verdict: 'undetermined', severity: 'engineer', missing: ['header.installed'] },
  },
  {
    name: 'a hanger with no nail in the joist is attached on one side only: unsafe',
    origin: 'common-practice',
    source: 'severity table, nothing holds',
    inputs: { ...GOOD, joist: { specified: 6, installed: 0 } },
    expect: { verdict: 'fails', ratio: null, remaining: 0, severity: 'make-safe', values: { joistToAdd: 6 } },
  },
  {
    name: 'a hanger with no nail in the header is unsafe before anything else is measured',
    origin: 'common-practice',
    source: 'severity table, nothing holds',
    inputs: { header: { specified: 10, installed: 0 } },
    expect: { verdict: 'undetermined', severity: 'make-safe' },
  },
  {
    name: 'a gap under the joist alone is shimmed, no nail is missing',
    origin: 'common-practice',
    source: HABIT,
    inputs: { ...GOOD, seatGapIn: 0.25 },
    expect: { verdict: 'fails', ratio: 2, remaining: 1, severity: 'repair', repairs: ['re-shim', 'hanger-replace'] },
  },
  {
    name: 'nails missing in the joist alone are added',
    origin: 'common-practice',
    source: 'least share of the fasteners, a screening assumption',
    inputs: { ...GOOD, joist: { specified: 6, installed: 3 } },
    expect: { verdict: 'fails', remaining: 0.5, repairs: ['hanger-refasten', 'hanger-replace', 'engineer-letter'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'The hanger is as wide as its member, deep enough to keep it upright, sits tight, has the right nail in every hole, and is not loose.',
  'El estribo es tan ancho como su elemento, tan alto que no lo deja girar, queda ajustado, lleva el clavo correcto en cada agujero y no está flojo.',
);

/** What the check answers. */
export const values: ValueWords = {
  widthGapIn: {
    label: text('Gap beside the member', 'Espacio al lado'),
    how: text('Hanger width less member width.', 'Ancho del estribo menos el del elemento.'),
  },
  seatGapIn: { label: text('Gap at the seat', 'Espacio en el asiento'), how: text('As measured.', 'Como se midió.') },
  endGapIn: { label: text('Gap at the end', 'Espacio en la punta'), how: text('As measured.', 'Como se midió.') },
  depthShare: {
    label: text('Hanger depth over joist depth', 'Altura del estribo entre la de la vigueta'),
    how: text('Depth of the hanger, divided by that of the joist.', 'Altura del estribo, dividida entre la vigueta.'),
  },
  headerShare: {
    label: text('Nails in the header', 'Clavos en el cabezal'),
    how: text('Nails in, divided by holes to be filled.', 'Clavos puestos, divididos entre agujeros.'),
  },
  joistShare: {
    label: text('Nails in the joist', 'Clavos en la vigueta'),
    how: text('Nails in, divided by holes to be filled.', 'Clavos puestos, divididos entre agujeros.'),
  },
  headerToAdd: {
    label: text('Nails to add, header', 'Clavos por agregar, cabezal'),
    how: text('Holes to be filled less nails in.', 'Agujeros menos clavos puestos.'),
  },
  joistToAdd: {
    label: text('Nails to add, joist', 'Clavos por agregar, vigueta'),
    how: text('Holes to be filled less nails in.', 'Agujeros menos clavos puestos.'),
  },
};
