import { clouds, noise } from './noise.ts';
import type { Material, Surface, Vec } from './shapes.ts';

const mix = (a: Vec, b: Vec, t: number): Vec => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];
const clamp = (value: number): number => Math.min(1, Math.max(0, value));
const step = (from: number, to: number, value: number): number => {
  const t = clamp((value - from) / (to - from));
  return t * t * (3 - 2 * t);
};
const scale = (color: Vec, by: number): Vec => [color[0] * by, color[1] * by, color[2] * by];

interface WoodLook {
  /** The board's own axis along which it grew. */
  readonly along: 0 | 1 | 2;
  readonly seed: number;
  /** 0 is fresh from the yard, 1 has been in the wall for eighty years. */
  readonly age?: number;
  /** 0 dry, 1 soaked. */
  readonly wet?: number;
}

/** Growth rings around a pith that lies outside the board, fibers along it, saw marks, and the dust of its age. */
export function wood({ along, seed, age = 0.5, wet = 0 }: WoodLook): Material {
  const [a, b] = [(along + 1) % 3, (along + 2) % 3] as [0 | 1 | 2, 0 | 1 | 2];
  const pith = [2.5 + noise(seed, 0.3, 0) * 2.5, -3.5 + noise(seed, 7.7, 1) * 1.5];
  const early = mix([0.62, 0.42, 0.21], [0.235, 0.14, 0.07], age);
  const late = mix([0.4, 0.22, 0.085], [0.1, 0.054, 0.026], age);
  return (point, normal) => {
    const [s, u, v] = [point[along], point[a], point[b]];
    const bend = noise(s * 0.045 + seed, u * 0.15, v * 0.15) * 0.9 + noise(s * 0.2, u * 0.6, seed) * 0.16;
    const ring = Math.hypot(u - (pith[0] as number) + bend, v - (pith[1] as number) + bend * 0.6) * 4.6;
    const share = ring - Math.floor(ring);
    const dark = step(0.35, 0.92, share) * (1 - step(0.93, 1, share));
    const fiber = noise(s * 0.9, u * 26 + seed, v * 26);
    const fine = noise(s * 2.6 + 5, u * 70, v * 70);
    let color = mix(early, late, clamp(0.08 + dark * 0.7 + fiber * 0.24 + fine * 0.14));
    color = scale(
      color,
      1 + 0.16 * clouds(s * 0.12 + seed, u * 0.3, v * 0.3) + 0.05 * noise(s * 5.5 + seed * 3, u * 0.5, 2),
    );
    const dirt = age * step(0.1, 0.8, clouds(s * 0.25, u * 0.5 + seed, v * 0.5)) * 0.3;
    color = mix(color, [0.13, 0.1, 0.075], dirt);
    if (Math.abs(normal[1]) > 0.9 && normal[1] > 0)
      color = mix(color, [0.36, 0.32, 0.27], 0.45 * age * (0.6 + 0.4 * fine));
    color = scale(color, 1 - 0.62 * wet * clamp(0.75 + 0.5 * clouds(s * 0.3, u * 0.4, v * 0.4 + seed)));
    const lean = fiber * 0.1 + fine * 0.09 + (dark - 0.4) * 0.12;
    const tilt: [number, number, number] = [0, 0, 0];
    tilt[a] = lean;
    tilt[b] = lean * 0.8;
    tilt[along] = 0.03 * noise(s * 6, seed, u);
    return { color, lean: tilt, shine: 0.05 + 0.5 * wet };
  };
}

/** Plies on the edges, a wide-ringed veneer on the faces. `thin` is the sheet's axis through its thickness. */
export function plywood(thin: 0 | 1 | 2, thicknessIn: number, seed: number, age = 0.25): Material {
  const face = wood({ along: thin === 1 ? 0 : 1, seed, age });
  return (point, normal) => {
    if (Math.abs(normal[thin]) > 0.7) {
      const wide: [number, number, number] = [point[0] * 0.32, point[1] * 0.32, point[2] * 0.32];
      wide[thin] = point[thin];
      return face(wide, normal);
    }
    const ply = Math.floor(((point[thin] + thicknessIn / 2) / thicknessIn) * 5) % 2;
    const grit = 1 + 0.25 * noise(point[0] * 14, point[1] * 14, point[2] * 14);
    return { color: scale(ply ? [0.5, 0.34, 0.18] : [0.3, 0.19, 0.095], grit) };
  };
}

