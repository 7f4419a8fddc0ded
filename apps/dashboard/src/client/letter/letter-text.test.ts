import type { ChangeOrderDocument, ClientLetter, DocumentItem, Text } from '@underlath/contract';
import { expect, test } from 'vitest';
import {
  allSources,
  chosenIn,
  groupByPlace,
  inGroups,
  isOnly,
  numberList,
  saysAlready,
  shortDays,
  telephoneLink,
  whoChecked,
  wordsIn,
} from './letter-text.ts';

const text = (en: string, es = `${en} (es)`): Text => ({ en, es });

/** Only what the function under test reads; the rest of the document plays no part in it. */
const item = (part: Partial<DocumentItem>): DocumentItem =>
  ({ number: 1, severity: 'repair', cautions: [], sources: [], ...part }) as DocumentItem;
const letter = (items: DocumentItem[], cautions: Text[] = []) =>
  ({ items, cautions }) as unknown as ChangeOrderDocument;

test('a wording that exists in English only is shown to a Spanish reader and marked as English', () => {
  expect(wordsIn({ en: 'The wall', es: ' ' }, 'es')).toEqual({ words: 'The wall', lang: 'en' });
  expect(wordsIn({ en: 'The wall', es: 'La pared' }, 'es')).toEqual({ words: 'La pared', lang: 'es' });
});

test('a sentence the letter says already is not said again, whatever its spaces', () => {
  expect(saysAlready(text('The plate was cut.  The rod is short.'), text('the rod\nis short.'))).toBe(true);
  expect(saysAlready(text('The plate was cut.'), text('The rod is short.'))).toBe(false);
});

test('wording is only the findings until a word is added to it', () => {
  const parts = [text('The plate was cut.'), text('The rod is short.')];
  expect(isOnly(text('The plate was cut. The rod is short.'), parts)).toBe(true);
  expect(isOnly(text('The plate was cut. The rod is short. We are sorry.'), parts)).toBe(false);
});

test('a source used for two findings is listed once with both numbers', () => {
  const source = { id: 'irc', title: 'Code', edition: '2021', section: 'R602', basis: 'published' } as const;
  const sources = allSources([item({ number: 4, sources: [source] }), item({ number: 7, sources: [source] })]);
  expect(sources).toEqual([{ ...source, numbers: [4, 7] }]);
});

test('the same person on the same day is one line; another day is another line', () => {
  const items = [
    item({ number: 1, checkedBy: 'Dana', checkedAt: '2026-03-03T10:00:00Z' }),
    item({ number: 2, checkedBy: 'Dana', checkedAt: '2026-03-03T18:00:00Z' }),
    item({ number: 3, checkedBy: 'Dana', checkedAt: '2026-03-04T10:00:00Z' }),
  ];
  expect(whoChecked(items, (at) => at.slice(0, 10)).map((line) => line.numbers)).toEqual([[1, 2], [3]]);
});

test('findings seen on different days are told apart, though they were checked on one', () => {
  const seen = (number: number, seenAt: string) =>
    item({ number, checkedBy: 'Dana', checkedAt: '2026-03-03T10:00:00Z', seenAt });
  const items = [seen(1, '2026-02-27T10:00:00Z'), seen(2, '2026-02-27T18:00:00Z'), seen(3, '2026-03-03T09:00:00Z')];
  expect(whoChecked(items, (at) => at.slice(0, 10)).map(({ numbers, seenAt }) => [numbers, seenAt])).toEqual([
    [[1, 2], '2026-02-27T10:00:00Z'],
    [[3], '2026-03-03T09:00:00Z'],
  ]);
});

test('findings of one wall share its drawing', () => {
  const wall = { locationId: 'a' } as DocumentItem['place'];
  const beam = { locationId: 'b' } as DocumentItem['place'];
  const places = groupByPlace([
    item({ number: 1, place: wall }),
    item({ number: 2, place: beam }),
    item({ number: 3, place: wall }),
  ]);
  expect(places.map((each) => each.items.map((one) => one.number))).toEqual([[1, 3], [2]]);
});

test('numbers are listed as the language lists them', () => {
  expect(numberList([4], 'en-US')).toBe('4');
  expect(numberList([4, 5], 'en-US')).toBe('4 and 5');
  expect(numberList([4, 5], 'es-US')).toBe('4 y 5');
});

test('the year is shown only when the finish moves into another one', () => {
  expect(shortDays('2026-06-12', '2026-06-18', 'en-US')).toEqual(['Jun 12', 'Jun 18']);
  expect(shortDays('2026-12-28', '2027-01-04', 'en-US')).toEqual(['Dec 28, 2026', 'Jan 4, 2027']);
});

test('a hash reads in groups of four', () => {
  expect(inGroups('3f9a12c47be0')).toBe('3f9a 12c4 7be0');
});

test('a phone number is dialed without its brackets', () => {
  expect(telephoneLink('+1 (555) 010-0142')).toBe('tel:+15550100142');
});

test('what is left out is asked about as the part that the letter offers; what it does not offer is the whole', () => {
  const part = {
    findingIds: ['a'],
    price: { totalCents: 700 },
    days: 1,
    contract: {},
    shares: [{ findingId: 'a', cents: 700 }],
  };
  const document = {
    ...letter([item({ findingId: 'a', shareCents: 600 }), item({ findingId: 'b', shareCents: 400 })]),
    price: { totalCents: 1000 },
    days: 2,
    parts: [part],
  };
  const [whole, ofPart, answeredWith] = [{ afterCents: 9000 }, { afterCents: 8700 }, { afterCents: 8600 }];
  const contract = {
    whole: { contract: whole, withWaiting: { sumCents: 9900 } },
    parts: [{ findingIds: ['a'], contract: ofPart, withWaiting: { sumCents: 9600 } }],
  };
  const open = { document, decision: null, contract } as unknown as ClientLetter;
  const chosen = chosenIn(open, ['b']);
  expect(chosen.left.map(({ findingId }) => findingId)).toEqual(['b']);
  expect(chosen.letter.document).toMatchObject({ days: 1, price: { totalCents: 700 }, items: [{ shareCents: 700 }] });
  expect(chosenIn(open, [])).toMatchObject({ part: undefined, left: [], letter: { document: { days: 2 } } });
  expect(chosenIn(open, ['a'])).toMatchObject({ part: undefined, letter: { document: { days: 2 } } });
  const decision = { kind: 'approved', findingIds: ['a'], contract: answeredWith };
  const answered = { ...open, decision } as unknown as ClientLetter;
  expect(chosenIn(answered, [])).toMatchObject({ part, letter: { document: { days: 1 } } });
  // The contract is that of now, or the one that the answer made; never the one of the letter's day.
  expect(chosen).toMatchObject({ letter: { document: { contract: ofPart } }, withWaiting: { sumCents: 9600 } });
  expect(chosenIn(open, [])).toMatchObject({
    letter: { document: { contract: whole } },
    withWaiting: { sumCents: 9900 },
  });
  expect(chosenIn(answered, []).letter.document.contract).toEqual(answeredWith);
});
