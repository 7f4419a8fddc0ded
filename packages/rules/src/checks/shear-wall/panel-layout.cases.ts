import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

/** Two sheets side by side on 16 in studs. */
const SHEETS = [
  { xIn: 0, yIn: 0, widthIn: 48, heightIn: 96 },
  { xIn: 48, yIn: 0, widthIn: 48, heightIn: 96 },
];
/** One sheet and its half in two pieces, the joint at 60 in. */
const PIECED = [
  { xIn: 0, yIn: 0, widthIn: 48, heightIn: 96 },
  { xIn: 48, yIn: 0, widthIn: 48, heightIn: 60 },
  { xIn: 48, yIn: 60, widthIn: 48, heightIn: 36 },
];
const WALL = { pieces: SHEETS, studSpacingIn: 16, blockedEdges: false, cuts: [] };
const EDGES = 'SDPWS 4.3.7.1(1), every edge on framing or blocking';

export const cases: readonly CheckCase[] = [
  {
    name: 'two sheets that meet on a stud have wood behind all their edges',
    origin: 'memory',
    source: EDGES,
    inputs: WALL,
    expect: {
      verdict: 'meets',
      remaining: 1,
      referrals: ['engineer'],
      values: { unsupportedEdgeIn: 0, smallestPieceIn: 48, severed: false },
    },
  },
  {
    name: 'a level joint without blocking leaves 48 in of edge on nothing and the part counts for nothing',
    origin: 'memory',
    source: EDGES,
    inputs: { ...WALL, pieces: PIECED },
    expect: {
      verdict: 'fails',
      ratio: null,
      remaining: 0,
      severity: 'engineer',
      repairs: ['panel-blocking', 'panel-replace', 'engineer-letter'],
      values: { unsupportedEdgeIn: 48, smallestPieceIn: 36 },
    },
  },
  {
    name: 'on 16 in studs the unblocked rule would keep 0.6 of it',
    origin: 'second-hand',
    source: 'SDPWS 2021 Table 4.3.5.3 (second-hand), studs 16 in, nails 6 and 12 in',
    inputs: { ...WALL, pieces: PIECED },
    expect: { verdict: 'fails', values: { unblockedFactor: 0.6 } },
  },
  {
    name: 'the same joint blocked meets',
    origin: 'memory',
    source: EDGES,
    inputs: { ...WALL, pieces: PIECED, blockedEdges: true },
    expect: { verdict: 'meets', remaining: 1, values: { unsupportedEdgeIn: 0 } },
  },
  {
    name: 'sheets that meet 4 in off a stud leave the whole joint on nothing',
    origin: 'memory',
    source: EDGES,
    inputs: {
      ...WALL,
      pieces: [
        { xIn: 0, yIn: 0, widthIn: 44, heightIn: 96 },
        { xIn: 44, yIn: 0, widthIn: 52, heightIn: 96 },
      ],
    },
    expect: { verdict: 'fails', values: { unsupportedEdgeIn: 96 } },
  },
  {
    name: 'an edge exactly 3/8 in off the middle of the stud still has it',
    origin: 'memory',
    source: 'a 2x stud is 1-1/2 in; nails 3/8 in from the panel edge, SDPWS 4.3.7.1(2)',
    inputs: {
      ...WALL,
      pieces: [
        { xIn: 0, yIn: 0, widthIn: 48.375, heightIn: 96 },
        { xIn: 48.375, yIn: 0, widthIn: 47.625, heightIn: 96 },
      ],
    },
    expect: { verdict: 'meets' },
  },
  {
    name: 'panels 1/8 in apart make one joint, not two',
    origin: 'hand-worked',
    source: 'both edges of the joint cover the same 48 in',
    inputs: {
      ...WALL,
      pieces: [
        { xIn: 0, yIn: 0, widthIn: 48, heightIn: 60 },
        { xIn: 0, yIn: 60.125, widthIn: 48, heightIn: 35.875 },
      ],
    },
    expect: { verdict: 'fails', values: { unsupportedEdgeIn: 48 } },
  },
  {
    name: 'a cut from edge to edge with nothing behind it severs the panel',
    origin: 'memory',
    source: EDGES,
    inputs: { ...WALL, blockedEdges: true, cuts: [{ lengthIn: 48, crossesPanel: true, backed: false }] },
    expect: {
      verdict: 'fails',
      remaining: 0,
      severity: 'engineer',
      repairs: ['panel-replace', 'panel-blocking', 'engineer-letter'],
      values: { severed: true, unsupportedEdgeIn: 48 },
    },
  },
  {
    name: 'the same cut over blocking, nailed on both sides, is a joint',
    origin: 'memory',
    source: EDGES,
    inputs: { ...WALL, cuts: [{ lengthIn: 48, crossesPanel: true, backed: true }] },
    expect: { verdict: 'meets', values: { severed: false, unsupportedEdgeIn: 0 } },
  },
  {
    name: 'a short cut with nothing behind it is an edge on nothing',
    origin: 'memory',
    source: EDGES,
    inputs: { ...WALL, cuts: [{ lengthIn: 14, crossesPanel: false, backed: false }] },
    expect: { verdict: 'fails', remaining: 0, values: { severed: false, unsupportedEdgeIn: 14 } },
  },
  {
    name: 'a narrow filler with wood behind it meets; small is no rule of the standard',
    origin: 'common-practice',
    source: 'trade habit avoids fillers under 12 in',
    inputs: {
      ...WALL,
      studSpacingIn: 8,
      pieces: [
        { xIn: 0, yIn: 0, widthIn: 48, heightIn: 96 },
        { xIn: 48, yIn: 0, widthIn: 8, heightIn: 96 },
      ],
    },
    expect: { verdict: 'meets', values: { smallestPieceIn: 8 } },
  },
  {
    name: 'good edges with cuts not looked for cannot be told',
    origin: 'hand-worked',
    source: 'no observation, no verdict',
    inputs: { pieces: SHEETS, studSpacingIn: 16, blockedEdges: true },
    expect: { verdict: 'undetermined', remaining: null, missing: ['cuts'] },
  },
  {
    name: 'a cut whose backing was not seen cannot be told',
    origin: 'hand-worked',
    source: 'no observation, no verdict',
    inputs: { ...WALL, cuts: [{ lengthIn: 14, crossesPanel: true, backed: 'unknown' }] },
    expect: { verdict: 'undetermined', missing: ['cuts.0.backed'] },
  },
];

