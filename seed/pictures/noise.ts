/** Numbers between 0 and 1 that are the same in every run (the mulberry32 generator, public domain). */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** One value for each corner of a lattice that repeats every 256 steps, and a shuffle to find it by. */
const values = new Float64Array(256);
const shuffled = new Uint8Array(512);
{
  const random = randomOf(29);
  const order = Array.from({ length: 256 }, (_, at) => at);
  for (let at = 255; at > 0; at--) {
    const other = Math.floor(random() * (at + 1));
    [order[at], order[other]] = [order[other] as number, order[at] as number];
  }
  for (let at = 0; at < 512; at++) shuffled[at] = order[at & 255] as number;
  for (let at = 0; at < 256; at++) values[at] = 2 * random() - 1;
}

/** Smooth noise in space, -1 to 1, with features about one unit wide. */
export function noise(x: number, y: number, z: number): number {
  const i = Math.floor(x);
  const j = Math.floor(y);
  const k = Math.floor(z);
  const u = ease(x - i);
  const v = ease(y - j);
  const w = ease(z - k);
  const left = shuffled[i & 255] as number;
  const right = shuffled[(i + 1) & 255] as number;
  const low = j & 255;
  const high = (j + 1) & 255;
  const near = k & 255;
  const far = (k + 1) & 255;
  const lowFront = between(corner(left, low, near), corner(right, low, near), u);
  const highFront = between(corner(left, high, near), corner(right, high, near), u);
  const lowBack = between(corner(left, low, far), corner(right, low, far), u);
  const highBack = between(corner(left, high, far), corner(right, high, far), u);
  return between(between(lowFront, highFront, v), between(lowBack, highBack, v), w);
}

const corner = (column: number, row: number, layer: number): number =>
  values[shuffled[((shuffled[column + row] as number) + layer) & 511] as number] as number;
const ease = (t: number): number => t * t * (3 - 2 * t);
const between = (a: number, b: number, t: number): number => a + (b - a) * t;

/** Three sizes of noise on one another, about -1 to 1. */
export const clouds = (x: number, y: number, z: number): number =>
  (noise(x, y, z) + 0.5 * noise(2.1 * x + 7, 2.1 * y, 2.1 * z) + 0.25 * noise(4.3 * x, 4.3 * y + 3, 4.3 * z)) / 1.75;