/** Rotten wood: dark and crumbling into cubes toward where it is gone; sound wood stays as it was. */
export function rotten(sound: Material, depth: (point: Vec) => number): Material {
  return (point, normal) => {
    const surface = sound(point, normal);
    const share = step(-0.9, 0.25, depth(point) + 0.35 * clouds(point[0] * 1.3, point[1] * 1.3, point[2] * 1.3));
    if (share <= 0) return surface;
    const [x, y, z] = point;
    const crack = Math.min(
      ...[x * 2.1 + noise(y, z, 1) * 0.5, y * 1.2 + noise(x, z, 4) * 0.4, z * 2.1].map((at) =>
        Math.abs(at - Math.round(at)),
      ),
    );
    const crumb = clouds(x * 6, y * 6, z * 6);
    const punk = mix([0.2, 0.105, 0.05], [0.055, 0.032, 0.02], clamp(0.45 + crumb * 0.8));
    const color = scale(punk, 0.35 + 0.65 * step(0.02, 0.12, crack));
    return {
      color: mix(surface.color, color, share),
      lean: [crumb * 0.5 * share, noise(y * 9, x * 9, z * 9) * 0.5 * share, crumb * 0.4 * share],
    };
  };
}

/** Hot-dip zinc with its flowers; `rust` 0 to 1. */
export function steel(rust = 0, seed = 1): Material {
  return ([x, y, z]) => {
    const flower = noise(x * 2.4 + seed, y * 2.4, z * 2.4);
    const scratch = noise(x * 1.1, y * 22, z * 22 + seed);
    const zinc = scale([0.5, 0.52, 0.54], 0.72 + 0.2 * flower + 0.1 * scratch);
    const patch = rust === 0 ? 0 : step(0.4 - 1.1 * rust, 0.62 - 1.1 * rust, clouds(x * 1.5, y * 1.5 + seed, z * 1.5));
    const grit = clouds(x * 7, y * 7, z * 7 + seed);
    const oxide = mix([0.3, 0.105, 0.03], [0.09, 0.04, 0.022], clamp(0.5 + grit * 0.9));
    return {
      color: mix(zinc, oxide, patch),
      shine: 0.55 * (1 - patch),
      lean: [grit * 0.45 * patch + flower * 0.05, noise(y * 11, z * 11, x * 11) * 0.45 * patch, grit * 0.3 * patch],
    };
  };
}

/** A threaded rod: the zinc or rust of steel, with threads across it, `perInch`. */
export function threaded(base: Material, perInch = 11): Material {
  return (point, normal) => {
    const surface = base(point, normal);
    const turn = Math.atan2(point[2], point[0]) / (2 * Math.PI);
    const wave = Math.sin((point[1] * perInch + turn) * 2 * Math.PI);
    const lean = surface.lean ?? [0, 0, 0];
    return {
      ...surface,
      color: scale(surface.color, 0.72 + 0.28 * wave),
      lean: [lean[0], lean[1] + wave * 0.7, lean[2]],
    };
  };
}

export const concrete =
  (seed = 3, tone = 0.36): Material =>
  ([x, y, z]) => {
    const coarse = clouds(x * 0.4, y * 0.4, z * 0.4 + seed);
    const grain = noise(x * 9, y * 9, z * 9);
    const pore = step(0.62, 0.8, noise(x * 2.4, y * 2.4 + seed, z * 2.4));
    const color = scale([tone, tone * 0.97, tone * 0.92], 1 + 0.22 * coarse + 0.13 * grain - 0.5 * pore);
    return { color, lean: [grain * 0.14, noise(z * 9, x * 9, y * 9) * 0.14, grain * 0.1] };
  };

/** One even color with a little life in it: paint, plastic, paper, cloth. */
export const plain =
  (color: Vec, { shine = 0, grain = 0.06, size = 3 } = {}): Material =>
  ([x, y, z]) => ({
    color: scale(color, 1 + grain * clouds(x * size, y * size, z * size)),
    shine,
    lean: [noise(x * size * 3, y * size * 3, z * size * 3) * grain, noise(y * size * 3, z * size * 3, x) * grain, 0],
  });

