/** Words whose count of syllables the rule below misses. */
const counted: Readonly<Record<string, number>> = {
  area: 3,
  being: 2,
  idea: 3,
  ideas: 3,
  license: 2,
  licensed: 2,
  people: 2,
  safety: 2,
  something: 2,
  someone: 2,
  sometimes: 2,
  somewhere: 2,
  anyone: 3,
  everyone: 3,
  whole: 1,
  house: 1,
  houses: 2,
  closed: 1,
  noted: 2,
  framework: 2,
  insurance: 3,
  leaves: 1,
  quiet: 2,
  science: 2,
};

/**
 * Syllables of an English word, at least 1: groups of vowels, less a silent e at the end, with the usual endings minded.
 * A number, a sum or a sign counts as one.
 */
export function syllables(written: string): number {
  const word = written.toLowerCase().replace(/[^a-z]/g, '');
  if (word === '') return 1;
  const known = counted[word];
  if (known !== undefined) return known;
  const spoken = word
    .replace(/(?<=[^aeiouylt])(es)$/, (ending) => (/(s|x|z|ch|sh|c|g)es$/.test(word) ? ending : 's'))
    .replace(/(?<=[^td])ed$/, 'd')
    .replace(/(?<=[^aeiouy])e(?=(ment|ful|less|ly)s?$)/, '')
    .replace(/(?<=[^aeiouyl])e$/, '')
    .replace(/(?<=[aeiouy]l)e$/, '');
  const hiatus = spoken.match(/(?<![tcs])i[oa]|eo|iu|(?<!q)ua(?!r)|ying|[^q]uie/g)?.length ?? 0;
  return Math.max(1, (spoken.match(/[aeiouy]+/g)?.length ?? 0) + hiatus);
}

/** Sentences of a text: up to a full stop, question mark, exclamation mark or colon that ends something. */
export function sentencesOf(text: string): string[] {
  return text
    .split(/(?<=[.?!:])\s+|\n+/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== '');
}

export const splitWords = (sentence: string): string[] =>
  sentence.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word));

/**
 * Flesch-Kincaid grade level of English sentences: 0.39 words a sentence + 11.8 syllables a word - 15.59.
 * Kincaid, Fishburne, Rogers and Chissom 1975 (Navy Research Branch Report 8-75); formula from memory.
 */
export function readingGrade(sentences: readonly string[]): number {
  const words = sentences.flatMap(splitWords);
  const syllableCount = words.reduce((sum, word) => sum + syllables(word), 0);
  return 0.39 * (words.length / sentences.length) + 11.8 * (syllableCount / words.length) - 15.59;
}

/**
 * Syllables of a Spanish word, at least 1: each strong or accented vowel is one, and weak vowels join their neighbor.
 * The u of que, qui, gue and gui is silent, h parts nothing, and y counts as i unless a vowel follows.
 */
export function syllablesEs(written: string): number {
  const spoken = written
    .toLowerCase()
    .replace(/[^a-zñáéíóúü]/g, '')
    .replace(/qu|gu(?=[eiéí])/g, 'g')
    .replace(/h/g, '')
    .replace(/y(?![aeiouáéíóú])/g, 'i');
  const groups = spoken.match(/[aeiouáéíóúü]+/g) ?? [];
  return Math.max(
    1,
    groups.reduce((sum, group) => sum + Math.max(1, group.match(/[aeoáéóíú]/g)?.length ?? 0), 0),
  );
}

/**
 * INFLESZ ease of Spanish sentences: 206.835 - 62.3 syllables a word - words a sentence. From 55 on normal, from 65 fairly
 * easy. Szigriszt Pazos 1993 with the scale of Barrio-Cantalejo and others 2008, An Sist Sanit Navar 31(2); as quoted.
 */
export function readingEaseEs(sentences: readonly string[]): number {
  const words = sentences.flatMap(splitWords);
  const syllableCount = words.reduce((sum, word) => sum + syllablesEs(word), 0);
  return 206.835 - 62.3 * (syllableCount / words.length) - words.length / sentences.length;
}
