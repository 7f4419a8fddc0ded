import type { Source } from '../../kernel/index.ts';

export const THREAD_SOURCE: Source = {
  id: 'asme-b1.1',
  title: 'Unified coarse threads, ASME B1.1, with the stripping areas of FED-STD-H28',
  edition: 'limits agree with the formulas of B1.1-2019; the print was read only in part',
  section: '8.3; classes 2A and 2B',
  basis: 'memory',
};

interface ThreadLimits {
  readonly diameterIn: number;
  readonly threadsPerInch: number;
  /** External thread, class 2A, inches. */
  readonly leastMajorIn: number;
  readonly leastPitchIn: number;
  /** Internal thread, class 2B, inches. */
  readonly mostMinorIn: number;
  readonly mostInnerPitchIn: number;
}

const row = (
  diameterIn: number,
  threadsPerInch: number,
  leastMajorIn: number,
  leastPitchIn: number,
  mostMinorIn: number,
  mostInnerPitchIn: number,
): ThreadLimits => ({ diameterIn, threadsPerInch, leastMajorIn, leastPitchIn, mostMinorIn, mostInnerPitchIn });

/** Coarse threads from 1/2 to 1 in: Ds_min, Es_min, Kn_max, En_max. */
const THREADS: readonly ThreadLimits[] = [
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a minor diameter of thread, not a logarithm
  row(0.5, 13, 0.4876, 0.4435, 0.434, 0.4565),
  row(0.625, 11, 0.6113, 0.5589, 0.546, 0.5732),
  row(0.75, 10, 0.7353, 0.6773, 0.663, 0.6927),
  row(0.875, 9, 0.8592, 0.7946, 0.778, 0.811),
  row(1, 8, 0.983, 0.91, 0.89, 0.9276),
];

/** Half the included angle of the thread is 30 degrees. */
const TAN_30 = 1 / Math.sqrt(3);

/** Tensile stress area of a threaded rod of this diameter, square inches: pi/4 (D - 0.9743/n)^2. */
export const stressAreaIn2 = (diameterIn: number, threadsPerInch: number): number =>
  (Math.PI / 4) * Math.max(0, diameterIn - 0.9743 / threadsPerInch) ** 2;

export interface ThreadStrength {
  readonly threadsPerInch: number;
  /** The least a new rod may measure across its threads, inches. */
  readonly leastMajorIn: number;
  /** Tensile stress area of the rod, square inches. */
  readonly tensionIn2: number;
  /** Area that strips per inch of engagement, square inches: threads of the rod and of the nut. */
  readonly rodStripIn2: number;
  readonly nutStripIn2: number;
  /** Engagement at which the rod breaks and its threads strip at the same load, inches. */
  readonly equalStrengthIn: number;
}

function strengthOf(thread: ThreadLimits): ThreadStrength {
  const { diameterIn, threadsPerInch: n, leastMajorIn, leastPitchIn, mostMinorIn, mostInnerPitchIn } = thread;
  const tensionIn2 = stressAreaIn2(diameterIn, n);
  const rodStripIn2 = Math.PI * n * mostMinorIn * (1 / (2 * n) + TAN_30 * (leastPitchIn - mostMinorIn));
  const nutStripIn2 = Math.PI * n * leastMajorIn * (1 / (2 * n) + TAN_30 * (leastMajorIn - mostInnerPitchIn));
  return {
    threadsPerInch: n,
    leastMajorIn,
    tensionIn2,
    rodStripIn2,
    nutStripIn2,
    equalStrengthIn: (2 * tensionIn2) / rodStripIn2,
  };
}

const STRENGTHS: ReadonlyMap<number, ThreadStrength> = new Map(
  THREADS.map((thread) => [thread.diameterIn, strengthOf(thread)]),
);

/** Areas of a coarse thread, for rods of 1/2, 5/8, 3/4, 7/8 and 1 in. Throws RangeError for any other. */
export function threadStrength(diameterIn: number): ThreadStrength {
  const found = STRENGTHS.get(diameterIn);
  if (!found) throw new RangeError(`No coarse thread limits for a rod of ${diameterIn} in`);
  return found;
}
