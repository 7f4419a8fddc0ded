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
const SIZE = 'SDPWS 4.3.7.1(1), panels not under 4 x 8 ft but at the ends and at changes in framing';
const sheetAt = (xIn: number) => ({ xIn, yIn: 0, widthIn: 48, heightIn: 96 });
/** Twelve strips 4 in wide, every joint with wood behind it. */
const STRIPS = Array.from({ length: 12 }, (_strip, at) => ({ xIn: 4 * at, yIn: 0, widthIn: 4, heightIn: 96 }));

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
    name: 'a narrow filler at the end of the wall part with wood behind it meets',
    origin: 'memory',
    source: `${SIZE}; trade habit avoids fillers under 12 in`,
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
    name: 'a level band 16 in high with no panel on it fails though every panel edge has wood behind it',
    origin: 'memory',
    source: `${EDGES}; 48 x 16 in = 5.33 sf`,
    inputs: {
      ...WALL,
      blockedEdges: true,
      pieces: [
        { xIn: 0, yIn: 0, widthIn: 48, heightIn: 40 },
        { xIn: 0, yIn: 56, widthIn: 48, heightIn: 40 },
      ],
    },
    expect: {
      verdict: 'fails',
      ratio: null,
      remaining: 0,
      severity: 'engineer',
      referrals: ['engineer'],
      repairs: ['panel-replace', 'panel-blocking', 'engineer-letter'],
      values: { uncoveredSf: 16 / 3, unsupportedEdgeIn: 0 },
    },
  },
  {
    name: 'a whole sheet missing between two others leaves 32 sf bare and the part counts for nothing',
    origin: 'hand-worked',
    source: '48 x 96 in',
    inputs: { ...WALL, blockedEdges: true, pieces: [sheetAt(0), sheetAt(96)] },
    expect: { verdict: 'fails', remaining: 0, severity: 'engineer', values: { uncoveredSf: 32 } },
  },
  {
    name: 'a whole sheet missing at the end of a part whose length was measured is seen as well',
    origin: 'hand-worked',
    source: '48 x 96 in of 144 in',
    inputs: { ...WALL, partWidthIn: 144, partHeightIn: 96 },
    expect: { verdict: 'fails', remaining: 0, values: { uncoveredSf: 32 } },
  },
  {
    name: 'one knee-high piece alone in a wall part 96 in high leaves the rest bare',
    origin: 'hand-worked',
    source: '48 x (96 - 24) in = 24 sf; its top edge stands on nothing',
    inputs: {
      ...WALL,
      partWidthIn: 48,
      partHeightIn: 96,
      pieces: [{ xIn: 0, yIn: 0, widthIn: 48, heightIn: 24 }],
    },
    expect: { verdict: 'fails', remaining: 0, values: { uncoveredSf: 24, unsupportedEdgeIn: 48 } },
  },
  {
    name: 'panels exactly 1/4 in apart are a joint, not bare framing',
    origin: 'common-practice',
    source: 'panels are set 1/8 in apart; twice that still reads as a joint',
    inputs: { ...WALL, blockedEdges: true, pieces: [sheetAt(0), sheetAt(48.25)] },
    expect: { verdict: 'meets', remaining: 1, values: { uncoveredSf: 0 } },
  },
  {
    name: 'panels 5/16 in apart leave a bare strip',
    origin: 'common-practice',
    source: 'panels are set 1/8 in apart; 0.3125 x 96 in',
    inputs: { ...WALL, blockedEdges: true, pieces: [sheetAt(0), sheetAt(48.3125)] },
    expect: { verdict: 'fails', values: { uncoveredSf: (0.3125 * 96) / 144 } },
  },
  {
    name: 'where four panels meet 1/8 in apart nothing is bare',
    origin: 'hand-worked',
    source: 'the crossing of two joints is no wider than a joint',
    inputs: {
      ...WALL,
      blockedEdges: true,
      pieces: [sheetAt(0), sheetAt(48.125)].flatMap((sheet) => [sheet, { ...sheet, yIn: 96.125, heightIn: 47.875 }]),
    },
    expect: { verdict: 'meets', values: { uncoveredSf: 0 } },
  },
  {
    name: 'a sheet that stops exactly 3/4 in short of the top of its plate still has its nails in it',
    origin: 'hand-worked',
    source: 'a plate 1-1/2 in thick: 3/8 in of panel and 3/8 in of wood at the nail, SDPWS 4.3.7.1(2)',
    inputs: { ...WALL, partWidthIn: 96, partHeightIn: 96.75 },
    expect: { verdict: 'meets', remaining: 1, values: { uncoveredSf: 0 } },
  },
  {
    name: 'an inch short of the top of its plate it does not',
    origin: 'hand-worked',
    source: '96 x 1 in of bare plate',
    inputs: { ...WALL, partWidthIn: 96, partHeightIn: 97 },
    expect: { verdict: 'fails', remaining: 0, values: { uncoveredSf: 96 / 144 } },
  },
  {
    name: 'twelve 4 in strips with wood behind every joint cannot be told and go to an engineer',
    origin: 'memory',
    source: SIZE,
    inputs: { ...WALL, blockedEdges: true, pieces: STRIPS, partWidthIn: 48, partHeightIn: 96 },
    expect: {
      verdict: 'undetermined',
      remaining: null,
      severity: 'engineer',
      missing: ['smallAtFramingChange'],
      referrals: ['engineer'],
      repairs: ['engineer-letter'],
      values: { smallestPieceIn: 4, uncoveredSf: 0 },
    },
  },
  {
    name: 'asked and answered that no framing changes there, they still go to an engineer',
    origin: 'memory',
    source: SIZE,
    inputs: { ...WALL, blockedEdges: true, pieces: STRIPS, smallAtFramingChange: false },
    expect: { verdict: 'undetermined', severity: 'engineer', missing: [], referrals: ['engineer'] },
  },
  {
    name: 'a 24 in piece between two sheets meets where it stops at a change in framing',
    origin: 'memory',
    source: SIZE,
    inputs: {
      ...WALL,
      blockedEdges: true,
      smallAtFramingChange: true,
      pieces: [sheetAt(0), { ...sheetAt(48), widthIn: 24 }, sheetAt(72)],
    },
    expect: { verdict: 'meets', remaining: 1 },
  },
  {
    name: 'sheets laid on their sides with the joints staggered meet: every half sheet stands at an end',
    origin: 'memory',
    source: SIZE,
    inputs: {
      ...WALL,
      blockedEdges: true,
      pieces: [
        { xIn: 0, yIn: 0, widthIn: 96, heightIn: 48 },
        { xIn: 96, yIn: 0, widthIn: 48, heightIn: 48 },
        { xIn: 0, yIn: 48, widthIn: 48, heightIn: 48 },
        { xIn: 48, yIn: 48, widthIn: 96, heightIn: 48 },
      ],
    },
    expect: { verdict: 'meets' },
  },
  {
    name: 'a loose edge fails whatever the size of the pieces',
    origin: 'memory',
    source: EDGES,
    inputs: { ...WALL, pieces: STRIPS },
    expect: { verdict: 'fails', remaining: 0, values: { unsupportedEdgeIn: 9 * 96 } },
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
  'Panel covers the whole wall part; every edge of every piece stands on wood and is nailed there, and a cut makes two edges. Pieces under 4 x 8 ft belong at the ends.',
  'El panel cubre toda la parte de la pared; todo borde de toda pieza va sobre madera y clavado, y un corte hace dos bordes. Las piezas de menos de 4 x 8 ft van en los extremos.',
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
  uncoveredSf: {
    label: text('Framing with no panel on it', 'Armazón sin panel'),
    how: text(
      'Area of the wall part that no piece covers, joints left out. Without its size the part reaches as far as the pieces.',
      'Área de la parte de la pared que ninguna pieza cubre, sin contar juntas. Sin su tamaño, la parte llega hasta donde llegan las piezas.',
    ),
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
