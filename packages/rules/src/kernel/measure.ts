import { decimal } from './quantity.ts';
import { type Text, text } from './text.ts';
import { feetToInches, MM_PER_INCH } from './units.ts';

/** A length that could not be read: what was typed and what is allowed. */
export interface LengthFailure {
  readonly code: 'empty' | 'not-a-length' | 'bad-fraction' | 'inches-over-12';
  readonly typed: string;
  readonly message: Text;
}
export type ParsedLength =
  | { readonly ok: true; readonly inches: number }
  | { readonly ok: false; readonly failure: LengthFailure };

const ALLOWED = text('7 3/8, 4\'-6 1/2", 6 ft 2 in, .5 or 190 mm', '7 3/8, 4\'-6 1/2", 6 ft 2 in, .5 o 190 mm');
const DENOMINATORS = new Set([2, 4, 8, 16, 32, 64]);
const VULGAR: Record<string, string> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const NUMBER = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
const MIXED = String.raw`(?:\d+[ -]\d+/\d+|\d+/\d+|${NUMBER})`;
const FEET = `(?:'|ft|feet|foot|pies?)`;
const INCHES = `(?:"|in|inch|inches|pulg|pulgadas?)`;
const METRIC = new RegExp(`^(${NUMBER}) ?(mm|cm|m)$`);
const FEET_AND_INCHES = new RegExp(`^(${MIXED}) ?${FEET}(?:[ -]*(${MIXED}) ?${INCHES}?)?$`);
const ONE_UNIT = new RegExp(`^(${MIXED}) ?(${INCHES})?$`);
const METRIC_MM: Record<string, number> = { mm: 1, cm: 10, m: 1000 };

const failed = (code: LengthFailure['code'], typed: string, why: Text): ParsedLength => ({
  ok: false,
  failure: {
    code,
    typed,
    message: text(
      `"${typed}" ${why.en} Type it like ${ALLOWED.en}.`,
      `"${typed}" ${why.es} Escríbalo como ${ALLOWED.es}.`,
    ),
  },
});

/** A whole number, decimal, fraction or mixed number; undefined for a fraction no tape carries, or one as large as one. */
function mixedNumber(typed: string): number | undefined {
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(typed);
  if (!fraction) return Number(typed);
  const denominator = Number(fraction[3]);
  const numerator = Number(fraction[2]);
  if (!DENOMINATORS.has(denominator) || numerator >= denominator) return undefined;
  return Number(fraction[1] ?? 0) + numerator / denominator;
}

