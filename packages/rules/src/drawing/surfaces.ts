import type { Look } from '../kernel/index.ts';
import type { PathMark } from './lay-out.ts';

type Point = readonly [x: number, y: number];

const round = (value: number): number => Math.round(value * 100) / 100;
const span = (values: readonly number[]): readonly [low: number, high: number] => [
  Math.min(...values),
  Math.max(...values),
];

/** Pairs x, y, x, y and so on; a last number without its pair is left out. */
export function pointsOf(flat: readonly number[]): Point[] {
  const points: Point[] = [];
  for (let at = 1; at < flat.length; at += 2) points.push([flat[at - 1] ?? 0, flat[at] ?? 0]);
  return points;
}

export const boxPoints = ([x, y, width, height]: readonly [number, number, number, number]): Point[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** Corners enough that a circle's hatch ends at its edge to a tenth of a unit. */
const CIRCLE_CORNERS = 36;

export const circlePoints = ([cx, cy, radius]: readonly [number, number, number]): Point[] =>
  Array.from({ length: CIRCLE_CORNERS }, (_, at): Point => {
    const angle = (2 * Math.PI * at) / CIRCLE_CORNERS;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  });

export const svgPathOf = (points: readonly Point[], closed = false): string =>
  `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L')}${closed ? 'Z' : ''}`;

/** The parts of the lines a·x + b·y = c that lie inside an outline, as path data. */
function ruled(points: readonly Point[], [a, b]: Point, offsets: readonly number[]): string {
  const parts = offsets.flatMap((c) => {
    const crossings = points.flatMap((from, at): Point[] => {
      const to = points[(at + 1) % points.length] ?? from;
      const before = a * from[0] + b * from[1] - c;
      const after = a * to[0] + b * to[1] - c;
      if (before < 0 === after < 0) return [];
      const share = before / (before - after);
      return [[from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]];
    });
    const sorted = crossings.toSorted((p, q) => p[0] - q[0] || p[1] - q[1]);
    return sorted.flatMap((from, at) => {
      const to = sorted[at + 1];
      return at % 2 === 0 && to ? [svgPathOf([from, to])] : [];
    });
  });
  return parts.join('');
}

const steps = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.max(0, Math.ceil((to - from) / step) - 1) }, (_, at) => from + (at + 1) * step);

const HATCH_STEP = 6;
/** Where grain lines run across the face; uneven, as wood is. */
const GRAIN_SHARES = [0.17, 0.31, 0.52, 0.66, 0.87];
const GRAIN_LEAST_UNITS = 4.5;
const COURSE = 12;
const STONE_STEP = 9;

function hatch(points: readonly Point[]): string {
  const [low, high] = span(points.map(([x, y]) => x + y));
  return ruled(points, [1, 1], steps(Math.floor(low / HATCH_STEP) * HATCH_STEP, high, HATCH_STEP));
}

function grain(points: readonly Point[]): string {
  const [left, right] = span(points.map(([x]) => x));
  const [top, bottom] = span(points.map(([, y]) => y));
  const along = right - left >= bottom - top;
  const [from, size] = along ? [top, bottom - top] : [left, right - left];
  const kept = GRAIN_SHARES.filter((_, at) => size > GRAIN_LEAST_UNITS * (at % 2 === 0 ? 3 : 5));
  const offsets = (kept.length > 0 ? kept : [0.5]).map((share) => from + share * size);
  return ruled(points, along ? [0, 1] : [1, 0], offsets);
}

/** Crossed corners: a member that runs on behind. */
function corners([a, b, c, d]: readonly Point[]): string {
  return a && b && c && d ? svgPathOf([a, c]) + svgPathOf([b, d]) : '';
}

function courses(points: readonly Point[]): string {
  const [left, right] = span(points.map(([x]) => x));
  const [top, bottom] = span(points.map(([, y]) => y));
  const beds = steps(top, bottom, COURSE);
  const heads = [top, ...beds].flatMap((y, row) => {
    const end = Math.min(bottom, y + COURSE);
    const xs = steps(left - (row % 2) * COURSE, right, COURSE * 2).filter((x) => x > left);
    return xs.map((x) => `M${round(x)} ${round(y)}L${round(x)} ${round(end)}`);
  });
  return ruled(points, [0, 1], beds) + heads.join('');
}

/** Small stones where two families of lines meet, shifted row by row. */
function stones(points: readonly Point[]): string {
  const [left, right] = span(points.map(([x]) => x));
  const [top, bottom] = span(points.map(([, y]) => y));
  const inside = (x: number, y: number): boolean =>
    points.filter((from, at) => {
      const to = points[(at + 1) % points.length] ?? from;
      return from[1] > y !== to[1] > y && x < from[0] + ((y - from[1]) / (to[1] - from[1])) * (to[0] - from[0]);
    }).length %
      2 ===
    1;
  return steps(top - STONE_STEP / 2, bottom - 1, STONE_STEP)
    .flatMap((y, row) =>
      steps(left - (row % 2) * 5, right - 2, STONE_STEP * 1.6)
        .filter((x) => inside(x - 1, y - 1) && inside(x + 3, y + 2))
        .map((x, at) =>
          svgPathOf(
            (row + at) % 2 === 0
              ? [
                  [x, y],
                  [x + 2.2, y + 1.6],
                  [x - 0.4, y + 2],
                ]
              : [
                  [x, y],
                  [x + 0.8, y + 0.6],
                ],
            (row + at) % 2 === 0,
          ),
        ),
    )
    .join('');
}

/** What lies on a surface besides its fill and edge. */
function texture(points: readonly Point[], look: Look): PathMark | undefined {
  switch (look) {
    case 'wood':
      return { pen: 'grain', d: grain(points) };
    case 'wood-end':
      return { pen: 'cross', d: corners(points) };
    case 'loss':
      return { pen: 'hatch', d: hatch(points) };
    case 'masonry':
      return { pen: 'cross', d: courses(points) };
    case 'concrete':
      return { pen: 'grain', d: stones(points) };
    default:
      return undefined;
  }
}

/** A surface: its fill and edge, and what lies on it. */
export function surface(points: readonly Point[], look: Look): PathMark[] {
  const on = texture(points, look);
  return [{ pen: look, d: svgPathOf(points, true) }, ...(on && on.d !== '' ? [on] : [])];
}
