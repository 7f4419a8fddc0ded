import { atMost, decimal, footPounds, inchesToFeet, percent, pounds, type Text, text } from '../kernel/index.ts';
import type { LoadPath, Segment } from './load-path.ts';
import { lineWorth, segmentWorth } from './strength.ts';
import { sum } from './weights.ts';

/** A segment with the place of its left end on its wall, inches. */
export interface PlacedSegment extends Segment {
  readonly fromIn?: number | null | undefined;
}

/** A wall line that stands on another. Its load is the shear it carries: its own story's and that of the stories above it. */
export interface LineAbove {
  readonly name: string;
  readonly path: Omit<LoadPath, 'segments'> & { readonly segments: readonly PlacedSegment[] };
  /** Depth of the floor between the two lines, inches; stories are counted floor to floor. */
  readonly floorDepthIn: number;
  /** Both walls are equally wide, so that places along them can be compared. */
  readonly aligned: boolean;
  /** The line that stands on this one. */
  readonly above?: LineAbove | undefined;
}

/** For each segment the moment at its foot that the stories above bring, ft-lb, null while it is not known; and how it was worked out or what is missing. */
export interface FromAbove {
  readonly momentsFtLb: readonly (number | null)[];
  readonly words: readonly Text[];
}

interface Step {
  readonly momentFtLb: number | null;
  readonly words: Text;
}

/**
 * The moment that a line hands to the segments it stands on: its share of the line's load, times its height with the floor
 * under it, and the moment that it carries from above. SDPWS 4.3.6.4.4 as quoted: forces add up, unit shears do not. Where
 * anything of that is missing no segment has a figure, since what is missing could stand on any of them.
 */
export function momentsFromAbove(segments: readonly PlacedSegment[], above: LineAbove): FromAbove {
  const upper = above.path.segments;
  const carried = carriedBy(above);
  const loads = sharesOfLine(above);
  const steps = upper.map((segment, at) =>
    handedDown(above, segment, loads[at] ?? null, carried.momentsFtLb[at] ?? null),
  );
  const under = upper.map((segment) =>
    segments.findIndex((one) => standsOn(segment, one, segments.length, above.aligned)),
  );
  const unplaced = upper.filter((_segment, at) => under[at] === -1).map((segment) => notUnder(above, segment));
  const missing = [...unplaced, ...steps.flatMap(({ momentFtLb, words }) => (momentFtLb === null ? [words] : []))];
  if (missing.length > 0) return { momentsFtLb: segments.map(() => null), words: [...carried.words, ...missing] };
  return {
    momentsFtLb: segments.map((_segment, at) =>
      sum(steps.map(({ momentFtLb }, order) => (under[order] === at ? (momentFtLb ?? 0) : 0))),
    ),
    words: [...carried.words, ...steps.map(({ words }) => words)],
  };
}

/** What each segment of the line above carries from further up: as its engineer says, as it follows, or none under a roof. */
function carriedBy({ path, above }: LineAbove): FromAbove {
  const typed = path.segments.map(({ links }) => {
    const moments = links.flatMap(({ momentAboveFtLb }) => momentAboveFtLb ?? []);
    return moments.length === 0 ? null : Math.max(...moments);
  });
  const follows = above ? momentsFromAbove(path.segments, above) : undefined;
  const roofOnly = path.storiesAbove === 0 ? 0 : null;
  return {
    momentsFtLb: typed.map((moment, at) => moment ?? (follows ? (follows.momentsFtLb[at] ?? null) : roofOnly)),
    words: follows && typed.some((moment) => moment === null) ? follows.words : [],
  };
}

/** The part 0..1 of the line's load that each segment takes; null where nothing tells it. */
function sharesOfLine({ path }: LineAbove): (number | null)[] {
  const { weights, weighedBy } = lineWorth(
    path,
    path.segments.map((segment) => segmentWorth(path, segment)),
  );
  return weights.map((weight) => (weighedBy === 'count' && weights.length > 1 ? null : weight));
}

function handedDown(above: LineAbove, segment: Segment, share: number | null, carriedFtLb: number | null): Step {
  const { path, floorDepthIn } = above;
  const [name, { demandLb }, { heightFt }] = [nameIn(above, segment), path, segment];
  const missing = (en: string, es: string): Step => ({
    momentFtLb: null,
    words: text(`${name}: ${en}`, `${name}: ${es}`),
  });
  if (demandLb === undefined)
    return missing(
      'it has no load yet, so what it hands down is not known.',
      'aún no tiene carga; no se sabe qué baja.',
    );
  if (share === null)
    return missing(
      'without strengths or lengths its part of the load is not known.',
      'sin resistencias ni largos no se sabe su parte de la carga.',
    );
  if (heightFt === undefined) return missing('its height is not known.', 'no se sabe su altura.');
  if (carriedFtLb === null)
    return missing('what it carries from further up is not known.', 'no se sabe qué carga de más arriba.');
  const floorFt = inchesToFeet(floorDepthIn);
  const momentFtLb = demandLb * share * (heightFt + floorFt) + carriedFtLb;
  const part = share === 1 ? '' : `${percent(share)} x `;
  const load = `${part}${pounds(demandLb)}`;
  const [height, floor] = [decimal(heightFt), decimal(floorFt)];
  const [more, mas] =
    carriedFtLb > 0
      ? [` + ${footPounds(carriedFtLb)} from further up`, ` + ${footPounds(carriedFtLb)} de más arriba`]
      : ['', ''];
  const total = footPounds(momentFtLb);
  return {
    momentFtLb,
    words: text(
      `${name}: ${load} x (${height} ft + ${floor} ft of floor)${more} = ${total}.`,
      `${name}: ${load} x (${height} ft + ${floor} ft de piso)${mas} = ${total}.`,
    ),
  };
}

/** How far a wall may overhang the wall below and still stand on it, inches: a habit of the trade, no source. */
const STANDS_WITHIN_IN = 6;

/** By their places where those can be compared; on a single segment it stands unless it is longer. */
function standsOn(upper: PlacedSegment, lower: PlacedSegment, lowerCount: number, aligned: boolean): boolean {
  const [up, low] = [spanOf(upper), spanOf(lower)];
  if (aligned && up && low) return atMost(low.fromFt - SLACK_FT, up.fromFt) && atMost(up.toFt, low.toFt + SLACK_FT);
  if (lowerCount > 1) return false;
  return (
    upper.lengthFt === undefined || lower.lengthFt === undefined || atMost(upper.lengthFt, lower.lengthFt + SLACK_FT)
  );
}
const SLACK_FT = inchesToFeet(STANDS_WITHIN_IN);

function spanOf({ fromIn, lengthFt }: PlacedSegment): { fromFt: number; toFt: number } | undefined {
  if (fromIn === undefined || fromIn === null || lengthFt === undefined) return undefined;
  const fromFt = inchesToFeet(fromIn);
  return { fromFt, toFt: fromFt + lengthFt };
}

const nameIn = ({ name, path }: LineAbove, segment: Segment): string =>
  path.segments.length > 1 ? `${name}, ${segment.name}` : name;

const notUnder = (above: LineAbove, segment: Segment): Text => {
  const name = nameIn(above, segment);
  return text(
    `${name}: no segment of this line is known to stand under all of it, within ${STANDS_WITHIN_IN} in.`,
    `${name}: no se sabe de ningún tramo de esta línea que quede debajo de todo él, con ${STANDS_WITHIN_IN} in de margen.`,
  );
};
