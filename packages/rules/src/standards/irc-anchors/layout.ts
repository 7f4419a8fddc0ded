import { atLeast, atMost, largestRatio, ratioOf, wholeUp } from '../../kernel/index.ts';
import { ANCHOR_RULES } from './anchors.data.ts';

/** A rule that a piece of sill plate can break. */
export type PlateRule = 'too-few-bolts' | 'end-too-far' | 'end-too-near' | 'spacing' | 'center-third';

/** One piece of sill plate; bolts measured from its left end. Inches. */
export interface SillPiece {
  readonly lengthIn: number;
  readonly boltsIn: readonly number[];
  /** The piece belongs to a short wall that joins offset braced panels. */
  readonly joinsOffsetPanels: boolean;
}

export interface PieceFound {
  readonly bolts: number;
  /** The fewest bolts that can satisfy the rules on this piece. */
  readonly needed: number;
  readonly broken: readonly PlateRule[];
  /** Measured over limit of whatever is nearest to its limit. */
  readonly ratio: number | null;
}

/** Between neighboring bolts, from the left, inches. */
export function spacingsOf(boltsIn: readonly number[]): number[] {
  const inOrder = [...boltsIn].sort((a, b) => a - b);
  return inOrder.slice(1).map((atIn, before) => atIn - (inOrder[before] ?? 0));
}

function widestSpacingIn(boltsIn: readonly number[]): number {
  const inOrder = Float64Array.from(boltsIn).sort();
  let widestIn = 0;
  for (let at = 1; at < inOrder.length; at++)
    widestIn = Math.max(widestIn, (inOrder[at] as number) - (inOrder[at - 1] as number));
  return widestIn;
}

/** The fewest bolts for a piece of this length, inches. */
export function boltsNeeded(lengthIn: number, spacingLimitIn: number, joinsOffsetPanels: boolean): number {
  if (joinsOffsetPanels && atMost(lengthIn, ANCHOR_RULES.shortestPieceIn)) return 0;
  if (joinsOffsetPanels && atMost(lengthIn, ANCHOR_RULES.shortPieceIn)) return 1;
  const betweenEndsIn = lengthIn - 2 * ANCHOR_RULES.mostFromEndIn;
  return Math.max(ANCHOR_RULES.leastBolts, wholeUp(betweenEndsIn / spacingLimitIn) + 1);
}

/** How near the best bolt at one end comes to either limit, with the rule broken when none stands between them. */
function judgeEnd(distancesIn: readonly number[], diameterIn: number): { ratio: number | null; broken?: PlateRule } {
  const nearestIn = ANCHOR_RULES.leastFromEndDiameters * diameterIn;
  let ratio: number | null = null;
  for (const atIn of distancesIn) {
    const tooFar = ratioOf(atIn, ANCHOR_RULES.mostFromEndIn);
    const tooNear = ratioOf(nearestIn, atIn);
    if (tooFar === null || tooNear === null) continue;
    ratio = Math.min(ratio ?? Number.MAX_VALUE, Math.max(tooFar, tooNear));
  }
  if (ratio !== null && atMost(ratio, 1)) return { ratio };
  const hasNear = distancesIn.some((atIn) => !atLeast(atIn, nearestIn));
  return { ratio, broken: hasNear ? 'end-too-near' : 'end-too-far' };
}

function centerThird(piece: SillPiece): boolean {
  const third = piece.lengthIn / 3;
  return piece.boltsIn.some((atIn) => atLeast(atIn, third) && atMost(atIn, 2 * third));
}

/** The rules broken by a piece that needs one bolt or none; a piece bolted as any other needs no exception. */
function shortPieceBreaks(piece: SillPiece, needed: number, asAnyOther: PieceFound): readonly PlateRule[] {
  if (piece.boltsIn.length < needed) return ['too-few-bolts'];
  return needed === 0 || centerThird(piece) || asAnyOther.broken.length === 0 ? NONE : ['center-third'];
}
const NONE: readonly PlateRule[] = [];

/** Holds one piece of sill plate against the layout rules of R403.1.6. Inches. */
export function judgePiece(piece: SillPiece, diameterIn: number, spacingLimitIn: number): PieceFound {
  const needed = boltsNeeded(piece.lengthIn, spacingLimitIn, piece.joinsOffsetPanels);
  const bolts = piece.boltsIn.length;
  if (needed < ANCHOR_RULES.leastBolts) {
    const asAnyOther = judgePiece({ ...piece, joinsOffsetPanels: false }, diameterIn, spacingLimitIn);
    return { bolts, needed, broken: shortPieceBreaks(piece, needed, asAnyOther), ratio: ratioOf(needed, bolts) };
  }
  const left = judgeEnd(piece.boltsIn, diameterIn);
  const right = judgeEnd(
    piece.boltsIn.map((atIn) => piece.lengthIn - atIn),
    diameterIn,
  );
  const widestIn = widestSpacingIn(piece.boltsIn);
  const broken: PlateRule[] = [];
  if (bolts < ANCHOR_RULES.leastBolts) broken.push('too-few-bolts');
  if (bolts > 0 && left.broken) broken.push(left.broken);
  if (bolts > 0 && right.broken && right.broken !== left.broken) broken.push(right.broken);
  if (!atMost(widestIn, spacingLimitIn)) broken.push('spacing');
  const ratio = largestRatio([
    left.ratio,
    right.ratio,
    bolts > 1 ? ratioOf(widestIn, spacingLimitIn) : null,
    bolts < ANCHOR_RULES.leastBolts ? ratioOf(ANCHOR_RULES.leastBolts, bolts) : null,
  ]);
  return { bolts, needed, broken, ratio };
}
