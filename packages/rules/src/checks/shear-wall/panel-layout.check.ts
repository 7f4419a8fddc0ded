import {
  type Complete,
  defineCheck,
  factorOf,
  inchesOf,
  type Judgement,
  squareFeetOf,
  text,
  yesNoOf,
} from '../../kernel/index.ts';
import {
  PANEL_EDGE_SOURCE,
  PANEL_SIZE_SOURCE,
  SMALL_PIECE_SOURCE,
} from '../../standards/sdpws-common/panel-edges.data.ts';
import { FIELD_LIMIT_IN } from '../../standards/sdpws-common/shear-walls.data.ts';
import { UNBLOCKED_SOURCE, unblockedFactor } from '../../standards/sdpws-common/unblocked.data.ts';
import { type Box, bareSf } from './panel-layout.bare.ts';
import { panelLayoutCard } from './panel-layout.card.ts';
import { inputs, layoutIssues } from './panel-layout.inputs.ts';
import { boxOf, edgesOffFramingIn, isSmallInField } from './panel-layout.joints.ts';
import { type Layout, layoutCautions, layoutReasons } from './panel-layout.words.ts';

type LayoutInputs = Complete<typeof inputs>;

/** The wall part as measured from its lower left corner; in a direction not measured it is what its pieces cover. */
function partOf(boxes: readonly Box[], { partWidthIn, partHeightIn }: LayoutInputs): Box {
  const reach = { ...(boxes[0] as Box) };
  for (const { left, right, bottom, top } of boxes) {
    reach.left = Math.min(reach.left, left);
    reach.right = Math.max(reach.right, right);
    reach.bottom = Math.min(reach.bottom, bottom);
    reach.top = Math.max(reach.top, top);
  }
  return {
    left: partWidthIn === undefined ? reach.left : 0,
    right: partWidthIn ?? reach.right,
    bottom: partHeightIn === undefined ? reach.bottom : 0,
    top: partHeightIn ?? reach.top,
  };
}

function layoutOf(given: LayoutInputs): Layout {
  const { pieces, studSpacingIn, blockedEdges, cuts = [], smallAtFramingChange } = given;
  const boxes = pieces.map(boxOf);
  const part = partOf(boxes, given);
  let unsupportedIn = blockedEdges ? 0 : edgesOffFramingIn(boxes, studSpacingIn, part);
  let severed = false;
  for (const cut of cuts) {
    if (cut.backed) continue;
    unsupportedIn += cut.lengthIn;
    severed ||= cut.crossesPanel;
  }
  let smallestIn = Number.POSITIVE_INFINITY;
  for (const { widthIn, heightIn } of pieces) smallestIn = Math.min(smallestIn, widthIn, heightIn);
  return {
    unsupportedIn,
    smallestIn,
    severed,
    uncoveredSf: bareSf(boxes, part),
    smallInField: smallAtFramingChange ? 0 : boxes.filter((box) => isSmallInField(box, part)).length,
  };
}

/** What keeps a layout with nothing wrong from being called sound: cuts nobody looked for, and where small pieces stop. */
function openQuestions({ cuts, smallAtFramingChange }: LayoutInputs, { smallInField }: Layout): string[] {
  return [
    ...(cuts === undefined ? ['cuts'] : []),
    ...(smallInField > 0 && smallAtFramingChange === undefined ? ['smallAtFramingChange'] : []),
  ];
}

/**
 * A layout fails by what was seen: a severed panel, a loose edge, bare framing. Small pieces in the field do not make it
 * fail: the sentence on 4 x 8 ft is remembered, not read, and is also remembered as met by wood behind all their edges.
 * It cannot be told, and an engineer decides.
 */
function judgeLayout(given: LayoutInputs): Judgement {
  const found = layoutOf(given);
  const fails = found.severed || found.unsupportedIn > 0 || found.uncoveredSf > 0;
  const missing = fails ? [] : openQuestions(given, found);
  const small = !fails && found.smallInField > 0;
  const untold = small || missing.length > 0;
  const unblocked = given.blockedEdges ? undefined : unblockedFactor(given.studSpacingIn, FIELD_LIMIT_IN);
  return {
    verdict: fails ? 'fails' : untold ? 'undetermined' : 'meets',
    remaining: fails ? 0 : untold ? null : 1,
    missing,
    values: () => ({
      unsupportedEdgeIn: inchesOf(found.unsupportedIn),
      uncoveredSf: squareFeetOf(found.uncoveredSf),
      smallestPieceIn: inchesOf(found.smallestIn),
      severed: yesNoOf(found.severed),
      ...(unblocked !== undefined && { unblockedFactor: factorOf(unblocked) }),
    }),
    reasons: () => layoutReasons(found),
    cautions: () => layoutCautions(found, unblocked),
    hangsOn: small ? [PANEL_EDGE_SOURCE, PANEL_SIZE_SOURCE] : [PANEL_EDGE_SOURCE],
    sources: SOURCES,
    referrals: fails || small ? ['engineer'] : [],
    repairs: fails ? repairsFor(found) : small ? ['engineer-letter'] : [],
  };
}

const SOURCES = [PANEL_EDGE_SOURCE, PANEL_SIZE_SOURCE, SMALL_PIECE_SOURCE, UNBLOCKED_SOURCE];

const repairsFor = ({ severed, uncoveredSf }: Layout): readonly string[] =>
  severed || uncoveredSf > 0
    ? ['panel-replace', 'panel-blocking', 'engineer-letter']
    : ['panel-blocking', 'panel-replace', 'engineer-letter'];

/**
 * Whether panel covers a wall part, every edge of every piece stands on wood, and no cut severs one. Inches, on one face
 * of one part.
 */
export const panelLayout = defineCheck({
  ...panelLayoutCard,
  editions: [{ id: 'sdpws', title: text('SDPWS 2008 to 2021, panel edges', 'SDPWS 2008 a 2021, bordes de panel') }],
  defaultEdition: 'sdpws',
  sources: SOURCES,
  inputs,
  refine: layoutIssues,
  evaluate: judgeLayout,
  repairs: ['panel-blocking', 'panel-replace', 'engineer-letter'],
  client: {
    found: (_inputs, { verdict }) =>
      verdict === 'fails'
        ? text(
            'A panel that braces the house is cut or missing, or its edges are nailed to nothing.',
            'Un panel que refuerza la casa está cortado, falta o tiene bordes clavados a nada.',
          )
        : text('We checked how the wall panels are pieced.', 'Revisamos cómo están unidas las piezas de la pared.'),
    why: text(
      'A panel braces the wall only as one sheet, nailed all around.',
      'Un panel refuerza la pared solo si es una hoja clavada por todo el borde.',
    ),
    ifNot: text('This part of the wall may not hold.', 'Esta parte de la pared puede no resistir.'),
  },
  doesNotCover: [
    text('Nails and their spacing.', 'Los clavos y su separación.'),
    text('Holes for pipes and boxes.', 'Agujeros para tubos y cajas.'),
  ],
  cases: () => import('./panel-layout.cases.ts'),
});
