import {
  type ClientLetter,
  type ContractStanding,
  type DocumentItem,
  type DocumentPart,
  documentOfAnswer,
  type Locale,
  leftOutOf,
  partOf,
  sameIds,
  type Text,
} from '@underlath/contract';

/** A wording in the reader's language; where it was written in the other one only, that one, marked as such. */
export function wordsIn(text: Text, locale: Locale): { words: string; lang: Locale } {
  const other: Locale = locale === 'en' ? 'es' : 'en';
  return text[locale].trim() === '' && text[other].trim() !== ''
    ? { words: text[other], lang: other }
    : { words: text[locale], lang: locale };
}

/** What is asked, or was answered: the whole letter, or the part of it that was chosen. */
export interface Chosen {
  readonly part: DocumentPart | undefined;
  readonly left: readonly DocumentItem[];
  /** The letter as if it were about the part alone, with the contract as it stands. */
  readonly letter: ClientLetter;
  /** Where the contract would be if all that wait were approved too. */
  readonly withWaiting: ContractStanding;
}

/**
 * After an answer what it named, before it what is left out on this page; what the letter does not offer is the whole. The
 * contract is the one that stands now, or that the answer made, and not the one of the day the letter was sent.
 */
export function chosenIn(letter: ClientLetter, leftOut: readonly string[]): Chosen {
  const { document, decision, contract: today } = letter;
  const kept = document.items.map(({ findingId }) => findingId).filter((id) => !leftOut.includes(id));
  const part = partOf(document, decision ? decision.findingIds : kept);
  const left = leftOutOf(document, part?.findingIds ?? []);
  const effect = today.parts.find(({ findingIds }) => part && sameIds(findingIds, part.findingIds)) ?? today.whole;
  const contract = decision ? decision.contract : effect.contract;
  const answer = { findingIds: part?.findingIds ?? [], contract };
  return {
    part,
    left,
    withWaiting: effect.withWaiting,
    letter: { ...letter, document: documentOfAnswer(document, answer) },
  };
}

const squeezed = (words: string) => words.replace(/\s+/g, ' ').trim().toLowerCase();

/** True when the letter already says it, so that it is not said twice. */
export const saysAlready = (whole: Text, part: Text): boolean => squeezed(whole.en).includes(squeezed(part.en));

/** Each wording once, in the order they came. */
export function uniqueTexts(texts: readonly Text[]): Text[] {
  return texts.filter((text, at) => texts.findIndex((other) => squeezed(other.en) === squeezed(text.en)) === at);
}

/** True when the whole is nothing but the parts one after another, as it is until the contractor edits it. */
export function isOnly(whole: Text, parts: readonly Text[]): boolean {
  const rest = parts.reduce((left, part) => left.replace(squeezed(part.en), ''), squeezed(whole.en));
  return rest.trim() === '';
}

type Source = DocumentItem['sources'][number];
export type UsedSource = Source & { numbers: number[] };

/** Every source once, with the numbers of the findings it was used for. */
export function allSources(items: readonly DocumentItem[]): UsedSource[] {
  const byKey = new Map<string, UsedSource>();
  for (const item of items) {
    for (const source of item.sources) {
      const key = [source.id, source.edition, source.section].join('|');
      const used = byKey.get(key) ?? { ...source, numbers: [] };
      if (!used.numbers.includes(item.number)) used.numbers.push(item.number);
      byKey.set(key, used);
    }
  }
  return [...byKey.values()];
}

export type Checked = { name: string; at: string; seenAt: string | undefined; numbers: number[] };

/**
 * Whose measurements of which findings were checked on which day, and when they were first seen; one line for a person and
 * those days. `dayOf` says what a day is to the reader.
 */
export function whoChecked(items: readonly DocumentItem[], dayOf: (at: string) => string): Checked[] {
  const lines: Checked[] = [];
  for (const item of items) {
    const days = (at: string, seenAt: string | undefined) => `${dayOf(at)} ${seenAt && dayOf(seenAt)}`;
    const same = lines.find(
      (line) => line.name === item.checkedBy && days(line.at, line.seenAt) === days(item.checkedAt, item.seenAt),
    );
    if (same) same.numbers.push(item.number);
    else lines.push({ name: item.checkedBy, at: item.checkedAt, seenAt: item.seenAt, numbers: [item.number] });
  }
  return lines;
}

export type PlaceWithItems = { place: DocumentItem['place']; items: DocumentItem[] };

/** The findings by place, the places in the order they first come. */
export function groupByPlace(items: readonly DocumentItem[]): PlaceWithItems[] {
  const places: PlaceWithItems[] = [];
  for (const item of items) {
    const known = places.find((each) => each.place.locationId === item.place.locationId);
    if (known) known.items.push(item);
    else places.push({ place: item.place, items: [item] });
  }
  return places;
}

/** "1", "1 and 2", "1, 2 and 3" in the reader's language. */
export const numberList = (numbers: readonly number[], tag: string): string =>
  new Intl.ListFormat(tag, { type: 'conjunction' }).format(numbers.map(String));

/** A day for the one line that is always in sight: no year unless the two days lie in different ones. */
export function shortDays(before: string, after: string, tag: string): [string, string] {
  const sameYear = before.slice(0, 4) === after.slice(0, 4);
  const format = new Intl.DateTimeFormat(tag, {
    month: 'short',
    day: 'numeric',
    timeZone: 'UTC',
    ...(sameYear ? {} : { year: 'numeric' }),
  });
  return [format.format(new Date(`${before}T00:00:00Z`)), format.format(new Date(`${after}T00:00:00Z`))];
}

/** A phone number that no line break takes apart. */
export const unbroken = (phone: string): string => phone.replace(/ /g, '\u00a0').replace(/-/g, '\u2011');

export const telephoneLink = (phone: string): string => `tel:${phone.replace(/[^+\d]/g, '')}`;

/** A hash in groups of four, which can be compared by eye and read over the phone. */
export const inGroups = (hash: string): string => hash.replace(/(.{4})(?=.)/g, '$1 ');
