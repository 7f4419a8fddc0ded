/** Exact by definition: the international inch, 1959. */
export const MM_PER_INCH = 25.4;
export const INCHES_PER_FOOT = 12;

export const feetToInches = (lengthFt: number): number => lengthFt * INCHES_PER_FOOT;
export const inchesToFeet = (lengthIn: number): number => lengthIn / INCHES_PER_FOOT;
export const mmToInches = (lengthMm: number): number => lengthMm / MM_PER_INCH;
export const inchesToMm = (lengthIn: number): number => lengthIn * MM_PER_INCH;

/** Square feet of a rectangle given in inches. */
export const rectangleSf = (widthIn: number, heightIn: number): number =>
  (widthIn * heightIn) / (INCHES_PER_FOOT * INCHES_PER_FOOT);

/** Inches in one of the units a length is asked for in. */
export const INCHES_PER = { in: 1, ft: INCHES_PER_FOOT } as const;
