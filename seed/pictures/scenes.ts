import { concrete, crayon, glow, over, plain, plywood, rotten, steel, wood, written } from './materials.ts';
import { clouds, noise, randomOf } from './noise.ts';
import { awl, bolt, daylight, nails, nut, scene, stud, tape, threadedRod, uprightTape, workLamp } from './props.ts';
import { box, type Carve, hole, notch, rod, type Solid, type Vec } from './shapes.ts';
import type { Scene } from './trace.ts';

const row = <Item>(count: number, make: (at: number) => Item): Item[] =>
  Array.from({ length: count }, (_, at) => make(at));
const cream = plain([0.62, 0.57, 0.45], { shine: 0.12 });
const dark = plain([0.03, 0.026, 0.022]);

/** Nine-inch tile, two dark colors, a broken corner with the glue below, the carpet rolled back. */
function tile(): Scene {
  const random = randomOf(11);
  const tiles: Solid[] = [];
  for (let x = -4; x < 5; x++)
    for (let z = -5; z < 3; z++) {
      const green = (x + z) % 2 === 0;
      const color: Vec = green ? [0.055, 0.085, 0.06] : [0.1, 0.05, 0.04];
      const streaked = over(
        plain(color, { shine: 0.06, grain: 0.12, size: 0.8 }),
        [0.3, 0.29, 0.25],
        ([px, , pz]) => 0.7 * Math.max(0, clouds(px * 0.35 + x * 3, z * 5, pz * 1.6) - 0.22) + 0.12,
      );
      const broken = x === 0 && z === -1;
      const carve: Carve = ([px, , pz]) => 0.6 * (2.6 - px - pz * -1 + 0.7 * clouds(px * 1.2, pz * 1.2, 3) - 0.3);
      tiles.push(
        box([x * 9 + 0.03, -0.125, z * 9 + 0.03], [8.94, 0.125, 8.94], streaked, {
          turn: [random() * 0.12, 0, random() * 0.12],
          ...(broken && { carve }),
        }),
      );
    }
  const glue = plain([0.012, 0.01, 0.009], { shine: 0.5, grain: 0.5, size: 1.6 });
  const fuzz = plain([0.34, 0.27, 0.2], { grain: 0.55, size: 5 });
  return scene(
    {
      eye: [4, 34, 27],
      target: [4, 0, -8],
      opening: 0.66,
      lamps: [daylight([-42, 26, -34], 1.25), workLamp([30, 40, 30], 0.2)],
      air: [0.2, 0.22, 0.25],
    },
    box([-60, -1.3, -60], [120, 1.1, 110], glue),
    tiles,
    rod([2, 4.4, -37], 4.6, 110, fuzz, { turn: [0, 0, 90] }),
    rod([2, 2.2, -29.5], 2.1, 110, plain([0.4, 0.38, 0.33], { grain: 0.3, size: 4 }), { turn: [0, 0, 91] }),
    box([0, 0.02, 1.2], [18, 0.03, 1], tape([0, 0, 0], 18)[0]?.material ?? dark),
  );
}

function bareBoards(): Scene {
  const boards = row(17, (at) =>
    box(
      [-30 + at * 3.3, -0.75, -60],
      [3.27, 0.75, 84],
      wood({ along: 2, seed: at * 3.1, age: 0.35 + 0.2 * ((at * 7) % 3) * 0.5 }),
    ),
  );
  const lines = over(plain([0.85, 0.85, 0.82]), [0.08, 0.08, 0.1], ([x, y], normal) =>
    normal[2] > 0.5 &&
    Math.abs(x) < 3.2 &&
    (((y * 3) % 1) + 1) % 1 < 0.32 &&
    y < 3.4 &&
    noise(Math.floor(y * 3), x * 2.3, 1) > -0.5
      ? 0.8
      : 0,
  );
  return scene(
    {
      eye: [-4, 30, 34],
      target: [-3, 3, -14],
      opening: 0.7,
      lamps: [daylight([50, 44, -30], 1.5), workLamp([-30, 40, 20], 0.2)],
      air: [0.24, 0.26, 0.29],
    },
    boards,
    stud([-14, 0, -24], [5.5, 70, 5.5], 4, 0.3),
    box([-15.2, 9, -18.4], [8, 10.5, 0.03], lines, { turn: [0, 0, -2] }),
    box([-60, 0, -62], [120, 40, 2], cream),
  );
}

