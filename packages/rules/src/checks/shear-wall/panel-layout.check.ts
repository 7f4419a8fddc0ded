import {
  type Complete,
  compareLengths,
  defineCheck,
  factorOf,
  flag,
  type InputIssue,
  inchesOf,
  type Judgement,
  length,
  list,
  type Partials,
  type Reason,
  reasonThat,
  refuse,
  type Text,
  text,
  yesNoOf,
} from '../../kernel/index.ts';
import {
  DIAPHRAGM_PIECE_IN,
  PANEL_EDGE_SOURCE,
  SMALL_PIECE_IN,
  SMALL_PIECE_SOURCE,
} from '../../standards/sdpws-common/panel-edges.data.ts';
import { FIELD_LIMIT_IN } from '../../standards/sdpws-common/shear-walls.data.ts';
import { UNBLOCKED_SOURCE, unblockedFactor } from '../../standards/sdpws-common/unblocked.data.ts';
import { panelLayoutCard } from './panel-layout.card.ts';
import { edgesOffFramingIn, overlap, type Piece } from './panel-layout.joints.ts';

const place = (label: Text) => length({ unit: 'in', min: 0, max: 4800, label });
const size = (label: Text) => length({ unit: 'in', min: 0.5, max: 4800, label });

const inputs = {
  pieces: list({
    minItems: 1,
    maxItems: 60,
    label: text('Pieces of panel', 'Piezas de panel'),
    howToMeasure: text('One wall part, from post to post.', 'Una parte del muro, de poste a poste.'),
    item: {
      xIn: place(text('From the first stud', 'Desde el primer pie derecho')),
      yIn: place(text('From the bottom plate', 'Desde la solera inferior')),
      widthIn: size(text('Width', 'Ancho')),
      heightIn: size(text('Height', 'Altura')),
    },
  }),
  studSpacingIn: length({
    unit: 'in',
    min: 4,
    max: 96,
    label: text('Stud spacing', 'Separación de pies derechos'),
    howToMeasure: text('Center to center.', 'De centro a centro.'),
  }),
  blockedEdges: flag({
    label: text(
      'Wood behind every joint that is off the studs?',
      '¿Madera detrás de toda junta fuera de pies derechos?',
    ),
  }),
  cuts: list({
    needed: 'optional',
    maxItems: 60,
    label: text('Saw cuts in the panels', 'Cortes de sierra en los paneles'),
    howToMeasure: text('An empty list when there are none.', 'Lista vacía si no hay.'),
    item: {
      lengthIn: size(text('Length of the cut', 'Largo del corte')),
      crossesPanel: flag({ label: text('From edge to edge of the panel?', '¿De borde a borde del panel?') }),
      backed: flag({ label: text('Wood behind it, nailed on both sides?', '¿Madera detrás, clavada a ambos lados?') }),
    },
  }),
} as const;

type LayoutInputs = Complete<typeof inputs>;

/** What the panels rest on and what cuts them. Inches. */
interface Layout {
  readonly unsupportedIn: number;
  readonly smallestIn: number;
  readonly severed: boolean;
}

function layoutOf({ pieces, studSpacingIn, blockedEdges, cuts = [] }: LayoutInputs): Layout {
  let unsupportedIn = blockedEdges ? 0 : edgesOffFramingIn(pieces, studSpacingIn);
  let severed = false;
  for (const cut of cuts) {
    if (cut.backed) continue;
    unsupportedIn += cut.lengthIn;
    severed ||= cut.crossesPanel;
  }
  let smallestIn = Number.POSITIVE_INFINITY;
  for (const { widthIn, heightIn } of pieces) smallestIn = Math.min(smallestIn, widthIn, heightIn);
  return { unsupportedIn, smallestIn, severed };
}

function judgeLayout(given: LayoutInputs): Judgement {
  const found = layoutOf(given);
  const fails = found.severed || found.unsupportedIn > 0;
  const unseen = !fails && given.cuts === undefined;
  const unblocked = given.blockedEdges ? undefined : unblockedFactor(given.studSpacingIn, FIELD_LIMIT_IN);
  return {
    verdict: fails ? 'fails' : unseen ? 'undetermined' : 'meets',
    remaining: fails ? 0 : unseen ? null : 1,
    missing: unseen ? ['cuts'] : [],
    values: () => ({
      unsupportedEdgeIn: inchesOf(found.unsupportedIn),
      smallestPieceIn: inchesOf(found.smallestIn),
      severed: yesNoOf(found.severed),
      ...(unblocked !== undefined && { unblockedFactor: factorOf(unblocked) }),
    }),
    reasons: () => layoutReasons(found),
    cautions: () => layoutCautions(found, unblocked),
    hangsOn: [PANEL_EDGE_SOURCE],
    sources: [PANEL_EDGE_SOURCE, SMALL_PIECE_SOURCE, UNBLOCKED_SOURCE],
    referrals: fails ? ['engineer'] : [],
    repairs: fails ? repairsFor(found) : [],
  };
}

