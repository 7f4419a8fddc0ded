/** A box of pixels. */
export type LabelBox = { x: number; y: number; width: number; height: number };

export type LabelWish = {
  id: string;
  /** What the label speaks of. */
  target: LabelBox;
  width: number;
  height: number;
};

export type PlacedLabel = {
  id: string;
  box: LabelBox;
  from: { x: number; y: number };
  to: { x: number; y: number };
  side: 'left' | 'right';
};

const overlap = (a: LabelBox, b: LabelBox, gap: number): number => {
  const w = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) + gap;
  const h = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) + gap;
  return w > 0 && h > 0 ? w * h : 0;
};

const inside = (box: LabelBox, bounds: LabelBox): boolean =>
  box.x >= bounds.x &&
  box.y >= bounds.y &&
  box.x + box.width <= bounds.x + bounds.width &&
  box.y + box.height <= bounds.y + bounds.height;

/** Directions tried around a target, nearest habit first: up and out to the right, then left, then down. */
const directions = [
  { dx: 1, dy: -1 },
  { dx: -1, dy: -1 },
  { dx: 1, dy: 1 },
  { dx: -1, dy: 1 },
  { dx: 1, dy: 0 },
  { dx: -1, dy: 0 },
] as const;
const reachesPx = [26, 52, 90, 140, 200];

function candidates(wish: LabelWish): PlacedLabel[] {
  const { target } = wish;
  const from = { x: target.x + target.width / 2, y: target.y + target.height / 2 };
  return reachesPx.flatMap((reach) =>
    directions.map(({ dx, dy }) => {
      const to = {
        x: from.x + dx * (Math.min(target.width / 2, 30) + reach * 0.6),
        y: from.y + dy * (target.height / 2 + reach),
      };
      const box = {
        x: dx > 0 ? to.x + 5 : to.x - 5 - wish.width,
        y: to.y - wish.height / 2,
        width: wish.width,
        height: wish.height,
      };
      return { id: wish.id, box, from, to, side: dx > 0 ? ('right' as const) : ('left' as const) };
    }),
  );
}

/**
 * Finds a place for every label: on the sheet, clear of the other labels and, as far as it goes, of all findings.
 * Where there is no clear place the one with the least overlap is taken, so that no label is ever left out.
 */
export function placeLabels(wishes: readonly LabelWish[], bounds: LabelBox): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  for (const wish of wishes) {
    let best: { label: PlacedLabel; cost: number } | null = null;
    for (const label of candidates(wish)) {
      if (!inside(label.box, bounds)) continue;
      const onLabels = placed.reduce((sum, other) => sum + overlap(label.box, other.box, 6), 0);
      const onTargets = wishes.reduce((sum, other) => sum + overlap(label.box, other.target, 3), 0);
      const cost = onLabels * 4 + onTargets;
      if (!best || cost < best.cost) best = { label, cost };
      if (cost === 0) break;
    }
    placed.push(best?.label ?? pushInside(wish, bounds));
  }
  return placed;
}

function pushInside(wish: LabelWish, bounds: LabelBox): PlacedLabel {
  const from = { x: wish.target.x + wish.target.width / 2, y: wish.target.y + wish.target.height / 2 };
  const x = Math.max(bounds.x, Math.min(from.x + 12, bounds.x + bounds.width - wish.width));
  const y = Math.max(bounds.y, Math.min(wish.target.y - wish.height - 8, bounds.y + bounds.height - wish.height));
  const box = { x, y, width: wish.width, height: wish.height };
  return { id: wish.id, box, from, to: { x, y: y + wish.height / 2 }, side: 'right' };
}