export const rule = text(
  'Every edge of every piece stands on wood and is nailed there; a cut makes two edges.',
  'Todo borde de toda pieza va sobre madera y clavado; un corte hace dos bordes.',
);

/** What the check answers. */
export const values: ValueWords = {
  unsupportedEdgeIn: {
    label: text('Edge with no wood behind it', 'Borde sin madera detrás'),
    how: text(
      'Joints off the studs and plates, each once, and cuts; 0 for joints that are blocked.',
      'Juntas fuera de pies derechos y soleras, una vez cada una, y cortes; 0 si hay bloques.',
    ),
  },
  smallestPieceIn: {
    label: text('Smallest piece', 'Pieza más pequeña'),
    how: text('The least width or height of any piece.', 'El menor ancho o altura.'),
  },
  severed: {
    label: text('A panel is severed', 'Un panel está partido'),
    how: text(
      'A cut runs from edge to edge with no wood behind it.',
      'Un corte va de borde a borde sin madera detrás.',
    ),
  },
  unblockedFactor: {
    label: text('Share by the unblocked rule', 'Parte según la regla sin bloqueo'),
    how: text(
      'From the table, for the studs and nails at 6 and 12 in.',
      'De la tabla, según pies derechos y clavos a 6 y 12 in.',
    ),
  },
};
