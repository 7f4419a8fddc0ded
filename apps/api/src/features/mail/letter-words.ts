import { type ChangeOrderDocument, type DocumentItem, makeSafeLines, titleOf } from '@underlath/contract';
import { formatCents, type Locale, type Text, text } from '@underlath/rules';
import { sayDay, sayInstant } from '../../shared/site-words.ts';
import type { RecordHead } from '../records/records.service.ts';

/** A paragraph in both languages, or one that is the same in both, such as a link; what is false or empty is left out. */
export type Paragraph = Text | string | false;

export interface WrittenLetter {
  subject: string;
  text: string;
  locale: Locale;
}

export function writeLetter(locale: Locale, subject: Text, paragraphs: readonly Paragraph[]): WrittenLetter {
  const words = paragraphs.map((one) => (typeof one === 'object' ? one[locale] : one || '').trim());
  return { subject: subject[locale], text: `${words.filter(Boolean).join('\n\n')}\n`, locale };
}

/** What differs by language inside a sentence. */
const eachLanguage = (say: (locale: Locale) => string): Text => text(say('en'), say('es'));

export const money = (cents: number): Text => eachLanguage((locale) => formatCents(cents, locale));

/** A day, `YYYY-MM-DD`, as people write it: "January 29, 2027". */
export const dayText = (day: string): Text => eachLanguage((locale) => sayDay(day, locale));

/** An instant by the clock at the site, "November 30, 2026 at 12:25 PM PST"; in UTC, said so, where its zone is not known. */
export const momentText = (instant: Date, timeZone: string | null): Text =>
  eachLanguage((locale) => sayInstant(instant.toISOString(), locale, timeZone));

/** Ends a sentence; the hours of Spanish end in a point of their own ("9:22 a. m."). */
export const ended = (words: string): string => (words.endsWith('.') ? words : `${words}.`);

/** "3 working days", as the contract counts them. */
export function daysText(days: number, { contract }: Pick<ChangeOrderDocument, 'contract'>): Text {
  const isCalendar = contract.dayKind === 'calendar';
  const [en, es] = [isCalendar ? 'calendar' : 'working', isCalendar ? 'calendario' : 'hábil'];
  if (days === 1) return text(`1 ${en} day`, `1 día ${es}`);
  return text(`${days} ${en} days`, `${days} días ${isCalendar ? es : 'hábiles'}`);
}

export const greeting = (name: string): Text => text(`Hello ${name},`, `Hola ${name}:`);

type Company = ChangeOrderDocument['company'];

export const signature = ({ name, phone, email }: Company): string =>
  [name, [phone, email].filter(Boolean).join(' · ')].filter(Boolean).join('\n');

/** Stands before everything else while any finding must be made safe, in the words of the letter; false where none has to. */
export function makeSafe(document: Pick<ChangeOrderDocument, 'sections'>): Paragraph {
  const words = eachLanguage((locale) => makeSafeLines(document, locale).join('\n'));
  return words.en !== '' && words;
}

/** What proves the letter later: the hash of the document, and where the project's record stood. */
export function keepThis(project: { id: string }, sha256: string, { seq, hash }: RecordHead): Text {
  const record = `${project.id}:${seq}:${hash}`;
  return text(
    `Keep this e-mail: it can prove later what was written.\nDocument, SHA-256: ${sha256}\nProject record: ${record}`,
    `Guarde este correo: sirve para probar después lo que se escribió.\nDocumento, SHA-256: ${sha256}\nRegistro del proyecto: ${record}`,
  );
}

/** "2. Cut top plate; 3. Thin rod"; a title that is in English only stays English. */
export const listItems = (items: readonly DocumentItem[]): Text =>
  eachLanguage((locale) => items.map((item) => `${item.number}. ${read(titleOf(item), locale)}`).join('; '));

const read = (words: Text, locale: Locale): string => words[locale].trim() || words.en;