export const glow =
  (color: Vec, strength: number): Material =>
  () => ({ color, glow: strength });

/** Something laid over a material: crayon, print, stains. `ink` answers how much of it lies at a point, 0 to 1. */
export const over =
  (base: Material, color: Vec, ink: (point: Vec, normal: Vec) => number): Material =>
  (point, normal) => {
    const share = clamp(ink(point, normal));
    if (share === 0) return base(point, normal);
    const surface: Surface = base(point, normal);
    return { ...surface, color: mix(surface.color, color, share) };
  };

/** Wax strokes on the face that looks along +z: pairs of points in the board's own x and y. */
export function crayon(
  base: Material,
  strokes: readonly (readonly [number, number, number, number])[],
  color: Vec = [0.62, 0.05, 0.03],
): Material {
  return over(base, color, ([x, y], normal) => {
    if (normal[2] < 0.5) return 0;
    let near = 9;
    for (const [x1, y1, x2, y2] of strokes) {
      const [dx, dy] = [x2 - x1, y2 - y1];
      const t = clamp(((x - x1) * dx + (y - y1) * dy) / (dx * dx + dy * dy));
      near = Math.min(near, Math.hypot(x - x1 - t * dx, y - y1 - t * dy));
    }
    return step(0.26, 0.14, near) * clamp(0.75 + 0.9 * noise(x * 12, y * 12, 3));
  });
}

const glyphs: Record<string, readonly string[]> = {
  '0': ['111', '101', '101', '101', '111'],
  '1': ['010', '110', '010', '010', '111'],
  '2': ['111', '001', '111', '100', '111'],
  '3': ['111', '001', '111', '001', '111'],
  '4': ['101', '101', '111', '001', '001'],
  '5': ['111', '100', '111', '001', '111'],
  '6': ['111', '100', '111', '101', '111'],
  '7': ['111', '001', '010', '010', '010'],
  '8': ['111', '101', '111', '101', '111'],
  '9': ['111', '101', '111', '001', '111'],
  '.': ['000', '000', '000', '000', '010'],
  '-': ['000', '000', '111', '000', '000'],
};

/** Whether a point lies in the ink of digits written from (0, 0) rightward, `heightIn` high. */
export function written(digits: string, x: number, y: number, heightIn: number): boolean {
  const cell = heightIn / 5;
  const at = Math.floor(x / (4 * cell));
  const rows = glyphs[digits[at] ?? ''];
  if (!rows || x < 0 || y < 0 || y >= heightIn) return false;
  const column = Math.floor((x - at * 4 * cell) / cell);
  return rows[4 - Math.floor(y / cell)]?.[column] === '1';
}

/** The face of a tape: inches from its own left end at `fromIn`, in sixteenths along both edges. One inch wide, lying along x. */
export function tapeFace(lengthIn: number, fromIn = 0): Material {
  const paint = plain([0.78, 0.52, 0.03], { shine: 0.35, grain: 0.03 });
  return (point, normal) => {
    if (normal[2] < 0.7 && normal[1] < 0.7) return paint(point, normal);
    const across = normal[2] >= 0.7 ? point[1] : -point[2];
    const s = point[0] + lengthIn / 2 + fromIn;
    const sixteenth = Math.round(s * 16);
    const reach =
      sixteenth % 16 === 0
        ? 0.5
        : sixteenth % 8 === 0
          ? 0.3
          : sixteenth % 4 === 0
            ? 0.24
            : sixteenth % 2 === 0
              ? 0.17
              : 0.11;
    const isTick = Math.abs(s * 16 - sixteenth) < 0.16 && 0.5 - Math.abs(across) < reach;
    const inch = Math.floor(s) + 1;
    const digits = String(inch);
    const wide = digits.length * 0.24;
    const isDigit = written(digits, s - (inch - 0.07 - wide), across + 0.17, 0.34);
    if (isTick || isDigit)
      return { color: isDigit && inch % 12 === 0 ? [0.5, 0.02, 0.02] : [0.012, 0.012, 0.012], shine: 0.2 };
    return paint(point, normal);
  };
}
