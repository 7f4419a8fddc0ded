import type { Locale } from './text.ts';

/** A sum of money no integer of cents could hold. */
export class MoneyError extends Error {
  override readonly name = 'MoneyError';
}

/** How far below a half a binary fraction of a cent may fall by arithmetic alone and still count as a half. */
const HALF_CENT_SLACK = 1e-7;

/** The one rounding of money: to whole cents, half away from zero. */
export function roundCents(cents: number): number {
  const size = Math.abs(cents);
  const rounded = Math.floor(size + 0.5 + HALF_CENT_SLACK);
  if (!Number.isSafeInteger(rounded)) throw new MoneyError(`${cents} is not a sum of cents`);
  return rounded === 0 ? 0 : Math.sign(cents) * rounded;
}

/** A percentage of a sum, rounded to cents. */
export const percentOf = (cents: number, percent: number): number => roundCents((cents * percent) / 100);

export const sumCents = (amounts: readonly number[]): number => amounts.reduce((sum, cents) => sum + cents, 0);

/**
 * Splits a sum in proportion to weights (0 or more) by largest remainder, so that the parts add up to the sum.
 * With no weight at all the parts are as equal as cents allow; ties go to the earlier part.
 */
export function allocate(totalCents: number, weights: readonly number[]): number[] {
  if (weights.length === 0) {
    if (totalCents !== 0) throw new MoneyError(`${totalCents} cents cannot be split among nobody`);
    return [];
  }
  if (weights.some((weight) => !(weight >= 0) || !Number.isFinite(weight)))
    throw new MoneyError(`Weights must be finite and not negative: ${weights.join(', ')}`);
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const shares = weights.map((weight) => Math.abs(totalCents) * (whole > 0 ? weight / whole : 1 / weights.length));
  const parts = shares.map(Math.floor);
  let left = Math.abs(totalCents) - sumCents(parts);
  const byRemainder = shares
    .map((share, at) => ({ at, remainder: share - Math.floor(share) }))
    .sort((a, b) => b.remainder - a.remainder || a.at - b.at);
  for (const { at } of byRemainder) {
    if (left <= 0) break;
    parts[at] = (parts[at] ?? 0) + 1;
    left -= 1;
  }
  return parts.map((part) => (totalCents < 0 && part !== 0 ? -part : part));
}

const formatters = new Map<Locale, Intl.NumberFormat>();
const TAGS: Record<Locale, string> = { en: 'en-US', es: 'es-US' };

/** US dollars in one language, `$1,234.50`. */
export function formatCents(cents: number, locale: Locale = 'en'): string {
  let formatter = formatters.get(locale);
  if (!formatter) {
    formatter = new Intl.NumberFormat(TAGS[locale], { style: 'currency', currency: 'USD' });
    formatters.set(locale, formatter);
  }
  return formatter.format(cents / 100);
}
