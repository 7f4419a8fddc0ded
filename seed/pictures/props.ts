import { plain, steel, tapeFace, threaded, wood } from './materials.ts';
import { box, type Carve, rod, type Solid, type Vec } from './shapes.ts';
import type { Lamp, Scene } from './trace.ts';

/** A tape laid along x with its face to the viewer: its zero at the left, an inch high. */
export const tape = (at: Vec, lengthIn: number, { fromIn = 0, turn = [0, 0, 0] as Vec } = {}): Solid[] => [
  box(at, [lengthIn, 1, 0.03], tapeFace(lengthIn, fromIn), { turn }),
  ...(fromIn === 0 && turn.every((degrees) => degrees === 0)
    ? [box([at[0] - 0.05, at[1] + 0.1, at[2] - 0.1], [0.06, 0.8, 0.35], steel())]
    : []),
];

/** Upright: its zero at the bottom. */
export const uprightTape = ([x, y, z]: Vec, lengthIn: number, fromIn = 0): Solid[] => [
  box([x - lengthIn / 2 + 0.5, y + lengthIn / 2 - 0.5, z], [lengthIn, 1, 0.03], tapeFace(lengthIn, fromIn), {
    turn: [0, 0, 90],
  }),
];

/** Nail heads on a face that looks toward the viewer. */
export const nails = (z: number, spots: readonly (readonly [number, number])[], rust = 0.25): Solid[] =>
  spots.map(([x, y], at) => rod([x, y, z], 0.15, 0.09, steel(rust, at), { turn: [90, 0, 0] }));

export const bolt = (at: Vec, rust = 0.1): Solid[] => [
  rod(at, 0.7, 0.12, steel(rust, at[0]), { turn: [90, 0, 0] }),
  box([at[0] - 0.42, at[1] - 0.42, at[2]], [0.84, 0.84, 0.45], steel(rust, at[1]), { turn: [0, 0, 20] }),
];

/** An upright rod with threads, from `bottom` up. */
export const threadedRod = ([x, bottom, z]: Vec, lengthIn: number, rust: number, carve?: Carve): Solid =>
  rod([x, bottom + lengthIn / 2, z], 0.3125, lengthIn, threaded(steel(rust, 5)), carve ? { carve } : {});

export const nut = (at: Vec, rust: number): Solid[] =>
  [0, 30, 60].map((turn) =>
    box([at[0] - 0.47, at[1], at[2] - 0.27], [0.94, 0.55, 0.54], steel(rust, 8), { turn: [0, turn, 0] }),
  );

/** An awl whose point is at `point`, its handle toward `turn`. */
export const awl = (point: Vec, turn: Vec, reach: readonly [number, number, number]): Solid[] => [
  rod([point[0] + reach[0] * 2, point[1] + reach[1] * 2, point[2] + reach[2] * 2], 0.09, 4, steel(), { turn }),
  rod(
    [point[0] + reach[0] * 5.6, point[1] + reach[1] * 5.6, point[2] + reach[2] * 5.6],
    0.42,
    3.4,
    plain([0.5, 0.06, 0.03], { shine: 0.5 }),
    { turn },
  ),
];

/** A 2x4 or larger on its end, its wide face to the viewer. */
export const stud = (at: Vec, size: Vec, seed: number, age = 0.6): Solid =>
  box(at, size, wood({ along: 1, seed, age }));

export const workLamp = (at: Vec, strength = 1, radiusIn = 2.5): Lamp => ({
  at,
  radiusIn,
  color: [1 * strength, 0.86 * strength, 0.66 * strength],
});
export const daylight = (at: Vec, strength = 1, radiusIn = 10): Lamp => ({
  at,
  radiusIn,
  color: [0.82 * strength, 0.92 * strength, 1.05 * strength],
});

type Look = Omit<Scene, 'solids' | 'air'> & { readonly air?: Vec };
export const scene = (
  { air = [0.16, 0.17, 0.19], ...look }: Look,
  ...solids: readonly (Solid | readonly Solid[])[]
): Scene => ({
  ...look,
  air,
  solids: solids.flat(),
});
