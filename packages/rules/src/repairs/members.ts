import { INCHES_PER_FOOT, type Text, text } from '../kernel/index.ts';
import { between, type Ground, multiplesIn, overlaps, type Rect, snapToFraming } from './extents.ts';
import { addIn } from './ticks.ts';

/** Dressed thickness of nominal 2-inch lumber: studs, plates and joists seen on their narrow face. */
export const MEMBER_IN = 1.5;

/** One piece of framing on the drawing. */
export interface Member {
  readonly id: string;
  readonly name: Text;
  readonly rect: Rect;
}

/** Left edges of members on center from the left end, with one flush at each end. Inches. */
export function memberEdgesIn(widthIn: number, spacingIn: number | null): number[] {
  const lastIn = addIn(widthIn, -MEMBER_IN);
  // The first space is measured from the end to the center of the next member, as sheathing needs it.
  const centers = multiplesIn(spacingIn, addIn(lastIn, -MEMBER_IN / 2)).slice(1);
  return [0, ...centers.map((xIn) => addIn(xIn, -MEMBER_IN / 2)), ...(lastIn > 0 ? [lastIn] : [])];
}

const UPRIGHT = 'upright-';

/** What frames each kind of place. */
export const FRAMING = {
  wall: text('Stud', 'Pie derecho'),
  floor: text('Joist', 'Vigueta'),
  roof: text('Rafter', 'Cabio'),
} as const;

const bar = (id: string, en: string, es: string, bottomIn: number, ground: Ground): Member => ({
  id,
  name: text(en, es),
  rect: between(0, bottomIn, ground.widthIn, bottomIn + MEMBER_IN),
});

const known = new WeakMap<Ground, readonly Member[]>();

/** Studs between plates, or joists or rafters between rims, numbered from the left. Trimmers at openings are not drawn. */
export function membersOf(ground: Ground): readonly Member[] {
  const members = known.get(ground) ?? drawMembers(ground);
  known.set(ground, members);
  return members;
}

function drawMembers(ground: Ground): Member[] {
  const isWall = ground.kind === 'wall';
  const topIn = addIn(ground.heightIn, (isWall ? -2 : -1) * MEMBER_IN);
  const word = FRAMING[ground.kind];
  const upright = memberEdgesIn(ground.widthIn, ground.framingSpacingIn).map(
    (xIn, at): Member => ({
      id: `${UPRIGHT}${at + 1}`,
      name: text(`${word.en} ${at + 1}`, `${word.es} ${at + 1}`),
      rect: between(xIn, MEMBER_IN, addIn(xIn, MEMBER_IN), topIn),
    }),
  );
  const level = isWall
    ? [
        bar('sole', 'Bottom plate', 'Solera inferior', 0, ground),
        bar('plate', 'Top plate, lower', 'Solera superior, abajo', topIn, ground),
        bar('upper-plate', 'Top plate, upper', 'Solera superior, arriba', topIn + MEMBER_IN, ground),
      ]
    : [bar('rim-1', 'Near rim', 'Borde cercano', 0, ground), bar('rim-2', 'Far rim', 'Borde lejano', topIn, ground)];
  return [...upright, ...level].filter(({ rect }) => rect.heightIn > 0 && rect.widthIn > 0);
}

/**
 * Those of the members of its place that a defect takes. Drawn upright it takes the studs, joists or rafters it touches, each whole. Drawn
 * lying it takes the plates or rims it touches, from framing to framing around it; touching none, it is a header or a
 * beam as long as it is drawn.
 */
export function membersAt(rect: Rect, ground: Ground, members: readonly Member[]): Member[] {
  const touched = members.filter((member) => overlaps(rect, member.rect));
  if (rect.heightIn > rect.widthIn) return touched.filter((member) => member.id.startsWith(UPRIGHT));
  const level = touched.filter((member) => !member.id.startsWith(UPRIGHT));
  const { xIn, widthIn } = snapToFraming(rect, ground);
  if (level.length > 0) return level.map((member) => ({ ...member, rect: { ...member.rect, xIn, widthIn } }));
  return [{ id: `lying ${rect.xIn} ${rect.yIn} ${widthIn}`, name: text('Header or beam', 'Dintel o viga'), rect }];
}

/** Feet of lumber that pieces take: each as long as its longer side. */
export const lengthFt = (rects: readonly Rect[]): number =>
  rects.reduce((sum, rect) => sum + Math.max(rect.widthIn, rect.heightIn), 0) / INCHES_PER_FOOT;