/** A strap over the cut in the upper plate, the vent behind it. */
function oldTie(): Scene {
  const cut = notch([3, 0, 1.75], [1.2, 3, 2.125]);
  const spots = (from: number): [number, number][] =>
    row(8, (at) => [from + Math.floor(at / 2) * 1.45, at % 2 === 0 ? 1.9 : 2.6] as [number, number]);
  return scene(
    {
      eye: [9, 7, 27],
      target: [3.2, 0.3, 0],
      opening: 0.52,
      lamps: [workLamp([-22, 15, 14], 0.42), workLamp([30, 22, 40], 0.1)],
    },
    box([-40, 0, -3.5], [80, 1.5, 3.5], wood({ along: 0, seed: 3, age: 0.75 }), { carve: cut }),
    box([-40, 1.5, -3.5], [80, 1.5, 3.5], wood({ along: 0, seed: 8, age: 0.7 }), { carve: cut }),
    [-13, 12.5].map((x, at) => stud([x, -40, -3.5], [1.5, 40, 3.5], at * 5 + 2, 0.75)),
    rod([3, 0, -1.2], 1.06, 60, steel(0.1, 3)),
    box([-5.4, 1.5, 0], [16.8, 1.5, 0.06], steel(0.06, 9)),
    nails(0.08, [...spots(-5), ...spots(5.9)], 0.1),
    tape([1.8, -2.1, 0.1], 12),
    box([-60, -50, -9], [120, 100, 1], plain([0.3, 0.28, 0.25], { grain: 0.25, size: 0.7 })),
  );
}

/** The hole that was cut for the milk door, a smaller piece dropped into it. */
function milkDoor(): Scene {
  const sheet = plywood(2, 0.47, 6, 0.3);
  const edges: [number, number][] = [
    ...row(11, (at) => [-15.3 + 0.1 * Math.sin(at * 9), -30 + at * 6] as [number, number]),
    ...row(6, (at) => [0.4, -30 + at * 12] as [number, number]),
  ];
  const light = crayon(sheet, [
    [-13, 15.2, -9.2, 13.1],
    [-9.2, 13.1, -10.8, 12.9],
    [-9.2, 13.1, -9.8, 14.5],
  ]);
  return scene(
    {
      eye: [-9, 6, 58],
      target: [0.5, 0, 0],
      opening: 0.66,
      lamps: [workLamp([-42, 24, 17], 1.25), workLamp([40, 30, 50], 0.22)],
    },
    box([-16, -34, 0], [48, 68, 0.47], light, { carve: notch([-8, 0, 0], [8.5, 10.6, 1]) }),
    box([-64.2, -34, 0], [48.1, 68, 0.47], plywood(2, 0.47, 21, 0.35)),
    box([-7.1, -9.7, 0.02], [14.2, 18.6, 0.47], plywood(2, 0.47, 33, 0.1), { turn: [0, 0, 1.6] }),
    nails(0.5, [[-5.6, 7.6], [6, -8.4], ...edges], 0.3),
    [-16.8, 15.2].map((x, at) => stud([x, -40, -3.6], [1.5, 80, 3.5], at * 7 + 1, 0.8)),
    box([9, -6, -1.2], [0.25, 2.6, 1.6], steel(0.5, 2)),
    box([9, 4.5, -1.2], [0.25, 2.6, 1.6], steel(0.5, 6)),
    box([-60, -60, -9], [120, 120, 1], plain([0.1, 0.085, 0.07], { grain: 0.4 })),
    tape([-8.5, -13.2, 0.55], 24),
  );
}

