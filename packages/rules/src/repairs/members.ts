import { INCHES_PER_FOOT, type Text, text } from '../kernel/index.ts';
import { between, covers, type Ground, overlaps, type Rect, snapToFraming, topIn } from './extents.ts';

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
  const lastIn = widthIn - MEMBER_IN;
  const edges = [0];
  // The first space is measured from the end to the center of the next member, as sheathing needs it.
  if (spacingIn) for (let x = spacingIn - MEMBER_IN / 2; x < lastIn - MEMBER_IN; x += spacingIn) edges.push(x);
  if (lastIn > 0) edges.push(lastIn);
  return edges;
}

const wordsFor = {
  wall: text('Stud', 'Pie derecho'),
  floor: text('Joist', 'Vigueta'),
  roof: text('Rafter', 'Cabio'),
} as const;

const bar = (id: string, en: string, es: string, bottomIn: number, ground: Ground): Member => ({
  id,
  name: text(en, es),
  rect: between(0, bottomIn, ground.widthIn, bottomIn + MEMBER_IN),
});

/** Studs between plates, or joists or rafters between rims, numbered from the left. Trimmers at openings are not drawn. */
export function membersOf(ground: Ground): Member[] {
  const isWall = ground.kind === 'wall';
  const topIn = ground.heightIn - (isWall ? 2 : 1) * MEMBER_IN;
  const word = wordsFor[ground.kind];
  const upright = memberEdgesIn(ground.widthIn, ground.framingSpacingIn).map(
    (xIn, at): Member => ({
      id: `member-${at + 1}`,
      name: text(`${word.en} ${at + 1}`, `${word.es} ${at + 1}`),
      rect: between(xIn, MEMBER_IN, xIn + MEMBER_IN, topIn),
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
 * The members that a defect takes. A stud, joist or rafter that it touches counts whole, unless the defect stays inside
 * the plates. A plate or rim counts from framing to framing around it, and only when the defect is wider than high:
 * a tall one is drawn over the plates to say "these studs".
 */
export function membersAt(rect: Rect, ground: Ground): Member[] {
  const all = membersOf(ground).filter((member) => overlaps(rect, member.rect));
  const level = all.filter(isLevel);
  const insideLevel =
    level.length > 0 &&
    covers(
      level.map((member) => member.rect),
      rect,
    );
  const { xIn, widthIn } = snapToFraming(rect, ground);
  return [
    ...(insideLevel ? [] : all.filter((member) => !isLevel(member))),
    ...(rect.widthIn >= rect.heightIn
      ? level.map((member) => ({ ...member, rect: between(xIn, member.rect.yIn, xIn + widthIn, topIn(member.rect)) }))
      : []),
  ];
}

const isLevel = (member: Member): boolean => member.rect.heightIn === MEMBER_IN && !member.id.startsWith('member-');

/** Feet of lumber that pieces take: each as long as its longer side. */
export const lengthFt = (rects: readonly Rect[]): number =>
  rects.reduce((sum, rect) => sum + Math.max(rect.widthIn, rect.heightIn), 0) / INCHES_PER_FOOT;
