import { wholeUp } from '../../kernel/index.ts';

/** Stock thinner than an inch is counted as an inch. */
const THINNEST_IN = 1;
const SHEET_SF = 32;
const HOURS_PER_DAY = 8;
/** Pounds of nails for 1,000 board feet of framing, for each penny of the nail. */
const FRAMING_LB_PER_MBF_PER_PENNY = 1.67;
const SHEATHING_8D_LB_PER_MSF = 20;

function assertEach(amounts: Record<string, number>, allowed: 'above 0' | '0 or more'): void {
  for (const [name, amount] of Object.entries(amounts)) {
    const fits = Number.isFinite(amount) && (allowed === '0 or more' ? amount >= 0 : amount > 0);
    if (!fits) throw new RangeError(`${name} came as ${amount}; allowed is ${allowed}`);
  }
}

/**
 * Board feet of lumber, nominal inches and feet: 6x8 of 16 ft is 64. Pieces 0 or more, sizes above 0, or RangeError.
 * Source: BOARD_FEET_SOURCE.
 */
export function boardFeet(pieces: number, thicknessIn: number, widthIn: number, lengthFt: number): number {
  assertEach({ pieces }, '0 or more');
  assertEach({ thicknessIn, widthIn, lengthFt }, 'above 0');
  return (pieces * Math.max(THINNEST_IN, thicknessIn) * widthIn * lengthFt) / 12;
}

/** Studs of a plain wall, corners and openings not counted. Length in feet, spacing in inches. Source: STUD_COUNT_SOURCE. */
export function fieldStuds(lengthFt: number, spacingIn: number): number {
  assertEach({ lengthFt, spacingIn }, 'above 0');
  return wholeUp((12 * lengthFt) / spacingIn) + 1;
}

/** Feet of plate for a wall: a sole and a doubled top are three. Source: STUD_COUNT_SOURCE. */
export function plateFt(lengthFt: number, plates = 3): number {
  assertEach({ lengthFt, plates }, '0 or more');
  return lengthFt * plates;
}

/**
 * Whole 4x8 ft sheets for an area in square feet, ordinary openings not taken off; waste in percent is added before the one
 * rounding up: 1,060 SF is 34. For a repair the panel layout counts, not the area. Source: SHEATHING_SOURCE.
 */
export function sheathingSheets(areaSf: number, wastePct = 0): number {
  assertEach({ areaSf, wastePct }, '0 or more');
  return wholeUp((areaSf * (1 + wastePct / 100)) / SHEET_SF);
}

export interface PanelNailing {
  readonly widthIn: number;
  readonly heightIn: number;
  readonly edgeSpacingIn: number;
  readonly fieldSpacingIn: number;
  readonly studSpacingIn: number;
}

/** Nails of one panel: around its edges, and along the studs between them. Spacings come from the approved schedule only. Source: PANEL_NAILS_SOURCE. */
export function panelNailCount({
  widthIn,
  heightIn,
  edgeSpacingIn,
  fieldSpacingIn,
  studSpacingIn,
}: PanelNailing): number {
  assertEach({ widthIn, heightIn, edgeSpacingIn, fieldSpacingIn, studSpacingIn }, 'above 0');
  const edge = wholeUp((2 * (widthIn + heightIn)) / edgeSpacingIn);
  const studs = Math.max(0, wholeUp(widthIn / studSpacingIn) - 1);
  return edge + studs * Math.max(0, wholeUp(heightIn / fieldSpacingIn) - 1);
}

/** Pounds of nails for framing lumber, by board feet and the nail's penny: 10d for 6,300 BF is 105 lb. Source: NAIL_WEIGHT_SOURCE. */
export function framingNailsLb(lumberBf: number, penny: number): number {
  assertEach({ lumberBf, penny }, '0 or more');
  return (FRAMING_LB_PER_MBF_PER_PENNY * penny * lumberBf) / 1000;
}

/** Pounds of 8d nails for sheathing, by square feet: 1,500 SF is 30 lb. Source: NAIL_WEIGHT_SOURCE. */
export function sheathingNailsLb(areaSf: number): number {
  assertEach({ areaSf }, '0 or more');
  return (SHEATHING_8D_LB_PER_MSF * areaSf) / 1000;
}

/**
 * Man-days of work: amount over unit, times man-hours a unit, over 8 hours, times a delay factor (1 or more): 16,000 SF at 33
 * man-hours per 1,000 SF is 66. Source: MAN_DAYS_SOURCE.
 */
export function manDays(amount: number, unit: number, manHoursPerUnit: number, delayFactor = 1): number {
  assertEach({ amount, manHoursPerUnit }, '0 or more');
  assertEach({ unit, delayFactor }, 'above 0');
  return ((amount / unit) * manHoursPerUnit * delayFactor) / HOURS_PER_DAY;
}

/** Whole workdays a crew takes: man-days over people, their availability (share) and how much of a man-day they do (share). Source: MAN_DAYS_SOURCE. */
export function crewDays(totalManDays: number, crew: number, availability = 1, manDayEquivalent = 1): number {
  assertEach({ totalManDays }, '0 or more');
  assertEach({ crew, availability, manDayEquivalent }, 'above 0');
  return wholeUp(totalManDays / crew / availability / manDayEquivalent);
}