const footOfWall = (more: readonly (Solid | readonly Solid[])[]): Scene =>
  scene(
    {
      eye: [10.5, 7.2, 19],
      target: [4.6, 4, -1.4],
      opening: 0.5,
      lamps: [workLamp([-9, 13, 15], 0.3), daylight([34, 20, 30], 0.28)],
      air: [0.13, 0.135, 0.15],
    },
    box([-40, -20, -9], [80, 20, 12], concrete()),
    box([-40, 0, -3.5], [80, 1.5, 3.5], wood({ along: 0, seed: 2, age: 0.85, wet: 0.15 })),
    stud([-0.2, 1.5, -3.5], [3.5, 60, 3.5], 9, 0.75),
    box([-40, 1.5, -4.1], [80, 60, 0.5], plywood(2, 0.5, 4, 0.45)),
    more.flat(),
  );

/** The rod above the plate, rusted to 7/16 in, the tape behind it. */
function thinRod(): Scene {
  const waste: Carve = ([x, y, z]) => {
    const narrow = Math.exp(-((y + 2.9) ** 2) / 0.9);
    const left = 0.33 - 0.112 * narrow + 0.035 * clouds(x * 4, y * 2.4, z * 4) * (0.4 + narrow);
    return 0.5 * (left - Math.hypot(x, z));
  };
  return footOfWall([
    box([3.3, 4.6, -2.9], [0.14, 11, 2.3], steel(0.28, 2)),
    box([3.3, 4.6, -2.9], [2.9, 0.3, 2.3], steel(0.42, 3)),
    ...row(4, (at) => rod([3.46, 8.2 + at * 1.9, -1.75], 0.36, 0.3, steel(0.35, at), { turn: [0, 0, 90] })),
    threadedRod([5, -1, -1.75], 8.2, 0.62, waste),
    ...nut([5, 4.9, -1.75], 0.55),
    ...tape([4.781, 1.56, -2.2], 6),
  ]);
}

function newRod(): Scene {
  const epoxy = plain([0.4, 0.39, 0.36], { shine: 0.25, grain: 0.2 });
  return footOfWall([
    box([3.3, 4.6, -2.9], [0.14, 11, 2.3], steel(0.02, 2)),
    box([3.3, 4.6, -2.9], [4.1, 0.3, 2.3], steel(0.02, 3)),
    ...row(5, (at) => rod([3.46, 7.6 + at * 1.6, -1.75], 0.3, 0.3, steel(0, at), { turn: [0, 0, 90] })),
    threadedRod([5.9, -1, -1.6], 8.1, 0),
    ...nut([5.9, 4.9, -1.6], 0),
    rod([5.9, 1.52, -1.6], 0.62, 0.16, epoxy),
    threadedRod([8.6, -1, -1.9], 3.4, 0.66),
    ...tape([4.6, 1.56, -3.2], 9),
  ]);
}

/** Ceiling joists from below, a string across the near one. */
function pantrySag(): Scene {
  const lath = row(9, (at) => box([-60 + at * 14, 7.3, -70], [1.4, 0.3, 80], wood({ along: 2, seed: at, age: 0.8 })));
  return scene(
    {
      eye: [-6, -7, 30],
      target: [1.6, 2.4, -2],
      opening: 0.5,
      lamps: [workLamp([-26, -12, 18], 0.62), workLamp([26, -20, 30], 0.16)],
    },
    row(5, (at) => box([-60, 0, -1.5 - at * 16], [120, 7.25, 1.5], wood({ along: 0, seed: at * 4 + 1, age: 0.72 }))),
    lath,
    box([-60, 7.6, -80], [120, 0.5, 90], plain([0.42, 0.4, 0.36], { grain: 0.3, size: 0.9 })),
    rod([0, 0.75, 0.09], 0.045, 120, plain([0.86, 0.86, 0.8]), { turn: [0, 0, 90] }),
    uprightTape([1.6, 0, 0.2], 9),
    nails(
      0.03,
      [
        [-9, 3],
        [9.5, 5],
        [-6, 5.6],
      ],
      0.6,
    ),
  );
}

