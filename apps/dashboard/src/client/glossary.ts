import type { ChangeOrderDocument, Locale, Text } from '@underlath/contract';
import { type TradeWord, tradeWords } from './glossary.data.ts';
import { allCautions } from './letter-text.ts';

/** Everything the letter says in the reader's language, as one run of text. */
export function letterWords(document: ChangeOrderDocument, locale: Locale): string {
  const { wording, items, price } = document;
  const texts: Text[] = [
    ...Object.values(wording),
    ...items.flatMap((item) => [item.found, item.why, item.ifNot, ...item.repairs]),
    ...items.flatMap((item) => item.measured.map((each) => each.label)),
    ...items.flatMap(({ exclusions = [], alternates = [] }) => [
      ...exclusions,
      ...alternates.flatMap(({ name, what }) => [name, ...what]),
    ]),
    ...price.lines.map((line) => line.title),
    ...allCautions(document),
  ];
  return [...texts.map((text) => text[locale]), ...items.map((item) => item.title)].join('\n');
}

/** The trade words that stand in a text, in the order in which they first come. */
export function tradeWordsIn(words: string, locale: Locale): TradeWord[] {
  return tradeWords
    .map((entry) => ({ entry, at: words.search(entry.found[locale]) }))
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at)
    .map(({ entry }) => entry);
}
