/** A language the crew and client screens speak. */
export type Locale = 'en' | 'es';

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