/** Water on a dark sill, the pins of the meter in it. */
function wetSill(): Scene {
  const random = randomOf(5);
  const drop = plain([0.16, 0.15, 0.14], { shine: 1, grain: 0.02 });
  const drops = row(46, () => {
    const r = 0.06 + random() * 0.2;
    return rod([random() * 26 - 13, 0.01, -0.2 - random() * 5], r, 0.05 + r * 0.3, drop);
  });
  const screen = over(plain([0.17, 0.21, 0.15], { grain: 0 }), [0.015, 0.02, 0.015], ([x, y], normal) =>
    normal[2] > 0.6 && written('34', x + 0.62, y + 0.36, 0.78) ? 1 : 0,
  );
  const body = plain([0.36, 0.13, 0.012], { shine: 0.12, grain: 0.02 });
  const tilt: Vec = [-16, 14, 0];
  return scene(
    {
      eye: [4, 11, 23],
      target: [0.4, 1.8, -1.5],
      opening: 0.5,
      lamps: [daylight([-26, 21, -16], 1.1, 8), workLamp([16, 16, 26], 0.3)],
      air: [0.16, 0.18, 0.2],
    },
    box([-40, -5.5, -5.5], [80, 5.5, 5.5], wood({ along: 0, seed: 12, age: 0.8, wet: 0.95 })),
    row(6, (at) =>
      box(
        [-22 + at * 7.6, 0, -6.4],
        [7.5, 40, 0.8],
        wood({ along: 1, seed: at * 2.7, age: 0.6, wet: at > 1 && at < 5 ? 0.7 : 0.25 }),
      ),
    ),
    drops,
    box([-1.3, 0.75, -3.2], [2.6, 6.2, 1.1], body, { turn: tilt }),
    box([-0.95, 4.15, -2.62], [1.9, 1.5, 0.3], screen, { turn: tilt }),
    rod([0.26, 2.55, -1.88], 0.42, 0.14, plain([0.08, 0.08, 0.08], { shine: 0.3 }), { turn: [74, 14, 0] }),
    [-0.45, 0.45].map((x) => rod([x - 0.35, 0.35, -1.75], 0.05, 1.4, steel(), { turn: tilt })),
  );
}

/** The boards behind the wainscot, spotted where the water came down. */
function mold(): Scene {
  const stained = (seed: number, wet: number, from: number) => {
    const base = wood({ along: 1, seed, age: 0.45, wet });
    return over(base, [0.022, 0.03, 0.022], ([x, y, z], normal) => {
      if (normal[2] < 0.5) return 0;
      const [u, v] = [x + from, y];
      const near = 1 - Math.hypot((u - 3) / 15, (v + 7) / 13);
      const spots = clouds(u * 1.5, v * 1.5, 3) + 0.5 * clouds(u * 4, v * 4, 9);
      return Math.max(0, Math.min(1, (near * 1.25 + spots * 0.95 - 0.42) * 2.4)) * (0.7 + 0.3 * noise(u * 9, v * 9, z));
    });
  };
  return scene(
    {
      eye: [-5, 3, 44],
      target: [1, 0, 0],
      opening: 0.68,
      lamps: [workLamp([-34, 24, 20], 1.05), daylight([34, 26, 34], 0.3)],
    },
    row(12, (at) => {
      const x = -33 + at * 5.5;
      return box(
        [x, -20, -0.8 + 0.05 * (at % 2)],
        [5.4, 50, 0.8],
        stained(at * 2.2, at > 4 && at < 9 ? 0.5 : 0.1, x + 2.7),
      );
    }),
    box([-40, -26, -1], [80, 7, 5.5], wood({ along: 0, seed: 31, age: 0.75, wet: 0.7 })),
    box([-40, 15.6, 0], [80, 1.2, 1.6], cream),
    box([-34, -19, 0.1], [15, 34, 0.7], cream, { turn: [0, 9, 0] }),
    uprightTape([14.4, -18.8, 0.2], 30),
    nails(
      0.05,
      row(9, (at) => [-21 + at * 5.5, 12 + (at % 3)] as [number, number]),
      0.75,
    ),
  );
}

