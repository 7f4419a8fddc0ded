import { INCHES_PER_FOOT, text } from '../kernel/index.ts';
import { type Ground, overlaps, type Rect, snapToFraming } from '../places/extents.ts';
import type { Member } from '../places/framing.ts';

/**
 * Those of the members of its place that a defect takes. Drawn upright it takes the studs, joists or rafters it touches, each whole. Drawn
 * lying it takes the plates or rims it touches, from framing to framing around it; touching none, it is a header or a
 * beam as long as it is drawn.
 */
export function membersAt(rect: Rect, ground: Ground, members: readonly Member[]): Member[] {
  const touched = members.filter((member) => overlaps(rect, member.rect));
  if (rect.heightIn > rect.widthIn) return touched.filter(({ run }) => run === 'upright');
  const level = touched.filter(({ run }) => run === 'level');
  const { xIn, widthIn } = snapToFraming(rect, ground);
  if (level.length > 0) return level.map((member) => ({ ...member, rect: { ...member.rect, xIn, widthIn } }));
  const name = text('Header or beam', 'Dintel o viga');
  return [{ id: `lying ${rect.xIn} ${rect.yIn} ${widthIn}`, name, run: 'level', rect }];
}

/** Feet of lumber that pieces take: each as long as its longer side. */
export const lengthFt = (rects: readonly Rect[]): number =>
  rects.reduce((sum, rect) => sum + Math.max(rect.widthIn, rect.heightIn), 0) / INCHES_PER_FOOT;
