import {
  type ChangeOrderDocument,
  type Decision,
  documentOfPart,
  type LetterSection,
  leftOutOf,
  lineWords,
  partOf,
  type Question,
  sectionOf,
  titleOf,
} from '@underlath/contract';
import { formatCents, type Locale, type Text } from '@underlath/rules';
import { severityColor } from './elevation-drawing.ts';
import type { ReportWords } from './report-words.ts';
import { ink, type Run, type Sheet, type SheetWords } from './sheet.ts';

export interface SectionPen {
  readonly sheet: Sheet;
  readonly words: ReportWords;
  readonly locale: Locale;
}

/** The wording in the reader's language; where it was written in English only, that, named as English. */
export const inLocale = (text: Text, locale: Locale): SheetWords =>
  text[locale].trim() === '' && text.en.trim() !== '' ? { words: text.en, lang: 'en-US' } : text[locale];

/** "3. Cut top plate", the title in the language it was typed in. */
export const titledRun = (item: ChangeOrderDocument['items'][number], locale: Locale): SheetWords[] => [
  `${item.number}. `,
  inLocale(titleOf(item), locale),
];

/** Several of them in one line. */
const titlesRun = (items: ChangeOrderDocument['items'], locale: Locale): Run =>
  items.flatMap((item, at) => [...(at > 0 ? ['; '] : []), ...titledRun(item, locale)]);

/** A section as it was frozen; nothing where the letter has none. */
export function writeSection({ sheet, locale }: SectionPen, document: ChangeOrderDocument, id: LetterSection['id']) {
  const section = sectionOf(document, id);
  if (!section) return;
  sheet.heading(section.title[locale]);
  sheet.list(section.lines.map((line) => lineWords(line, locale)));
}

/** First of all on the first page, as on the screen. */
export function writeMakeSafe({ sheet, locale }: SectionPen, document: ChangeOrderDocument): void {
  const section = sectionOf(document, 'make-safe');
  if (!section) return;
  const lines = section.lines.map((line) => lineWords(line, locale));
  sheet.box(section.title[locale], lines, severityColor['make-safe']);
}

/** Whether it is an offer or was answered, by whom and to what; so that the first page of an answered letter never looks like an offer. */
export function writeStanding(
  { sheet, words, locale }: SectionPen,
  document: ChangeOrderDocument,
  decision: Decision | null,
  answeredAt: (instant: string) => string,
): void {
  if (!decision) {
    sheet.box(words.notAnswered, [words.answerOnPaper], ink);
    return;
  }
  const part = partOf(document, decision.findingIds);
  const answered = documentOfPart(document, part);
  const title = part ? words.partApproved : decision.kind === 'approved' ? words.approved : words.declined;
  const lines: Run[] = [
    `${words.signedBy}: ${decision.signerName}. ${words.answeredAt}: ${answeredAt(decision.decidedAt)}.`,
    ...(part ? [[`${words.findings}: `, ...flat(titlesRun(answered.items, locale))]] : []),
    ...(part ? [[`${words.leftOut}: `, ...flat(titlesRun(leftOutOf(document, part.findingIds), locale))]] : []),
    ...(decision.kind === 'approved'
      ? [`${words.total}: ${formatCents(answered.price.totalCents, locale)}.`]
      : [words.declinedMeans]),
  ];
  sheet.box(title, lines, ink);
}

const flat = (run: Run): readonly SheetWords[] =>
  Array.isArray(run) ? (run as readonly SheetWords[]) : [run as SheetWords];

/** For who would rather answer on paper: boxes to tick, lines to sign on. */
export function writePaperAnswer({ sheet, words, locale }: SectionPen, document: ChangeOrderDocument): void {
  const { items, parts, price, number, version } = document;
  // On one page, so that what is ticked and what is signed stay together.
  sheet.keep(110 + (items.length + 3) * 24 + 3 * 36);
  sheet.heading(words.onPaper);
  sheet.paragraph(`${words.onPaperMeans} ${words.changeOrder} ${number}, ${words.version} ${version}.`);
  sheet.boxes([
    `${words.tickApprove} ${words.total}: ${formatCents(price.totalCents, locale)}.`,
    ...(parts ? [words.tickPart] : []),
    words.tickDecline,
  ]);
  if (parts) sheet.boxes(items.map((item) => titledRun(item, locale)));
  sheet.writingLines([words.lineName, words.lineSignature, words.lineDate]);
}

/** What was asked and answered, each with its own day. */
export function writeQuestions(
  { sheet, words }: SectionPen,
  { company }: Pick<ChangeOrderDocument, 'company'>,
  questions: readonly Question[],
  sayWhen: (instant: string) => string,
): void {
  if (questions.length === 0) return;
  sheet.heading(words.questions);
  for (const { name, text, askedAt, answer, answeredAt } of questions) {
    sheet.subheading(`${name}, ${sayWhen(askedAt)}`);
    sheet.paragraph(text);
    if (answer === null) sheet.paragraph(words.noAnswerYet);
    else sheet.paragraph(`${company.name}, ${sayWhen(answeredAt ?? askedAt)}: ${answer}`);
  }
}