/** Joists in their ledger from below; crayon says which were looked at. */
function joistEnds(): Scene {
  const good: [number, number, number, number][] = [
    [0, 0, 0.7, -0.9],
    [0.7, -0.9, 2.2, 1.7],
  ];
  const bad: [number, number, number, number][] = [
    [-1, -1.2, 1.2, 1.2],
    [-1, 1.2, 1.2, -1.2],
  ];
  const at = (x: number, marks: typeof good) =>
    marks.map(([x1, y1, x2, y2]) => [x1 + x, y1 + 0.6, x2 + x, y2 + 0.6] as const);
  const ledger = crayon(wood({ along: 0, seed: 5, age: 0.65 }), [
    ...at(-20.5, good),
    ...at(-7.6, good),
    ...at(5.6, bad),
    ...at(18.6, good),
  ]);
  return scene(
    {
      eye: [-7, -13, 33],
      target: [0.5, 1.6, -4],
      opening: 0.74,
      lamps: [workLamp([-24, -20, 22], 0.95), daylight([60, -6, 30], 0.5)],
    },
    box([-60, -0.5, -9.5], [120, 9.25, 1.5], ledger),
    row(7, (n) =>
      box(
        [-41 + n * 13, 0.4, -7.9 - (n === 3 ? -0.35 : 0)],
        [1.5, 7.25, 70],
        wood({ along: 2, seed: n * 3 + 2, age: 0.6 }),
        {
          turn: [n === 3 ? -0.5 : 0, 0, 0],
        },
      ),
    ),
    row(24, (n) => box([-60 + n * 5.3, 7.7, -12], [5.25, 0.75, 80], wood({ along: 0, seed: n * 1.7, age: 0.5 }))),
    box([-60, -40, -11], [120, 40, 1.4], plain([0.35, 0.34, 0.31], { grain: 0.2, size: 0.6 })),
    box([17, 0.2, -7.8], [9.5, 7.4, 60], plain([0.5, 0.48, 0.43], { grain: 0.15, size: 0.5 })),
  );
}

/** The end of one of them: two nails that hold, a third that split it. */
function toeNails(): Scene {
  const split: Carve = ([x, y, z]) => {
    const line = -0.4 + 0.1 * x * 0.3 + 0.14 * noise(x * 0.9, 4, z * 0.4);
    const open = 0.085 * Math.max(0, 1 - (x + 10) / 6.4);
    return 0.7 * Math.max(Math.abs(y - line) - open, x + 3.6);
  };
  const slanted = (x: number, y: number, seed: number, turn: number) => [
    rod([x, y, 0.04], 0.17, 0.1, steel(0.45, seed), { turn: [62, turn, 0] }),
    rod([x - 0.35, y, -0.2], 0.081, 1, steel(0.4, seed), { turn: [62, turn, 0] }),
  ];
  return scene(
    {
      eye: [6.4, 3.2, 18],
      target: [3.6, 0.1, -0.4],
      opening: 0.58,
      lamps: [workLamp([-13, 8, 10], 0.42), daylight([26, 10, 24], 0.2)],
      air: [0.13, 0.135, 0.15],
    },
    box([-6, -4.8, -12], [5.9, 9.25, 26], wood({ along: 2, seed: 14, age: 0.7 })),
    box([0.12, -3.6, -1.5], [20, 7.25, 1.5], wood({ along: 0, seed: 17, age: 0.6 }), { carve: split }),
    slanted(0.95, 2.2, 1, -42),
    slanted(0.85, -2.4, 4, -42),
    slanted(1.1, -0.42, 7, -30),
    box([-20, 3.75, -30], [60, 0.75, 40], wood({ along: 0, seed: 3, age: 0.5 })),
    box([-60, -60, -30], [120, 120, 1], dark),
    tape([0.12, -3.5, 0.04], 9),
  );
}

const bolts = (z: number, spots: readonly (readonly [number, number])[]): Solid[] =>
  spots.flatMap(([x, y]) => bolt([x, y, z]));

