import type { Rectangle } from '@underlath/contract';

const asNumber = (value: unknown): number => (typeof value === 'number' && Number.isFinite(value) ? value : 0);

/**
 * Where counted nails stand on the edges of a panel, inches, evenly at the average distance of a survey. None without both
 * a length looked at and a count.
 */
export function nailSpots(
  panel: Rectangle,
  survey: Readonly<Record<string, unknown>> | undefined,
): { xIn: number; yIn: number }[] {
  const counted = Object.values((survey?.counts as Record<string, unknown>) ?? {}).reduce<number>(
    (sum, count) => sum + asNumber(count),
    0,
  );
  const lengthIn = asNumber(survey?.surveyedLengthIn);
  if (counted === 0 || lengthIn === 0) return [];
  const { xIn, yIn, widthIn, heightIn } = panel;
  const aroundIn = 2 * (widthIn + heightIn);
  const many = Math.round((aroundIn * counted) / lengthIn);
  return Array.from({ length: many }, (_, at) => {
    const along = (at * aroundIn) / many;
    if (along < widthIn) return { xIn: xIn + along, yIn };
    if (along < widthIn + heightIn) return { xIn: xIn + widthIn, yIn: yIn + along - widthIn };
    if (along < 2 * widthIn + heightIn)
      return { xIn: xIn + widthIn - (along - widthIn - heightIn), yIn: yIn + heightIn };
    return { xIn, yIn: yIn + heightIn - (along - 2 * widthIn - heightIn) };
  });
}
