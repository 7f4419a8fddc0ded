/** The languages the crew and client screens speak. */
export const LOCALES = ['en', 'es'] as const;
export type Locale = (typeof LOCALES)[number];

/** Words for people, always in both languages. */
export interface Text {
  readonly en: string;
  readonly es: string;
}

/** Pairs an English and a Spanish wording. */
export const text = (en: string, es: string): Text => ({ en, es });

/** The wording in one language. */
export const say = (words: Text, locale: Locale): string => words[locale];

/** Joins several wordings with spaces, leaving out the empty ones. */
export const joinTexts = (parts: readonly Text[], separator = ' '): Text => ({
  en: parts
    .map((part) => part.en)
    .filter(Boolean)
    .join(separator),
  es: parts
    .map((part) => part.es)
    .filter(Boolean)
    .join(separator),
});

/** Sentences without repeats, each where it is first said. */
export const distinctTexts = (texts: readonly Text[]): Text[] => [
  ...new Map(texts.map((one) => [one.en, one])).values(),
];

/** Made once for each language: building the rules takes far longer than asking them. */
const pluralRules = new Map<string, Intl.PluralRules>();

/** The form a language (a BCP 47 tag) takes with a count: 1 bolt, 0 or 2 bolts. */
export function pluralForm(language: string, count: number): 'one' | 'other' {
  const rules = pluralRules.get(language) ?? new Intl.PluralRules(language);
  pluralRules.set(language, rules);
  return rules.select(count) === 'one' ? 'one' : 'other';
}

/** The wording that goes with a count, each language by its own plural rule; `{count}` in it becomes the number. */
export function countText(count: number, one: Text, other: Text): Text {
  const worded = (locale: Locale) =>
    (pluralForm(locale, count) === 'one' ? one : other)[locale].replaceAll('{count}', String(count));
  return text(worded('en'), worded('es'));
}