/** The string along the painted beam, the sash below. */
function beamSag(): Scene {
  const chipped = over(wood({ along: 0, seed: 40, age: 0.6 }), [0.55, 0.54, 0.46], ([x, y, z], normal) =>
    normal[2] > 0.5 || normal[1] < -0.5
      ? clouds(x * 0.5, y * 0.9, z + 2) + 0.35 * clouds(x * 3, y * 3, 1) > -0.32
        ? 0.95
        : 0
      : 0,
  );
  const mullion = (x: number) => box([x, -40, -4], [1.6, 36, 1.8], cream);
  return scene(
    {
      eye: [-5, -3.4, 29],
      target: [1.2, 2, 0],
      opening: 0.5,
      lamps: [workLamp([-25, -7, 15], 0.5), daylight([10, -14, -30], 0.7, 14)],
      air: [0.17, 0.18, 0.2],
    },
    box([-60, 0, -5.5], [120, 9.5, 5.5], chipped),
    rod([0, 0.8125, 0.07], 0.045, 120, plain([0.8, 0.16, 0.1]), { turn: [0, 0, 90] }),
    uprightTape([2.4, 0, 0.16], 8),
    box([-60, -4.2, -4.4], [120, 2.6, 2.6], cream),
    [-14, 14].map(mullion),
    box([-60, -60, -60], [120, 58, 1], glow([0.72, 0.82, 0.95], 0.62)),
  );
}

function beamSeat(): Scene {
  return scene(
    {
      eye: [-10, 5, 32],
      target: [0.4, 0.6, 0],
      opening: 0.66,
      lamps: [workLamp([-28, 12, 16], 0.62), daylight([36, 20, 34], 0.3)],
    },
    stud([-2.75, -50, -5.5], [5.5, 50, 5.5], 6, 0.35),
    box([-60, 0, -5.5], [62.75, 9.5, 5.5], wood({ along: 0, seed: 23, age: 0.55 })),
    box([-5.2, 0.02, 0], [8, 4.6, 0.2], steel(0, 3)),
    box([-2.75, -7, 0], [5.5, 7.4, 0.2], steel(0, 7)),
    bolts(0.24, [
      [-3.9, 3.2],
      [1.4, 3.2],
      [-1.4, -2.2],
      [1.4, -2.2],
      [-1.4, -5.4],
      [1.4, -5.4],
    ]),
    box([3.1, -50, -9], [30, 80, 3], cream),
    tape([-2.75, -0.9, 0.3], 9),
    box([-60, -60, -16], [120, 120, 1], plain([0.23, 0.22, 0.2], { grain: 0.2, size: 0.4 })),
  );
}

/** The foot of the post from outside, the trim off, the awl in it. */
function cornerPost(): Scene {
  const lost: Carve = ([x, y, z]) => {
    const deep = Math.max(x, z);
    if (y > 2 || deep < -0.6) return 2.8 - deep;
    const low = Math.max(0, Math.min(1, (2 - y) / 17));
    const front = 2.75 - 1.35 * low * (1 + 0.5 * clouds(x * 0.5, y * 0.25, 2)) - 0.22 * low * clouds(x * 3, y * 3, 7);
    const side = 2.75 - 1.5 * low * (1 + 0.5 * clouds(z * 0.6, y * 0.22, 6)) - 0.22 * low * clouds(z * 3, y * 3, 9);
    return 0.45 * Math.min(front - z, side - x);
  };
  const sound = wood({ along: 1, seed: 6, age: 0.7, wet: 0.25 });
  const depth = ([x, y, z]: Vec) => Math.max(0, (5 - y) / 20) * 2.6 + Math.max(x, z) * 0.4 - 2.0;
  const water = plain([0.25, 0.26, 0.26], { shine: 0.5, grain: 0.15, size: 0.7 });
  return scene(
    {
      eye: [11, 5, 34],
      target: [0.6, -2.5, 0],
      opening: 0.72,
      lamps: [daylight([-26, 22, 20], 0.95, 7), workLamp([28, -2, 18], 0.2)],
      air: [0.2, 0.22, 0.25],
    },
    box(
      [-2.75, -14, -2.75],
      [5.5, 60, 5.5],
      rotten(sound, ([x, y, z]) => depth([x, y + 16, z])),
      {
        carve: ([x, y, z]) => lost([x, y + 16, z]),
      },
    ),
    box([-30, -24, -8], [60, 10, 16], concrete(9, 0.3)),
    row(9, (at) => box([-40, -13.6 + at * 4.2, -4.4], [37, 4.6, 0.6], cream, { turn: [-6, 0, 0] })),
    rod([9.4, 4, -0.5], 1.5, 26, water),
    rod([10.6, -10.6, 0.4], 1.5, 7, water, { turn: [0, 0, 32] }),
    box([4, -14, -9], [30, 60, 1], plain([0.2, 0.23, 0.2], { grain: 0.4, size: 0.3 })),
    awl([0.4, -7.6, 1.2], [60, 65, 0], [0.785, 0.5, 0.366]),
    tape([-2.75, -13.2, 3.1], 9),
  );
}

