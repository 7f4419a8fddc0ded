import { randomOf } from './noise.ts';
import { type Carve, cross, dot, minus, plus, type Solid, type Surface, unit, type Vec } from './shapes.ts';

export interface Lamp {
  readonly at: Vec;
  readonly radiusIn: number;
  readonly color: Vec;
}
export interface Scene {
  readonly solids: readonly Solid[];
  readonly eye: Vec;
  readonly target: Vec;
  /** Height of the picture over its distance. */
  readonly opening: number;
  readonly lamps: readonly Lamp[];
  /** Light from all around, and what is seen where nothing stands. */
  readonly air: Vec;
  readonly beyond?: Vec;
}

interface Hit {
  readonly solid: Solid;
  readonly t: number;
  /** In the solid's own frame. */
  readonly point: Vec;
  readonly normal: Vec;
}

/** Fractions of the roots of primes: whatever has taken part so far, the next sample falls between. */
const steps = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31].map((prime) => Math.sqrt(prime) % 1);
const nudge = 1e-3;
const occlusionIn = 16;

/** Linear light, three numbers a pixel, row by row. `samples` rays a pixel. */
export function trace(scene: Scene, width: number, height: number, samples: number): Float32Array {
  const random = randomOf(97);
  const bases = new Float64Array(steps.length);
  let sample = 0;
  let use = 0;
  /** Spread evenly over the samples of a pixel, so that few of them make a smooth shadow. */
  const spread = (): number => {
    const value = (bases[use] as number) + sample * (steps[use] as number);
    use = (use + 1) % steps.length;
    return value - Math.floor(value);
  };
  const back = unit(minus(scene.eye, scene.target));
  const right = unit(cross([0, 1, 0], back));
  const up = cross(back, right);
  const light = new Float32Array(width * height * 3);
  const perPixel = scene.opening / height;
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const at = (row * width + column) * 3;
      for (let one = 0; one < bases.length; one++) bases[one] = random();
      for (sample = 0; sample < samples; sample++) {
        use = 0;
        const x = (column + spread() - width / 2) * perPixel;
        const y = (height / 2 - row - spread()) * perPixel;
        const [red, green, blue] = see(scene, unit(plus(plus(minus([0, 0, 0], back), right, x), up, y)), spread);
        light[at] = (light[at] as number) + red / samples;
        light[at + 1] = (light[at + 1] as number) + green / samples;
        light[at + 2] = (light[at + 2] as number) + blue / samples;
      }
    }
  return light;
}

function see(scene: Scene, direction: Vec, random: () => number): Vec {
  const hit = nearest(scene.solids, scene.eye, direction);
  if (!hit) return scene.beyond ?? [0, 0, 0];
  const { solid } = hit;
  const { color, shine = 0, lean, glow = 0 } = solid.material(hit.point, hit.normal) as Surface;
  const flat = toWorld(solid, hit.normal);
  const normal = lean ? unit(plus(flat, toWorld(solid, lean))) : flat;
  const point = plus(plus(scene.eye, direction, hit.t), flat, nudge);
  let [red, green, blue] = ambient(scene, point, normal, random).map((part) => part + glow) as unknown as Vec;
  [red, green, blue] = [red * color[0], green * color[1], blue * color[2]];
  for (const lamp of scene.lamps) {
    const [toward, reach] = towardLamp(lamp, point, random);
    const facing = dot(normal, toward);
    if (facing <= 0 || dot(flat, toward) <= 0 || blocked(scene.solids, point, toward, reach)) continue;
    const bright = (facing * 3600) / (reach * reach);
    const gleam = shine && shine * max(0, dot(unit(minus(toward, direction)), normal)) ** (12 + 70 * shine) * 2.2;
    red += lamp.color[0] * bright * (color[0] + gleam);
    green += lamp.color[1] * bright * (color[1] + gleam);
    blue += lamp.color[2] * bright * (color[2] + gleam);
  }
  return [red, green, blue];
}

/** The air's light, less where something near covers it; a little more from above. */
function ambient({ solids, air }: Scene, point: Vec, normal: Vec, random: () => number): Vec {
  const [a, b] = [random() * 2 * Math.PI, 2 * random() - 1];
  const around = Math.sqrt(1 - b * b);
  const toward = unit(plus(normal, [around * Math.cos(a), b, around * Math.sin(a)], 0.999));
  const open = blocked(solids, point, toward, occlusionIn) ? 0.18 : 1;
  const share = open * (0.8 + 0.2 * normal[1]);
  return [air[0] * share, air[1] * share, air[2] * share];
}

function towardLamp({ at, radiusIn }: Lamp, point: Vec, random: () => number): [Vec, number] {
  const spread: Vec = [random() - 0.5, random() - 0.5, random() - 0.5];
  const way = minus(plus(at, spread, 2 * radiusIn), point);
  return [unit(way), Math.hypot(...way)];
}

const toWorld = ({ axes: [a, b, c] }: Solid, [x, y, z]: Vec): Vec => [
  a[0] * x + b[0] * y + c[0] * z,
  a[1] * x + b[1] * y + c[1] * z,
  a[2] * x + b[2] * y + c[2] * z,
];