const repairsFor = ({ severed }: Layout): readonly string[] =>
  severed
    ? ['panel-replace', 'panel-blocking', 'engineer-letter']
    : ['panel-blocking', 'panel-replace', 'engineer-letter'];

function layoutReasons({ severed, unsupportedIn }: Layout): Reason[] {
  const cut = text('A cut severs a panel.', 'Un corte parte un panel.');
  const { measured: long } = compareLengths(unsupportedIn, 0, 'at-most');
  const loose =
    unsupportedIn > 0
      ? text(`${long.en} of panel edge has no wood behind it.`, `${long.es} de borde no tiene madera detrás.`)
      : text('Every panel edge has wood behind it.', 'Todos los bordes tienen madera detrás.');
  const edges = reasonThat(!(unsupportedIn > 0), loose);
  return severed ? [reasonThat(false, cut), edges] : [edges];
}

function layoutCautions({ smallestIn, unsupportedIn, severed }: Layout, unblocked: number | undefined): Text[] {
  return [
    text(
      'Outer edges are taken to stand on posts and plates: look.',
      'Se supone que los bordes exteriores están sobre postes y soleras: revise.',
    ),
    ...(unsupportedIn > 0 && !severed && unblocked !== undefined
      ? [
          text(
            `If only level joints lack blocking, the unblocked rule keeps ${unblocked} of the wall, nailed 6 and 12 in.`,
            `Si solo faltan bloques en juntas horizontales, la regla sin bloqueo deja ${unblocked} del muro, con clavos a 6 y 12 in.`,
          ),
        ]
      : []),
    ...(smallestIn < SMALL_PIECE_IN
      ? [
          text(
            `Pieces under ${SMALL_PIECE_IN} in are avoided by habit.`,
            `Por costumbre se evitan piezas de menos de ${SMALL_PIECE_IN} in.`,
          ),
        ]
      : []),
    ...(smallestIn < DIAPHRAGM_PIECE_IN
      ? [
          text(
            `The ${DIAPHRAGM_PIECE_IN} in often asked of pieces is a rule for floors and roofs; in walls, wood behind all edges decides.`,
            `Las ${DIAPHRAGM_PIECE_IN} in que suelen pedirse son regla de pisos y techos; en muros decide la madera tras los bordes.`,
          ),
        ]
      : []),
  ];
}

/** Two pieces cannot lie in the same place on one face. */
function impossible({ pieces = [] }: Partials<typeof inputs>): InputIssue[] {
  const whole = pieces.map((piece) => (isWhole(piece) ? piece : undefined));
  const issues: InputIssue[] = [];
  whole.forEach((piece, at) => {
    const other = piece ? whole.findIndex((before, index) => index < at && before && overlap(before, piece)) : -1;
    if (other >= 0) issues.push(overlapIssue(at, other));
  });
  return issues;
}

const isWhole = (piece: Partial<Record<keyof Piece, number | undefined>>): piece is Piece =>
  [piece.xIn, piece.yIn, piece.widthIn, piece.heightIn].every((measured) => measured !== undefined);

const overlapIssue = (at: number, other: number): InputIssue =>
  refuse(
    ['pieces', at],
    text(`a piece that covers pieces.${other}`, `una pieza que cubre pieces.${other}`),
    text('a piece beside the others, on one face', 'una pieza al lado de las otras, en una cara'),
    text(
      `Pieces ${other + 1} and ${at + 1} lie over each other.`,
      `Las piezas ${other + 1} y ${at + 1} están una sobre otra.`,
    ),
  );

/** Whether every edge of every panel piece stands on wood, and no cut severs one. Inches, on one face of one wall part. */
export const panelLayout = defineCheck({
  ...panelLayoutCard,
  editions: [{ id: 'sdpws', title: text('SDPWS 2008 to 2021, panel edges', 'SDPWS 2008 a 2021, bordes de panel') }],
  defaultEdition: 'sdpws',
  sources: [PANEL_EDGE_SOURCE, SMALL_PIECE_SOURCE, UNBLOCKED_SOURCE],
  inputs,
  refine: impossible,
  evaluate: judgeLayout,
  repairs: ['panel-blocking', 'panel-replace', 'engineer-letter'],
  client: {
    found: (_inputs, { verdict }) =>
      verdict === 'fails'
        ? text(
            'A panel that braces the house is cut, or its edges are nailed to nothing.',
            'Un panel que refuerza la casa está cortado o tiene bordes clavados a nada.',
          )
        : text('We checked how the wall panels are pieced.', 'Revisamos cómo están unidas las piezas del muro.'),
    why: text(
      'A panel braces the wall only as one sheet, nailed all around.',
      'Un panel refuerza el muro solo si es una hoja clavada por todo el borde.',
    ),
    ifNot: text('This part of the wall may not hold.', 'Esta parte del muro puede no resistir.'),
  },
  doesNotCover: [
    text('Nails and their spacing.', 'Los clavos y su separación.'),
    text('Holes for pipes and boxes.', 'Agujeros para tubos y cajas.'),
  ],
  cases: () => import('./panel-layout.cases.ts'),
});