/** The same corner from inside the porch. */
function porchCorner(): Scene {
  const sash = (x: number): Solid[] => [
    box([x, 32, -1], [44, 2.2, 2.2], cream),
    box([x, 78, -1], [44, 2.2, 2.2], cream),
    box([x, 55, -1], [44, 1.2, 1.4], cream),
    ...[0, 14, 28, 42].map((at) => box([x + at, 32, -1], [at % 42 ? 1.2 : 2, 48, 1.6], cream)),
  ];
  const stained = over(cream, [0.2, 0.14, 0.07], ([x, y], normal) =>
    normal[2] > 0.5
      ? Math.max(0, 0.9 - Math.hypot((x + 62) / 26, (y + 16) / 22) + 0.35 * clouds(x * 0.2, y * 0.2, 1))
      : 0,
  );
  return scene(
    {
      eye: [74, 58, 108],
      target: [26, 42, 0],
      opening: 0.78,
      lamps: [daylight([40, 76, -70], 3.4, 26), workLamp([120, 84, 90], 1.1, 6)],
      air: [0.2, 0.22, 0.25],
    },
    box([0, 0, -5.5], [5.5, 94, 5.5], wood({ along: 1, seed: 6, age: 0.6 })),
    [8, 60, 112].flatMap(sash),
    box([5.5, 0, -1.4], [140, 31, 1.4], stained),
    box([5.5, 30.6, -2], [140, 1.4, 5], cream),
    box([-4, 81, -5.5], [160, 9.5, 5.5], wood({ along: 0, seed: 40, age: 0.55 })),
    row(12, (at) => box([-4 + at * 13, 90.5, -5], [1.5, 7.25, 130], wood({ along: 2, seed: at * 2 + 1, age: 0.6 }))),
    row(40, (at) => box([-8 + at * 3.4, -0.8, -6], [3.36, 0.8, 150], wood({ along: 2, seed: at * 1.9, age: 0.5 }))),
    box([-2, 0, 0], [1.6, 94, 130], cream),
    rod([12, 60, -9], 1.6, 120, plain([0.24, 0.26, 0.26], { shine: 0.4 })),
    box([-300, -60, -160], [700, 300, 1], glow([0.66, 0.76, 0.88], 0.85)),
    box([-300, -60, -150], [700, 96, 1], glow([0.2, 0.26, 0.2], 0.6)),
    box([16, 97.8, -5], [150, 0.7, 140], wood({ along: 0, seed: 77, age: 0.5 })),
  );
}