function nearest(solids: readonly Solid[], from: Vec, direction: Vec): Hit | undefined {
  let solid: Solid | undefined;
  let best: Crossing | undefined;
  let limit = Number.POSITIVE_INFINITY;
  for (const one of solids) {
    if (!mayMeet(one, from, direction, limit)) continue;
    const crossing = meet(one, from, direction, limit);
    if (!crossing) continue;
    [solid, best, limit] = [one, crossing, crossing.t];
  }
  return solid && best && { solid, ...best };
}

function blocked(solids: readonly Solid[], from: Vec, direction: Vec, reach: number): boolean {
  for (const one of solids) if (mayMeet(one, from, direction, reach) && meet(one, from, direction, reach)) return true;
  return false;
}

/** Whether a ray comes near enough at all. It is asked for most, so it makes nothing anew. */
function mayMeet({ center, radius }: Solid, from: Vec, direction: Vec, limit: number): boolean {
  const x = center[0] - from[0];
  const y = center[1] - from[1];
  const z = center[2] - from[2];
  const along = x * direction[0] + y * direction[1] + z * direction[2];
  if (along + radius < 0 || along - radius > limit) return false;
  return x * x + y * y + z * z - along * along <= radius * radius;
}

interface Crossing {
  readonly t: number;
  readonly point: Vec;
  readonly normal: Vec;
}

/** Where a ray meets a solid nearer than `limit`, in the solid's own frame. */
function meet(solid: Solid, from: Vec, direction: Vec, limit: number): Crossing | undefined {
  const { axes, center } = solid;
  const [a, b, c] = axes;
  const x = from[0] - center[0];
  const y = from[1] - center[1];
  const z = from[2] - center[2];
  const origin: Vec = [a[0] * x + a[1] * y + a[2] * z, b[0] * x + b[1] * y + b[2] * z, c[0] * x + c[1] * y + c[2] * z];
  const way: Vec = [dot(a, direction), dot(b, direction), dot(c, direction)];
  const span = solid.kind === 'box' ? crossBox(solid.half, origin, way) : crossCylinder(solid.half, origin, way);
  if (!span || span.exit < 0 || span.enter > limit) return undefined;
  if (solid.carve) return meetCarved(solid.carve, origin, way, span, limit);
  if (span.enter < 0) return undefined;
  return { t: span.enter, point: plus(origin, way, span.enter), normal: span.normal };
}

interface Span {
  readonly enter: number;
  readonly exit: number;
  readonly normal: Vec;
}
const { max, min, abs, sqrt } = Math;

function crossBox(half: Vec, origin: Vec, way: Vec): Span | undefined {
  let enter = Number.NEGATIVE_INFINITY;
  let exit = Number.POSITIVE_INFINITY;
  let side = 0;
  for (let at = 0; at < 3; at++) {
    const inverse = 1 / (way[at] as number);
    const reach = inverse < 0 ? -(half[at] as number) : (half[at] as number);
    const near = (-reach - (origin[at] as number)) * inverse;
    const far = (reach - (origin[at] as number)) * inverse;
    if (near > enter) {
      enter = near;
      side = at;
    }
    if (far < exit) exit = far;
    if (enter > exit) return undefined;
  }
  const toward = (way[side] as number) < 0 ? 1 : -1;
  return { enter, exit, normal: [side === 0 ? toward : 0, side === 1 ? toward : 0, side === 2 ? toward : 0] };
}

function crossCylinder([radius, halfLength]: Vec, origin: Vec, way: Vec): Span | undefined {
  const a = way[0] * way[0] + way[2] * way[2];
  const b = origin[0] * way[0] + origin[2] * way[2];
  const under = b * b - a * (origin[0] * origin[0] + origin[2] * origin[2] - radius * radius);
  if (under < 0) return undefined;
  const root = sqrt(under);
  const toward = way[1] < 0 ? -1 : 1;
  const capIn = (-toward * halfLength - origin[1]) / way[1];
  const capOut = (toward * halfLength - origin[1]) / way[1];
  const roundIn = (-b - root) / a;
  const enter = max(roundIn, capIn);
  const exit = min((-b + root) / a, capOut);
  if (!(enter <= exit)) return undefined;
  if (capIn > roundIn) return { enter, exit, normal: [0, -toward, 0] };
  return { enter, exit, normal: unit([origin[0] + way[0] * enter, 0, origin[2] + way[2] * enter]) };
}

/** Walks through what is carved away until something is left. */
function meetCarved(
  carve: Carve,
  origin: Vec,
  way: Vec,
  { enter, exit, normal }: Span,
  limit: number,
): Crossing | undefined {
  let t = max(enter, 0);
  if (t === enter && carve(plus(origin, way, t)) >= 0) return { t, point: plus(origin, way, t), normal };
  const end = min(exit, limit);
  while (t < end) {
    const point = plus(origin, way, t);
    const left = carve(point);
    if (left >= 0) return t === 0 ? undefined : { t, point, normal: edgeNormal(carve, point) };
    t += max(abs(left) * 0.7, 0.012);
  }
  return undefined;
}

/** Out of what is left, into the hole. */
function edgeNormal(carve: (point: Vec) => number, point: Vec): Vec {
  const step = 0.02;
  const slope = (at: 0 | 1 | 2): number => {
    const shift: [number, number, number] = [0, 0, 0];
    shift[at] = step;
    return carve(minus(point, shift)) - carve(plus(point, shift));
  };
  return unit([slope(0), slope(1), slope(2)]);
}
