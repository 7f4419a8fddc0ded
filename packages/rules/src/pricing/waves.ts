const LEAST_WAVES = 64;
const MOST_WAVES = 256;

/**
 * So many waves a sum takes. Of a bell curve what lies above 2 x reach / deviation waves is below exp(-(2 pi)^2 / 2), a billionth;
 * sums of few lines have more corners than a bell, and take the least number.
 * @param reach what the sum spans @param sd of the sum, as if its lines had nothing to do with each other
 */
export const wavesFor = (reach: number, sd: number): number =>
  Math.min(MOST_WAVES, Math.max(LEAST_WAVES, Math.ceil((2 * reach) / sd)));

/** Cosine series over 0 to `reach` of g = max(0, short - s), of g squared, and of g x s. */
export function seriesOf(short: number, reach: number, waves: number) {
  const bend = new Float64Array(waves).fill(short ** 2 / (2 * reach), 0, 1);
  const squared = new Float64Array(waves).fill(short ** 3 / (3 * reach), 0, 1);
  const bySum = new Float64Array(waves).fill(short ** 3 / (6 * reach), 0, 1);
  for (let wave = 1; wave < waves; wave++) {
    const turn = (wave * Math.PI) / reach;
    const [sin, cos] = [Math.sin(turn * short), Math.cos(turn * short)];
    const scale = 2 / (reach * turn ** 2);
    bend[wave] = scale * (1 - cos);
    squared[wave] = scale * (2 * short - (2 * sin) / turn);
    bySum[wave] = scale * ((2 * sin) / turn - short * (1 + cos));
  }
  return { bend, squared, bySum };
}
