import type { ValueWords } from '@underlath/rules';
import { type Locale, type Quantity, say } from '@underlath/rules/kernel';

type Units = Readonly<Record<string, { en: string; es: string }>>;

const same = (sign: string) => ({ en: sign, es: sign });
const signs: Units = {
  in: same(' in'),
  ft: { en: ' ft', es: ' pies' },
  lb: same(' lb'),
  plf: { en: ' lb/ft', es: ' lb/pie' },
  'ft-lb': { en: ' ft-lb', es: ' lb-pie' },
  'lb/in': same(' lb/in'),
  psi: same(' psi'),
  pct: same('%'),
  F: same(' °F'),
  sf: { en: ' sq ft', es: ' pies²' },
  in2: { en: ' sq in', es: ' in²' },
  threads: { en: ' threads', es: ' hilos' },
  deg: same('°'),
  count: same(''),
  factor: same(''),
};
const yesNo = { en: ['yes', 'no'], es: ['sí', 'no'] } as const;

/** A value as it stands in the working: decimals with the unit, shares as percent, slopes as 1 in N. */
export function quantityText({ value, unit }: Quantity, locale: Locale): string {
  if (typeof value === 'boolean') return yesNo[locale][value ? 0 : 1];
  if (typeof value === 'string') return value;
  if (unit === 'share') return `${decimals(value * 100)}%`;
  if (unit === 'slope') return slopeText(value, locale);
  return `${decimals(value)}${signs[unit]?.[locale] ?? ` ${unit}`}`;
}

const slopeText = (value: number, locale: Locale): string => {
  if (value === 0) return locale === 'en' ? 'level' : 'a nivel';
  return `1 ${locale === 'en' ? 'in' : 'en'} ${Math.round(1 / Math.abs(value)).toLocaleString('en-US')}`;
};

/** Rounded for reading only: about four figures, none that say nothing. */
function decimals(value: number): string {
  const size = Math.abs(value);
  const digits = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
  return value.toLocaleString('en-US', { maximumFractionDigits: digits });
}

/** `changeIn.joist A`: the value that was declared, and whose it is. */
export function splitName(name: string): { declared: string; item: string } {
  const dot = name.indexOf('.');
  return dot < 0 ? { declared: name, item: '' } : { declared: name.slice(0, dot), item: name.slice(dot + 1) };
}

/** The label of a value, with the name of its item, or undefined when the check has no words for it. */
export function valueLabel(name: string, words: ValueWords | undefined, locale: Locale): string | undefined {
  const { declared, item } = splitName(name);
  const word = words?.[declared];
  if (!word) return undefined;
  return item ? `${say(word.label, locale)}: ${item}` : say(word.label, locale);
}
