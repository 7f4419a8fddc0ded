/** Inches: x to the right, y up, z toward the viewer. */
export type Vec = readonly [x: number, y: number, z: number];

/** What light meets: a color (linear, 0 to 1), how much it shines, and how the surface leans there, in the solid's own frame. */
export interface Surface {
  readonly color: Vec;
  readonly shine?: number;
  readonly lean?: Vec;
  /** Light of its own. */
  readonly glow?: number;
}
export type Material = (point: Vec, normal: Vec) => Surface;

/** Below 0 where wood or steel is gone: a hole, a notch, rot. Never larger than the true distance to the edge of it. */
export type Carve = (point: Vec) => number;

export interface Solid {
  readonly kind: 'box' | 'cylinder';
  readonly center: Vec;
  /** Half of its size along its own axes; a cylinder stands along y with its radius in x. */
  readonly half: Vec;
  /** Rows are the solid's own axes in the world. */
  readonly axes: readonly [Vec, Vec, Vec];
  readonly material: Material;
  readonly carve?: Carve | undefined;
  readonly radius: number;
}

export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const minus = (a: Vec, b: Vec): Vec => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const plus = (a: Vec, b: Vec, times = 1): Vec => [a[0] + b[0] * times, a[1] + b[1] * times, a[2] + b[2] * times];
export const cross = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export function unit(a: Vec): Vec {
  const length = Math.hypot(a[0], a[1], a[2]) || 1;
  return [a[0] / length, a[1] / length, a[2] / length];
}

/** Turned about x, then y, then z, in degrees. */
function axesOf([aboutX, aboutY, aboutZ]: Vec): [Vec, Vec, Vec] {
  const turn = (v: Vec): Vec => {
    const [a, b, c] = [aboutX, aboutY, aboutZ].map((degrees) => (degrees * Math.PI) / 180) as [number, number, number];
    const x1: Vec = [v[0], v[1] * Math.cos(a) - v[2] * Math.sin(a), v[1] * Math.sin(a) + v[2] * Math.cos(a)];
    const y1: Vec = [x1[0] * Math.cos(b) + x1[2] * Math.sin(b), x1[1], -x1[0] * Math.sin(b) + x1[2] * Math.cos(b)];
    return [y1[0] * Math.cos(c) - y1[1] * Math.sin(c), y1[0] * Math.sin(c) + y1[1] * Math.cos(c), y1[2]];
  };
  return [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])];
}

interface Placed {
  readonly turn?: Vec;
  readonly carve?: Carve;
}

/** A board, sheet or block from its lower left back corner; turned about its middle. */
export function box([x, y, z]: Vec, [width, height, depth]: Vec, material: Material, placed: Placed = {}): Solid {
  const half: Vec = [width / 2, height / 2, depth / 2];
  const center: Vec = [x + half[0], y + half[1], z + half[2]];
  const { turn = [0, 0, 0], carve } = placed;
  return { kind: 'box', center, half, axes: axesOf(turn), material, carve, radius: Math.hypot(...half) };
}

/** A rod or pipe around its middle, upright before it is turned. */
export function rod(center: Vec, radiusIn: number, lengthIn: number, material: Material, placed: Placed = {}): Solid {
  const half: Vec = [radiusIn, lengthIn / 2, radiusIn];
  const { turn = [0, 0, 0], carve } = placed;
  return { kind: 'cylinder', center, half, axes: axesOf(turn), material, carve, radius: Math.hypot(radiusIn, half[1]) };
}

const { min, max, hypot, abs } = Math;

/** A round hole through a board, along one of its own axes. */
export const hole =
  (along: 0 | 1 | 2, [u, v]: readonly [number, number], radiusIn: number): Carve =>
  (point) =>
    hypot((point[(along + 1) % 3] as number) - u, (point[(along + 2) % 3] as number) - v) - radiusIn;

/** A block taken out of a board, in its own frame. */
export const notch =
  (center: Vec, half: Vec): Carve =>
  (point) => {
    const [x, y, z] = [0, 1, 2].map(
      (at) => abs((point[at] as number) - (center[at] as number)) - (half[at] as number),
    ) as [number, number, number];
    return hypot(max(x, 0), max(y, 0), max(z, 0)) + min(max(x, y, z), 0);
  };
