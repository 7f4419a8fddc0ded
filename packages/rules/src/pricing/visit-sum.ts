import type { Alike, VaryingLine } from './range-plan.ts';

/**
 * The characteristic function of the labor of a visit, one wave of a cosine series after another. At one percentile of their
 * place lines are independent, and places are at one of the whole work, so that it is a product over lines. All is kept for one
 * wave only and side by side: thousands of lines fit the nearest caches.
 */
export interface VisitSum {
  /** What each percentile stands for. */
  readonly weights: readonly number[];
  /** Of each place its number of lines, in their order. */
  readonly sizes: readonly number[];
  /** Of each line at each percentile: how far it has turned, and how far it turns with each wave. */
  readonly turned: Complex;
  readonly turns: Complex;
  /** Of each place at each of its percentiles, and wherever it falls. */
  readonly at: Complex;
  readonly all: Complex;
  /** Of all other places, wherever they fall. */
  readonly others: Complex;
  /** Of all places at each percentile of the whole work. */
  readonly atWork: Complex;
}

interface Complex {
  readonly re: Float64Array;
  readonly im: Float64Array;
}
const complex = (length: number): Complex => ({ re: new Float64Array(length), im: new Float64Array(length) });

/** @param shareOf share of the reach of the whole sum that a line comes to at a percentile, by its order */
export function openSum(
  places: readonly (readonly VaryingLine[])[],
  weights: readonly number[],
  shareOf: (line: VaryingLine, order: number) => number,
): VisitSum {
  const lines = places.flat();
  const turned = complex(lines.length * weights.length);
  const turns = complex(turned.re.length);
  turned.re.fill(1);
  for (const [at, line] of lines.entries()) {
    for (let order = 0; order < weights.length; order++) {
      const angle = Math.PI * shareOf(line, order);
      turns.re[at * weights.length + order] = Math.cos(angle);
      turns.im[at * weights.length + order] = Math.sin(angle);
    }
  }
  return {
    weights,
    sizes: places.map((group) => group.length),
    turned,
    turns,
    at: complex(places.length * weights.length),
    all: complex(places.length),
    others: complex(places.length),
    atWork: complex(weights.length),
  };
}

/** Works out the wave the lines have turned to, and turns them to the next. */
export function takeWave(sum: VisitSum, { follow, lean }: Pick<Alike, 'follow' | 'lean'>): void {
  const { sizes, weights, at, atWork } = sum;
  at.re.fill(1);
  at.im.fill(0);
  atWork.re.fill(1);
  atWork.im.fill(0);
  let line = 0;
  for (let place = 0; place < sizes.length; place++) {
    const from = place * weights.length;
    for (const end = line + (sizes[place] as number); line < end; line++) timesLine(sum, line, from, follow);
    averagePlace(sum, place, from);
    leanOnWork(sum, place, from, lean);
  }
  multiplyOthers(sum);
}

/** A line falls at the percentile of its place with some chance, on its own else. */
function timesLine({ weights, turned, turns, at }: VisitSum, line: number, from: number, follow: number): void {
  const first = line * weights.length;
  let [aloneRe, aloneIm] = [0, 0];
  for (let order = 0; order < weights.length; order++) {
    aloneRe += (weights[order] as number) * (turned.re[first + order] as number);
    aloneIm += (weights[order] as number) * (turned.im[first + order] as number);
  }
  aloneRe *= 1 - follow;
  aloneIm *= 1 - follow;
  for (let order = 0; order < weights.length; order++) {
    const x = turned.re[first + order] as number;
    const y = turned.im[first + order] as number;
    const c = follow * x + aloneRe;
    const d = follow * y + aloneIm;
    const a = at.re[from + order] as number;
    const b = at.im[from + order] as number;
    at.re[from + order] = a * c - b * d;
    at.im[from + order] = a * d + b * c;
    const cos = turns.re[first + order] as number;
    const sin = turns.im[first + order] as number;
    turned.re[first + order] = x * cos - y * sin;
    turned.im[first + order] = x * sin + y * cos;
  }
}

function averagePlace({ weights, at, all }: VisitSum, place: number, from: number): void {
  let [re, im] = [0, 0];
  for (let order = 0; order < weights.length; order++) {
    re += (weights[order] as number) * (at.re[from + order] as number);
    im += (weights[order] as number) * (at.im[from + order] as number);
  }
  all.re[place] = re;
  all.im[place] = im;
}

/** A place falls at the percentile of the whole work with a chance of `lean`, anywhere else. */
function leanOnWork({ weights, at, all, atWork }: VisitSum, place: number, from: number, lean: number): void {
  const re = (1 - lean) * (all.re[place] as number);
  const im = (1 - lean) * (all.im[place] as number);
  for (let order = 0; order < weights.length; order++) {
    const c = lean * (at.re[from + order] as number) + re;
    const d = lean * (at.im[from + order] as number) + im;
    const a = atWork.re[order] as number;
    const b = atWork.im[order] as number;
    atWork.re[order] = a * c - b * d;
    atWork.im[order] = a * d + b * c;
  }
}

/** For each place the product of those before it and of those behind it. */
function multiplyOthers({ all, others }: VisitSum): void {
  let [re, im] = [1, 0];
  for (let place = 0; place < all.re.length; place++) {
    others.re[place] = re;
    others.im[place] = im;
    [re, im] = product(re, im, all.re[place] as number, all.im[place] as number);
  }
  [re, im] = [1, 0];
  for (let place = all.re.length - 1; place >= 0; place--) {
    const [a, b] = product(others.re[place] as number, others.im[place] as number, re, im);
    others.re[place] = a;
    others.im[place] = b;
    [re, im] = product(re, im, all.re[place] as number, all.im[place] as number);
  }
}

const product = (a: number, b: number, c: number, d: number): [number, number] => [a * c - b * d, a * d + b * c];
