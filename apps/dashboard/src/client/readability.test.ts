import { tradeWords } from '@underlath/contract';
import { runCheck, SEVERITIES, SEVERITY_CONSEQUENCE } from '@underlath/rules';
import { checks } from '@underlath/rules/all-checks';
import { describe, expect, test } from 'vitest';
import { fillMessage, type Message } from '../shared/i18n/define.ts';
import { letterWords } from '../shared/i18n/messages/letter.ts';
import { readingEaseEs, readingGrade, sentencesOf, splitWords, syllables, syllablesEs } from './reading-grade.ts';

/** quality.md: grade level 8 at most, no sentence over 25 words. */
const gradeMost = 8;
const wordsMost = 25;
/** The INFLESZ band `fairly easy` begins here. */
const easeLeast = 65;

/** What stands in the places of a message when it is read. */
const values = {
  company: 'Ridgeway Carpentry',
  name: 'Dana Ruiz',
  date: 'March 6, 2026',
  before: 'June 12, 2026',
  after: 'June 18, 2026',
  days: '4 days more',
  total: '$3,040',
  place: 'East wall',
  title: 'Top plate',
  numbers: '4 and 5',
  number: '3',
  version: '1',
  phone: '555-0142',
  email: 'office@ridgeway.example',
  pct: '12%',
  stage: 'as we found it',
  at: '1',
  of: '3',
  count: 4,
};

const filled = (messages: Record<string, Message>, tag: string) =>
  Object.entries(messages).map(([key, message]) => ({ key, words: fillMessage(message, tag, values) }));

/** A label of two words is no sentence; counting labels would only lower the grade. */
const isSentence = (words: string) => /[.?!:]$/.test(words);

const pageSentences = (locale: 'en' | 'es') =>
  filled(letterWords[locale], locale === 'en' ? 'en-US' : 'es-US')
    .filter(({ words }) => isSentence(words))
    .flatMap(({ words }) => sentencesOf(words));

const tooLong = (sentences: readonly string[]) => sentences.filter((each) => splitWords(each).length > wordsMost);

describe('the syllable counter', () => {
  const known: Record<string, number> = {
    the: 1,
    wall: 1,
    house: 1,
    change: 1,
    closed: 1,
    fixed: 1,
    needs: 1,
    moves: 1,
    place: 1,
    places: 2,
    changes: 2,
    order: 2,
    table: 2,
    people: 2,
    repair: 2,
    noted: 2,
    decided: 3,
    measured: 2,
    little: 2,
    safe: 1,
    safety: 2,
    contract: 2,
    contractor: 3,
    engineer: 3,
    decision: 3,
    insurance: 3,
    measurement: 3,
    electronic: 4,
    carrying: 3,
    official: 3,
    building: 2,
    earthquake: 2,
    priced: 1,
    question: 2,
    questions: 2,
    approve: 2,
    approved: 2,
    declined: 2,
    material: 4,
    materials: 4,
    area: 3,
    '$3,040': 1,
    March: 1,
    signature: 3,
    version: 2,
    finish: 2,
    fingerprint: 3,
    company: 3,
    overhead: 3,
    before: 2,
    something: 2,
    because: 2,
    idea: 3,
    actual: 3,
  };
  for (const [word, count] of Object.entries(known)) {
    test(`"${word}" has ${count}`, () => expect(syllables(word)).toBe(count));
  }
});

test('the Flesch-Kincaid grade of a worked sentence is what the formula gives by hand', () => {
  // 6 words, 6 syllables, one sentence: 0.39 x 6 + 11.8 x 1 - 15.59 = -1.45
  expect(readingGrade(['The cat sat on the mat.'])).toBeCloseTo(-1.45, 10);
});

test('hard prose is over grade 8, so the limit can fail', () => {
  expect(
    readingGrade([
      'Notwithstanding preceding provisions, contractual obligations necessitate additional documentation.',
    ]),
  ).toBeGreaterThan(gradeMost);
});

describe('the page itself', () => {
  test('its English sentences stay at grade 8', () => {
    expect(pageSentences('en').length).toBeGreaterThan(80);
    expect(readingGrade(pageSentences('en'))).toBeLessThanOrEqual(gradeMost);
  });

  for (const locale of ['en', 'es'] as const) {
    test(`no sentence in ${locale} is over 25 words`, () => expect(tooLong(pageSentences(locale))).toEqual([]));
  }
});

