import { decimal, joinTexts, text } from '../kernel/index.ts';
import type { Ground, Rect } from '../places/extents.ts';
import { type Member, membersOf } from '../places/framing.ts';
import { type Drawn, extentOf, groupBy, has, type Placed, type WorkLine } from './drawn.ts';
import { lengthFt, membersAt } from './members.ts';
import type { Extent } from './operations.data.ts';
import type { TakeOffLine } from './take-off.ts';

/** From the weakest work to the one that makes the others needless. */
const RANKS = ['treat', 'sister', 'replace'] as const satisfies readonly Extent[];
type Rank = (typeof RANKS)[number];

interface Hit {
  readonly one: Drawn;
  readonly member: Member;
  readonly rank: Rank;
}

const rankOf = (one: Drawn): Rank | undefined => RANKS.findLast((rank) => has(one, rank));

function hitsOf(drawn: readonly Drawn[], ground: Ground): Hit[] {
  if (!drawn.some(rankOf)) return [];
  const members = membersOf(ground);
  return drawn.flatMap((one) => {
    const rank = rankOf(one);
    return rank
      ? one.extents.flatMap((rect) => membersAt(rect, ground, members)).map((member) => ({ one, member, rank }))
      : [];
  });
}

/** Which work each member gets, with every finding that wants any. */
function decide(hits: readonly Hit[]) {
  const byMember = groupBy(hits, (hit) => hit.member.id);
  return [...byMember.values()].map((same) => {
    const rank = RANKS.findLast((one) => same.some((hit) => hit.rank === one)) as Rank;
    return {
      rank,
      rects: same.filter((hit) => hit.rank === rank).map((hit) => hit.member.rect),
      name: (same[0] as Hit).member.name,
      for: [...new Set(same.map((hit) => hit.one.finding))],
    };
  });
}

/** A level piece that two findings share is as long as both of them reach together. */
function envelope(rects: readonly Rect[]): Rect {
  const xIn = Math.min(...rects.map((rect) => rect.xIn));
  const yIn = Math.min(...rects.map((rect) => rect.yIn));
  const widthIn = Math.max(...rects.map((rect) => rect.xIn + rect.widthIn)) - xIn;
  return { xIn, yIn, widthIn, heightIn: Math.max(...rects.map((rect) => rect.yIn + rect.heightIn)) - yIn };
}

/**
 * Members worked on once, whichever findings name them. Cutting out follows what replaces; the cut of a sister is the
 * template's length for each member that stays sistered; straps at both ends are for each member replaced.
 */
export function memberWork(drawn: readonly Drawn[], ground: Ground, place: string): Placed {
  const hits = hitsOf(drawn, ground);
  const stoodFor = new Set<TakeOffLine>();
  if (hits.length === 0) return { lines: [], stoodFor };
  const decided = decide(hits);
  const touched = drawn.filter((one) => hits.some((hit) => hit.one === one));
  const templates = touched.flatMap((one) => one.lines.map((line) => ({ line, rank: rankOf(one) as Rank })));
  const lineFor = (extent: Extent, rank: Rank) =>
    templates.find((one) => one.rank === rank && extentOf(one.line) === extent && !one.line.set)?.line;
  for (const { line, rank } of templates) {
    const extent = extentOf(line);
    const counted = extent === rank || extent === 'take-out' || (extent === 'ends' && rank === 'replace');
    if (counted && !line.set) stoodFor.add(line);
  }
  const lines = RANKS.flatMap((rank): WorkLine[] => {
    const mine = decided.filter((one) => one.rank === rank);
    if (mine.length === 0) return [];
    const area = mine.map((one) => envelope(one.rects));
    const names = mine.map((one) => one.name);
    const feet = lengthFt(area);
    const list = (locale: 'en' | 'es') => names.map((name) => name[locale]).join(', ');
    const how = text(`${list('en')}: ${decimal(feet)} LF.`, `${list('es')}: ${decimal(feet)} pies.`);
    const shared = { for: [...new Set(mine.flatMap((one) => one.for))], place, area, members: names };
    const takeOut = lineFor('take-out', rank);
    const ends = rank === 'replace' ? lineFor('ends', rank) : undefined;
    const each = (line: TakeOffLine) => ({ ...line, ...shared, quantity: line.quantity * mine.length });
    const work = lineFor(rank, rank);
    return [
      ...(work ? [{ ...work, ...shared, quantity: feet, how, assumed: false }] : []),
      ...(takeOut && rank === 'replace' ? [{ ...takeOut, ...shared, quantity: feet, how, assumed: false }] : []),
      ...(takeOut && rank !== 'replace' ? [each(takeOut)] : []),
      ...(ends ? [each(ends)] : []),
    ];
  });
  return { lines: joinSame(lines), stoodFor };
}

/** Cutting out for replaced and for sistered members is one operation. */
function joinSame(lines: readonly WorkLine[]): WorkLine[] {
  return [...groupBy(lines, (line) => line.operation).values()].map((same) => {
    const all = <T>(part: (line: WorkLine) => readonly T[] | undefined) => same.flatMap((line) => part(line) ?? []);
    return {
      ...(same[0] as WorkLine),
      quantity: same.reduce((sum, line) => sum + line.quantity, 0),
      how: joinTexts(same.map((line) => line.how)),
      assumed: same.some((line) => line.assumed),
      for: [...new Set(all((line) => line.for))],
      area: all((line) => line.area),
      members: all((line) => line.members),
    };
  });
}
