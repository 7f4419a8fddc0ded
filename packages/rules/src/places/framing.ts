import { type Text, text } from '../kernel/index.ts';
import { between, type Ground, multiplesIn, overlaps, type Rect, rightIn, topIn } from './extents.ts';
import { addIn } from './ticks.ts';

/** Dressed thickness of nominal 2-inch lumber: studs, plates and joists seen on their narrow face. */
export const MEMBER_IN = 1.5;

/** Upright on the drawing: studs, cripples, the studs at openings, joists, rafters. Level: plates and rims. */
export type MemberRun = 'upright' | 'level';

/** One piece of framing on the drawing. */
export interface Member {
  readonly id: string;
  readonly name: Text;
  readonly run: MemberRun;
  readonly rect: Rect;
}

/** Left edges of members on center from the left end, with one flush at each end. Inches. */
export function memberEdgesIn(widthIn: number, spacingIn: number | null): number[] {
  const lastIn = addIn(widthIn, -MEMBER_IN);
  // The first space is measured from the end to the center of the next member, as sheathing needs it.
  const centers = multiplesIn(spacingIn, addIn(lastIn, -MEMBER_IN / 2)).slice(1);
  return [0, ...centers.map((xIn) => addIn(xIn, -MEMBER_IN / 2)), ...(lastIn > 0 ? [lastIn] : [])];
}

/** What frames each kind of place. */
export const FRAMING = {
  wall: text('Stud', 'Pie derecho'),
  floor: text('Joist', 'Vigueta'),
  roof: text('Rafter', 'Cabio'),
} as const;

const known = new WeakMap<Ground, readonly Member[]>();

/**
 * The framing of a place, the one layout that screens, PDF and repair scopes go by: studs between plates, cut to cripples at
 * openings, with a stud at each side of an opening; joists or rafters between rims. Numbered from the left. Headers and sills
 * are not drawn: nobody said how deep they are.
 */
export function membersOf(ground: Ground): readonly Member[] {
  const members = known.get(ground) ?? frame(ground);
  known.set(ground, members);
  return members;
}

function frame(ground: Ground): Member[] {
  const isWall = ground.kind === 'wall';
  const topIn = addIn(ground.heightIn, (isWall ? -2 : -1) * MEMBER_IN);
  const upright = isWall ? studsOf(ground, topIn) : spansOf(ground, topIn);
  const level = isWall
    ? [
        bar('sole', 'Bottom plate', 'Solera inferior', 0, ground),
        bar('plate', 'Top plate, lower', 'Solera superior, abajo', topIn, ground),
        bar('upper-plate', 'Top plate, upper', 'Solera superior, arriba', topIn + MEMBER_IN, ground),
      ]
    : [bar('rim-1', 'Near rim', 'Borde cercano', 0, ground), bar('rim-2', 'Far rim', 'Borde lejano', topIn, ground)];
  return [...upright, ...level].filter(({ rect }) => rect.heightIn > 0 && rect.widthIn > 0);
}

const bar = (id: string, en: string, es: string, bottomIn: number, ground: Ground): Member => ({
  id,
  name: text(en, es),
  run: 'level',
  rect: between(0, bottomIn, ground.widthIn, bottomIn + MEMBER_IN),
});

const upright = (id: string, name: Text, xIn: number, fromIn: number, toIn: number): Member => ({
  id: `upright-${id}`,
  name,
  run: 'upright',
  rect: between(xIn, fromIn, addIn(xIn, MEMBER_IN), toIn),
});

function spansOf(ground: Ground, topIn: number): Member[] {
  const word = FRAMING[ground.kind];
  return memberEdgesIn(ground.widthIn, ground.framingSpacingIn).map((xIn, at) =>
    upright(`${at + 1}`, text(`${word.en} ${at + 1}`, `${word.es} ${at + 1}`), xIn, MEMBER_IN, topIn),
  );
}

/** Studs on the layout, as far as no opening interrupts them, and the studs that frame openings, which stand for those they meet. */
function studsOf(ground: Ground, topIn: number): Member[] {
  const openings = ground.openings ?? [];
  const beside = openings.flatMap((opening, at) => studsBeside(opening, at + 1, ground, topIn));
  const onLayout = spansOf(ground, topIn)
    .filter(({ rect }) => !beside.some((stud) => overlaps(stud.rect, rect)))
    .flatMap((stud) => cripplesOf(stud, openings));
  return [...onLayout, ...beside];
}

function studsBeside(opening: Rect, number: number, ground: Ground, topIn: number): Member[] {
  const left = text(`Opening ${number}, left stud`, `Vano ${number}, pie derecho izquierdo`);
  const right = text(`Opening ${number}, right stud`, `Vano ${number}, pie derecho derecho`);
  return [
    upright(`opening-${number}-left`, left, addIn(opening.xIn, -MEMBER_IN), MEMBER_IN, topIn),
    upright(`opening-${number}-right`, right, rightIn(opening), MEMBER_IN, topIn),
  ].filter(({ rect }) => rect.xIn >= 0 && rightIn(rect) <= ground.widthIn);
}

/** What openings leave of a stud, from the bottom up; the stud itself where they leave it whole. */
function cripplesOf(stud: Member, openings: readonly Rect[]): Member[] {
  const cut = openings.filter((opening) => overlaps(opening, stud.rect)).sort((a, b) => a.yIn - b.yIn);
  if (cut.length === 0) return [stud];
  const pieces: Member[] = [];
  let fromIn = stud.rect.yIn;
  const keep = (toIn: number, where: string, name: Text) => {
    if (toIn <= fromIn) return;
    const rect = between(stud.rect.xIn, fromIn, rightIn(stud.rect), toIn);
    pieces.push({ ...stud, id: `${stud.id}-${where}`, name, rect });
  };
  const { en, es } = stud.name;
  for (const [at, opening] of cut.entries()) {
    if (at === 0) keep(opening.yIn, 'below', text(`${en}, below the opening`, `${es}, bajo el vano`));
    else keep(opening.yIn, `between-${at}`, text(`${en}, between openings`, `${es}, entre vanos`));
    fromIn = Math.max(fromIn, topIn(opening));
  }
  keep(topIn(stud.rect), 'above', text(`${en}, above the opening`, `${es}, sobre el vano`));
  return pieces;
}