describe('the explained trade words', () => {
  const meanings = tradeWords.map((entry) => entry.means.en);

  test('their explanations stay at grade 8', () => {
    expect(readingGrade(meanings.flatMap(sentencesOf))).toBeLessThanOrEqual(gradeMost);
  });

  test('no explanation has a sentence over 25 words, in either language', () => {
    expect(tooLong(tradeWords.flatMap(({ means }) => [...sentencesOf(means.en), ...sentencesOf(means.es)]))).toEqual(
      [],
    );
  });

  test('each is explained once', () => {
    const words = tradeWords.map((entry) => entry.word.en.toLowerCase());
    expect(new Set(words).size).toBe(words.length);
  });

  for (const entry of tradeWords) {
    test(`"${entry.word.en}" is found by its own pattern in both languages`, () => {
      expect(entry.word.en).toMatch(entry.found.en);
      expect(entry.word.es).toMatch(entry.found.es);
    });
  }
});

describe('the Spanish syllable counter', () => {
  const known: Record<string, number> = {
    agua: 2,
    pared: 2,
    casa: 2,
    río: 2,
    construcción: 3,
    ingeniero: 4,
    viuda: 2,
    leer: 2,
    peor: 2,
    ahí: 2,
    aquí: 2,
    que: 1,
    sigue: 2,
    vigüeta: 3,
    ley: 1,
    y: 1,
    apoyo: 3,
    ahora: 3,
    año: 2,
    también: 2,
    después: 2,
    moho: 2,
    '3/4': 1,
  };
  for (const [word, count] of Object.entries(known)) {
    test(`"${word}" has ${count}`, () => expect(syllablesEs(word)).toBe(count));
  }
});

test('the INFLESZ ease of a worked sentence is what the formula gives by hand', () => {
  // 5 words, 7 syllables, one sentence: 206.835 - 62.3 x 7 / 5 - 5 = 114.615
  expect(readingEaseEs(['La casa es muy grande.'])).toBeCloseTo(114.615, 10);
});

test('hard Spanish prose is under the limit, so it can fail', () => {
  expect(
    readingEaseEs([
      'Consideraciones administrativas extraordinarias condicionan indefectiblemente la aprobación contractual.',
    ]),
  ).toBeLessThan(easeLeast);
});

describe('what each severity means for the owner', () => {
  for (const severity of SEVERITIES) {
    const { en, es } = SEVERITY_CONSEQUENCE[severity];

    test(`${severity}: grade 8 at most in English, fairly easy or better in Spanish`, () => {
      expect(readingGrade(sentencesOf(en))).toBeLessThanOrEqual(gradeMost);
      expect(readingEaseEs(sentencesOf(es))).toBeGreaterThanOrEqual(easeLeast);
    });

    test(`${severity}: no sentence over 25 words, in either language`, () => {
      expect(tooLong([...sentencesOf(en), ...sentencesOf(es)])).toEqual([]);
    });
  }
});

for (const check of checks) {
  const { cases } = await check.cases();
  const found = cases.map((one) => {
    const outcome = runCheck(check, { edition: one.edition, inputs: one.inputs, context: one.situation });
    return check.client.found(one.inputs as Record<string, unknown>, outcome);
  });
  const texts = [...found, check.client.why, check.client.ifNot];
  const sentencesIn = (locale: 'en' | 'es') => [...new Set(texts.flatMap((words) => sentencesOf(words[locale])))];

  describe(`${check.id}: its words for the client`, () => {
    test('grade 8 at most in English', () => {
      expect(readingGrade(sentencesIn('en'))).toBeLessThanOrEqual(gradeMost);
    });

    test('fairly easy or better in Spanish', () => {
      expect(readingEaseEs(sentencesIn('es'))).toBeGreaterThanOrEqual(easeLeast);
    });

    test('no sentence over 25 words, in either language', () => {
      expect(tooLong([...sentencesIn('en'), ...sentencesIn('es')])).toEqual([]);
    });
  });
}
