const WAVES = 256;

/** A characteristic function at the waves of a cosine series: its real and imaginary parts. */
export interface Waves {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Cosine series over 0 to `reach` of g = max(0, short - s), of g squared, and of g x s. */
export function seriesOf(short: number, reach: number) {
  const bend = new Float64Array(WAVES).fill(short ** 2 / (2 * reach), 0, 1);
  const squared = new Float64Array(WAVES).fill(short ** 3 / (3 * reach), 0, 1);
  const bySum = new Float64Array(WAVES).fill(short ** 3 / (6 * reach), 0, 1);
  for (let wave = 1; wave < WAVES; wave++) {
    const turn = (wave * Math.PI) / reach;
    const [sin, cos] = [Math.sin(turn * short), Math.cos(turn * short)];
    const scale = 2 / (reach * turn ** 2);
    bend[wave] = scale * (1 - cos);
    squared[wave] = scale * (2 * short - (2 * sin) / turn);
    bySum[wave] = scale * ((2 * sin) / turn - short * (1 + cos));
  }
  return { bend, squared, bySum };
}

/** Mean of a series over a sum of two parts. */
export function meanOf(series: Float64Array, part: Waves, others: Waves): number {
  let sum = 0;
  for (let wave = 0; wave < series.length; wave++)
    sum +=
      (series[wave] as number) *
      ((part.re[wave] as number) * (others.re[wave] as number) -
        (part.im[wave] as number) * (others.im[wave] as number));
  return sum;
}

export const one = (): Waves => ({ re: new Float64Array(WAVES).fill(1), im: new Float64Array(WAVES) });
export const nothing = (): Waves => ({ re: new Float64Array(WAVES), im: new Float64Array(WAVES) });

/** Adds a sum that is known, a share of the reach, with a weight: each wave turns by the same angle further. */
export function addKnown({ re, im }: Waves, share: number, weight: number): void {
  const [cos, sin] = [Math.cos(Math.PI * share), Math.sin(Math.PI * share)];
  let x = weight;
  let y = 0;
  for (let wave = 0; wave < re.length; wave++) {
    re[wave] = (re[wave] as number) + x;
    im[wave] = (im[wave] as number) + y;
    const turned = x * cos - y * sin;
    y = x * sin + y * cos;
    x = turned;
  }
}

/** Multiplies in place by a line that is known, a share of the reach, with some chance, and on its own else. */
export function timesEither({ re, im }: Waves, share: number, chance: number, alone: Waves): void {
  const [cos, sin] = [Math.cos(Math.PI * share), Math.sin(Math.PI * share)];
  let x = chance;
  let y = 0;
  for (let wave = 0; wave < re.length; wave++) {
    const a = re[wave] as number;
    const b = im[wave] as number;
    const c = x + (1 - chance) * (alone.re[wave] as number);
    const d = y + (1 - chance) * (alone.im[wave] as number);
    re[wave] = a * c - b * d;
    im[wave] = a * d + b * c;
    const turned = x * cos - y * sin;
    y = x * sin + y * cos;
    x = turned;
  }
}

/** Multiplies in place by one part with some chance, and by another else. */
export function timesMixed({ re, im }: Waves, part: Waves, chance: number, other: Waves): void {
  const rest = 1 - chance;
  for (let wave = 0; wave < re.length; wave++) {
    const a = re[wave] as number;
    const b = im[wave] as number;
    const c = chance * (part.re[wave] as number) + rest * (other.re[wave] as number);
    const d = chance * (part.im[wave] as number) + rest * (other.im[wave] as number);
    re[wave] = a * c - b * d;
    im[wave] = a * d + b * c;
  }
}

export function times(a: Waves, b: Waves): Waves {
  const product = nothing();
  for (let wave = 0; wave < WAVES; wave++) {
    const ar = a.re[wave] as number;
    const ai = a.im[wave] as number;
    const br = b.re[wave] as number;
    const bi = b.im[wave] as number;
    product.re[wave] = ar * br - ai * bi;
    product.im[wave] = ar * bi + ai * br;
  }
  return product;
}

/** Adds with a weight, in place. */
export function addWeighted(sum: Waves, { re, im }: Waves, weight: number): void {
  for (let wave = 0; wave < WAVES; wave++) {
    sum.re[wave] = (sum.re[wave] as number) + weight * (re[wave] as number);
    sum.im[wave] = (sum.im[wave] as number) + weight * (im[wave] as number);
  }
}