/** Gray paper with the date on it, torn out beside the textured ceiling. */
function laundryCeiling(): Scene {
  const back = over(plain([0.36, 0.34, 0.3], { grain: 0.14, size: 1.4 }), [0.07, 0.08, 0.16], ([x, y], normal) =>
    normal[2] > 0.5 && written('06-14-1996', x + 5.9, y + 0.5, 1.15) ? 0.85 * (0.75 + 0.5 * noise(x * 6, y * 6, 0)) : 0,
  );
  const torn: Carve = ([x, y]) => 0.6 * (8.6 + 0.5 * clouds(y * 0.5, 1, 4) - x + 0.15 * noise(y * 4, x, 2));
  const popcorn = (x: number, y: number) => clouds(x * 1.3, y * 1.3, 5) + 0.7 * clouds(x * 3, y * 3, 8);
  const textured = (point: Vec) => {
    const bump = popcorn(point[0], point[1]);
    const e = 0.06;
    const slope = (dx: number, dy: number) =>
      (popcorn(point[0] - dx, point[1] - dy) - popcorn(point[0] + dx, point[1] + dy)) * 2.2;
    return {
      color: [0.62 + bump * 0.06, 0.61 + bump * 0.06, 0.57 + bump * 0.05] as Vec,
      lean: [slope(e, 0), slope(0, e), 0] as Vec,
    };
  };
  return scene(
    {
      eye: [4, -4, 32],
      target: [1, 0, 0],
      opening: 0.66,
      lamps: [workLamp([-27, 16, 9], 0.62), daylight([30, -20, 40], 0.25)],
    },
    box([-34, -30, -3], [68, 60, 0.6], textured, { carve: notch([3, 0, 0], [13.5, 9, 2]) }),
    [-9, 13].map((x, at) => box([x, -30, -8], [1.5, 60, 5], wood({ along: 1, seed: at + 4, age: 0.3 }))),
    box([-40, -40, -14], [80, 80, 1], plain([0.5, 0.33, 0.34], { grain: 0.5, size: 1.2 })),
    box([-9, -5.2, 0.4], [18, 10.4, 0.5], back, { turn: [-4, 6, -5], carve: torn }),
  );
}

/** A 2x4 with a hole in its wide face, the capped pipe below. */
const sinkWall = (more: readonly Solid[]): Scene =>
  scene(
    {
      eye: [-8.4, 3.4, 22],
      target: [0.9, 0, -0.6],
      opening: 0.56,
      lamps: [workLamp([-18, 9, 10], 0.36), daylight([22, 14, 26], 0.22)],
      air: [0.14, 0.145, 0.16],
    },
    box([-1.75, -40, -1.5], [3.5, 80, 1.5], wood({ along: 1, seed: 19, age: 0.62 }), {
      carve: hole(2, [0, 0.6], 0.875),
    }),
    box([-40, -40, -14], [80, 80, 0.7], wood({ along: 0, seed: 50, age: 0.75 })),
    box([-40, 4.6, -13.2], [80, 0.4, 1], dark),
    rod([7.8, -20, -5], 0.55, 34, steel(0.75, 4)),
    rod([7.8, -3, -5], 0.8, 1.4, steel(0.6, 5)),
    more,
  );

const boredStud = (): Scene => sinkWall(tape([-1.75, -1.75, 0.06], 7));

function doubledStud(): Scene {
  const spots = row(8, (at) => [at % 2 === 0 ? -1.1 : 1.05, -8.4 + at * 2.7] as [number, number]);
  return sinkWall([
    box([-1.72, -40, -3.05], [3.5, 80, 1.5], wood({ along: 1, seed: 29, age: 0 })),
    ...nails(
      0.04,
      spots.filter(([, y]) => Math.abs(y - 0.6) > 1.4),
      0,
    ),
    ...tape([-1.75, -1.75, 0.06], 7),
  ]);
}

export const scenes = {
  tile,
  'bare-boards': bareBoards,
  'old-tie': oldTie,
  'milk-door': milkDoor,
  'thin-rod': thinRod,
  'new-rod': newRod,
  'pantry-sag': pantrySag,
  'wet-sill': wetSill,
  mold,
  'joist-ends': joistEnds,
  'toe-nails': toeNails,
  'beam-sag': beamSag,
  'beam-seat': beamSeat,
  'corner-post': cornerPost,
  'porch-corner': porchCorner,
  'laundry-ceiling': laundryCeiling,
  'bored-stud': boredStud,
  'doubled-stud': doubledStud,
} satisfies Record<string, () => Scene>;

export type PictureName = keyof typeof scenes;
