import { pluralForm } from '@underlath/rules/kernel';

/** A message with `{name}` places in it; `one`/`other` when the wording follows `count`. */
export type Message = string | { one: string; other: string };

/** Checks at compile time that both languages have the same keys. */
export function defineMessages<const K extends string>(
  en: Record<K, Message>,
  es: Record<NoInfer<K>, Message>,
): { en: Record<K, Message>; es: Record<K, Message> } {
  return { en, es };
}

/** One section of the catalogue: the same keys in English and Spanish. */
export type MessageSection<K extends string> = { en: Record<K, Message>; es: Record<K, Message> };

export type MessageParams = Record<string, string | number>;

/**
 * Puts the values into a message. A place with no value is left as it is written, so that it is seen and mended.
 * `count` picks between `one` and `other` by the language's own plural rule.
 */
export function fillMessage(message: Message, locale: string, params: MessageParams = {}): string {
  const text = typeof message === 'string' ? message : message[pluralForm(locale, Number(params.count ?? 0))];
  return text.replace(/\{(\w+)\}/g, (place, name: string) => {
    const value = params[name];
    if (value === undefined) return place;
    return typeof value === 'number' ? new Intl.NumberFormat(locale).format(value) : value;
  });
}
