import { joinTexts, type Text } from '../kernel/index.ts';
import type { DocumentItem } from './document/change-order-document.ts';

/** What of a finding a sentence can speak of. */
export type Spoken = Pick<DocumentItem, 'number' | 'title' | 'place' | 'found' | 'why' | 'ifNot'>;

/**
 * The findings among `left` that typed words still seem to speak of: by number, title or a sentence of their own, or by a word
 * of their title or place that no finding in `kept` has. Seeming is enough, since a person then looks at it.
 */
export function stillSpokenOf<S extends Spoken>(words: Text, left: readonly S[], kept: readonly Spoken[]): S[] {
  const said = `${words.en}\n${words.es}`.toLowerCase();
  const saidWords = wordsOf(said);
  const keptText = kept.map(textOf).join('\n');
  const keptWords = new Set(wordsOf(keptText));
  return left.filter(
    (item) =>
      numbersIn(said).includes(item.number) ||
      (said.includes(item.title.toLowerCase()) && kept.every(({ title }) => title !== item.title)) ||
      sentencesOf(item).some((sentence) => said.includes(sentence) && !keptText.includes(sentence)) ||
      wordsOf(`${item.title} ${item.place.name}`.toLowerCase()).some(
        (word) => !keptWords.has(word) && saidWords.some((one) => one.startsWith(word)),
      ),
  );
}

/** True for words that count as many findings as there were: "4 hidden conditions", "cuatro hallazgos". */
export function countsFindings(words: Text, count: number): boolean {
  const names = [String(count), ...(COUNTS[count] ?? [])].join('|');
  const things =
    'findings?|conditions?|problems?|places?|things?|hallazgos?|condici[oó]n(?:es)?|problemas?|lugar(?:es)?|cosas?';
  const counted = new RegExp(`(?:^|[^\\p{L}\\d])(?:${names})(?:\\s+\\p{L}+){0,2}\\s+(?:${things})(?![\\p{L}])`, 'iu');
  return counted.test(words.en) || counted.test(words.es);
}

const COUNTS: Readonly<Record<number, readonly string[]>> = {
  1: ['one', 'un', 'una'],
  2: ['two', 'both', 'dos', 'ambos', 'ambas'],
  3: ['three', 'tres'],
  4: ['four', 'cuatro'],
  5: ['five', 'cinco'],
  6: ['six', 'seis'],
  7: ['seven', 'siete'],
  8: ['eight', 'ocho'],
  9: ['nine', 'nueve'],
  10: ['ten', 'diez'],
};

/** "finding 3", "findings 3, 4 and 6", "hallazgos 3 y 4", "#4". */
function numbersIn(said: string): number[] {
  const lists = said.matchAll(/(?:findings?|hallazgos?|no\.|#)\s*((?:\d+(?:\s*,\s*|\s+and\s+|\s+y\s+|\s*&\s*)?)+)/g);
  return [...lists].flatMap(([, list = '']) => (list.match(/\d+/g) ?? []).map(Number));
}

/** Shorter words, such as "wall" beside "walls", say too little to point at one finding. */
const shortestWord = 4;
const wordsOf = (said: string): string[] =>
  (said.match(/\p{L}+/gu) ?? []).filter((word) => word.length >= shortestWord);

const textOf = ({ title, place, ...item }: Spoken): string => {
  const { en, es } = joinTexts([item.found, item.why, item.ifNot]);
  return `${title}\n${place.name}\n${en}\n${es}`.toLowerCase();
};

/** Its own sentences, in both languages. */
const sentencesOf = ({ found, why, ifNot }: Spoken): string[] =>
  [found, why, ifNot]
    .flatMap(({ en, es }) => [en, es])
    .flatMap((words) => words.toLowerCase().split(/(?<=[.!?])\s+/))
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence.length > 0);
