import { sumCents } from '../../kernel/index.ts';
import { type Estimate, percentFactorOf, visitGroups } from '../estimate/estimate.ts';
import type { EstimateInput, EstimateLine, RangeInput, RangeShape } from '../estimate/estimate-input.ts';
import { type Spread, spreadOf } from './spread.ts';

/** A minimum charge that the hours of its visit may or may not reach. */
export interface OpenVisit {
  readonly name: string;
  /** What the minimum adds when every line takes its likely hours; below 0 where it is passed by that much. */
  readonly shortCents: number;
  /** What a cent of labor, and a cent added by a minimum, come to in the total. */
  readonly laborFactor: number;
  readonly minimumFactor: number;
}

/** A line whose hours vary. Its labor lies `shiftCents + widthCents x (0 to 1)` from that at its likely hours. */
export interface VaryingLine {
  readonly name: string;
  readonly location?: string | undefined;
  /** Names its random stream, whatever its place in the list. */
  readonly key: string;
  readonly spread: Spread;
  readonly shiftCents: number;
  readonly widthCents: number;
  /** What a cent of its labor comes to in the total. */
  readonly factor: number;
  readonly visit?: OpenVisit | undefined;
}

export interface RangePlan {
  /** In an order of their own: by location, name and content. */
  readonly lines: readonly VaryingLine[];
  readonly visits: readonly OpenVisit[];
}

const laborShift = ({ quantity, rateCents, hoursPerUnit: { low, likely } }: EstimateLine): number =>
  quantity * rateCents * (low - likely);
const laborWidth = ({ quantity, rateCents, hoursPerUnit: { low, high }, credit }: EstimateLine): number =>
  credit ? 0 : quantity * rateCents * (high - low);

/** Sorts out what varies and how far each part of it reaches into the total. */
export function planRange(input: EstimateInput, shape: RangeShape, estimate: Estimate): RangePlan {
  const factor = percentFactorOf(input, 'labor');
  const reach = new Map<number, { factor: number; visit?: OpenVisit }>();
  for (const indexes of visitGroups(input.lines)) {
    const found = reachOf(input, estimate, indexes, factor);
    if (found) for (const at of indexes) reach.set(at, found);
  }
  const lines = inOwnOrder(input.lines).flatMap(({ line, at, key }): VaryingLine[] => {
    const own = reach.get(at) ?? { factor };
    const widthCents = laborWidth(line);
    if (widthCents === 0 || own.factor === 0) return [];
    const { low, likely, high } = line.hoursPerUnit;
    const spread = spreadOf(shape, (likely - low) / (high - low));
    const { name, location } = line;
    return [{ name, location, key, spread, shiftCents: laborShift(line), widthCents, ...own }];
  });
  const visits = new Set(lines.flatMap(({ visit }) => visit ?? []));
  return { lines, visits: [...visits] };
}

/** How a visit with a minimum passes its labor on; nothing where the minimum is always passed. */
function reachOf(input: EstimateInput, { lines }: Estimate, indexes: readonly number[], laborFactor: number) {
  const members = indexes.flatMap((at) => input.lines[at] ?? []);
  const minimumCents = Math.max(0, ...members.map((line) => line.minimumCents ?? 0));
  const reachedCents = sumCents(indexes.map((at) => (lines[at]?.totalCents ?? 0) - (lines[at]?.minimumCents ?? 0)));
  const shortCents = minimumCents - reachedCents;
  const varying = members.filter((line) => laborWidth(line) > 0);
  const leastCents = varying.reduce((sum, line) => sum + laborShift(line), 0);
  const mostCents = varying.reduce((sum, line) => sum + laborShift(line) + laborWidth(line), 0);
  if (minimumCents === 0 || shortCents <= leastCents) return undefined;
  const minimumFactor = percentFactorOf(input, 'other');
  if (shortCents >= mostCents) return { factor: laborFactor - minimumFactor };
  const name = members[0]?.visit ?? members[0]?.name ?? '';
  return { factor: laborFactor, visit: { name, shortCents, laborFactor, minimumFactor } };
}

/** Sorted by location, name and content, so that the order they came in changes nothing; like lines are told apart by count. */
function inOwnOrder(lines: readonly EstimateLine[]): { line: EstimateLine; at: number; key: string }[] {
  const named = lines.map((line, at) => ({
    line,
    at,
    key: JSON.stringify([line.location ?? null, line.name]),
    content: JSON.stringify(Object.entries(line).sort(([one], [other]) => (one < other ? -1 : 1))),
  }));
  named.sort((one, other) => compare(one.key, other.key) || compare(one.content, other.content));
  const seen = new Map<string, number>();
  return named.map(({ line, at, key }) => {
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return { line, at, key: `${key} ${count}` };
  });
}

const compare = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** How hours vary together. One crew has one pace, so that places go wrong together too, only less than the lines of one. */
export interface Alike {
  /** Rank correlation of two lines of one place, and of two places. */
  readonly correlation: number;
  readonly acrossPlaces: number;
  /** Chance that a line falls at its place's percentile, and a place at that of the whole work. */
  readonly follow: number;
  readonly lean: number;
}

/** Two lines of one place share its percentile with chance follow², two of different places that of the work with chance (follow x lean)². */
export function alikeOf({ correlation, acrossPlaces = correlation / 2 }: RangeInput): Alike {
  const lean = correlation > 0 ? Math.sqrt(acrossPlaces / correlation) : 0;
  return { correlation, acrossPlaces, follow: Math.sqrt(correlation), lean };
}

/** Lines of one location together, in order; those without one are one place. */
export function byPlace(lines: readonly VaryingLine[]): VaryingLine[][] {
  const groups: VaryingLine[][] = [];
  for (const line of lines) {
    const last = groups.at(-1);
    if (last && last[0]?.location === line.location) last.push(line);
    else groups.push([line]);
  }
  return groups;
}