function tidy(typed: string): string {
  return typed
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign]}`)
    .replace(/[’′]/g, "'")
    .replace(/[”″]|''/g, '"')
    .replace(/[–—−]/g, '-')
    .replace(/⁄/g, '/')
    .toLowerCase()
    .replace(/\s*\/\s*/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * Reads a length as the trade types it and answers decimal inches, negative with a leading minus.
 * A bare number takes the default unit (inches unless said); fractions are halves to 64ths.
 */
export function parseLength(typed: string, options: { readonly defaultUnit?: 'in' | 'ft' } = {}): ParsedLength {
  const tidied = tidy(typed);
  if (tidied === '') return failed('empty', typed, text('is empty.', 'está vacío.'));
  const negative = /^- ?/.exec(tidied);
  const body = negative ? tidied.slice(negative[0].length) : tidied;
  const parsed = parsePositive(body, typed, options.defaultUnit ?? 'in');
  return parsed.ok && negative ? { ok: true, inches: -parsed.inches } : parsed;
}

function parsePositive(body: string, typed: string, defaultUnit: 'in' | 'ft'): ParsedLength {
  const badFraction = () =>
    failed(
      'bad-fraction',
      typed,
      text(
        'has a fraction no tape carries: halves to 64ths, less than one.',
        'tiene una fracción que no está en la cinta: de medios a 64 avos, menor que uno.',
      ),
    );
  const metric = METRIC.exec(body);
  if (metric) return { ok: true, inches: (Number(metric[1]) * (METRIC_MM[metric[2] ?? 'mm'] ?? 1)) / MM_PER_INCH };
  const both = FEET_AND_INCHES.exec(body);
  if (both) {
    const feet = mixedNumber(both[1] ?? '');
    const inches = both[2] === undefined ? 0 : mixedNumber(both[2]);
    if (feet === undefined || inches === undefined) return badFraction();
    if (inches >= 12)
      return failed(
        'inches-over-12',
        typed,
        text('has 12 or more inches beside the feet.', 'tiene 12 pulgadas o más junto a los pies.'),
      );
    return { ok: true, inches: feetToInches(feet) + inches };
  }
  const one = ONE_UNIT.exec(body);
  if (!one) return failed('not-a-length', typed, text('is not a length.', 'no es una medida.'));
  const value = mixedNumber(one[1] ?? '');
  if (value === undefined) return badFraction();
  return { ok: true, inches: one[2] === undefined && defaultUnit === 'ft' ? feetToInches(value) : value };
}

/** A length taken apart so that a screen can set a real fraction. */
export interface LengthParts {
  readonly negative: boolean;
  readonly feet: number;
  readonly whole: number;
  readonly numerator: number;
  readonly denominator: number;
  /** False when the length was rounded to the finest fraction shown. */
  readonly exact: boolean;
}
export interface LengthFormat {
  /** Finest fraction of an inch, default sixteenths. */
  readonly denominator?: 2 | 4 | 8 | 16 | 32 | 64;
  /** `feet-inches` writes feet from one foot up; `inches` never does. */
  readonly style?: 'feet-inches' | 'inches';
}

/** Splits inches into feet, whole inches and a reduced fraction, rounded half away from zero. */
export function lengthParts(inches: number, format: LengthFormat = {}): LengthParts {
  const { denominator = 16, style = 'feet-inches' } = format;
  const size = Math.abs(inches);
  const ticks = Math.round(size * denominator);
  const feet = style === 'feet-inches' ? Math.floor(ticks / (12 * denominator)) : 0;
  const rest = ticks - feet * 12 * denominator;
  let numerator = rest % denominator;
  let under = denominator as number;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    under /= 2;
  }
  return {
    negative: inches < 0 && ticks > 0,
    feet,
    whole: Math.floor(rest / denominator),
    numerator,
    denominator: numerator === 0 ? 1 : under,
    exact: Math.abs(ticks / denominator - size) < 1e-9,
  };
}

/** Writes inches as `7 3/8"` or `4'-6 1/2"`. */
export function formatLength(inches: number, format: LengthFormat = {}): string {
  const parts = lengthParts(inches, format);
  const fraction = parts.numerator > 0 ? `${parts.numerator}/${parts.denominator}` : '';
  const whole = parts.whole > 0 || fraction === '' ? String(parts.whole) : parts.feet > 0 ? '0' : '';
  const inchText = `${[whole, fraction].filter(Boolean).join(' ')}"`;
  const body = parts.feet > 0 ? `${parts.feet}'-${inchText}` : inchText;
  return parts.negative ? `-${body}` : body;
}

/** Writes inches as the tape has them where a fraction to 64ths is exact, else in decimals: what is typed back is the same. */
export function formatExact(inches: number, style: LengthFormat['style'] = 'feet-inches'): string {
  const denominator = ([16, 32, 64] as const).find((finest) => lengthParts(inches, { denominator: finest }).exact);
  return denominator ? formatLength(inches, { denominator, style }) : `${decimal(inches, 4)} in`;
}

/** A length that is asked for, rounded up to the next 1/16 in so that building what it says is enough. Inches in. */
export const formatRequired = (inches: number): string =>
  formatLength(Math.ceil(Number((inches * 16).toFixed(6))) / 16);
