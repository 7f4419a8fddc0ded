import {
  type ChangeOrderDocument,
  type Decision,
  type DocumentItem,
  type DocumentPart,
  documentOfAnswer,
  leftOutOf,
  type PriceLine,
  partOf,
  placeOf,
  type Question,
  titleOf,
} from '@underlath/contract';
import { formatCents, type Locale, SEVERITY_WORDS, say, unitText } from '@underlath/rules';
import { sayDay, sayDayOf, sayInstant } from '../../shared/site-words.ts';
import { dayWords } from './day-words.ts';
import { drawElevation, elevationHeight, paperScale } from './elevation-drawing.ts';
import { drawPhotos, type LoadPhoto } from './photo-rows.ts';
import {
  inLocale,
  titledRun,
  writeMakeSafe,
  writePaperAnswer,
  writeQuestions,
  writeSection,
  writeStanding,
} from './report-sections.ts';
import { basisWord, type ReportWords, reportWords } from './report-words.ts';
import { runText, Sheet, type SheetWords, textWidthPt } from './sheet.ts';

export interface ReportInput {
  readonly document: ChangeOrderDocument;
  readonly sha256: string;
  readonly decision: Decision | null;
  /** Of this change order, those asked after it was sent too. */
  readonly questions: readonly Question[];
  /** The end of the newest link; a renewal moves it, the document keeps the one it was sent with. RFC 3339. */
  readonly answerBy: string;
  readonly locale: Locale;
  /** Of the site, an IANA name, or null where it is not known. */
  readonly timeZone: string | null;
  readonly loadPhoto: LoadPhoto;
}

interface Pen {
  readonly sheet: Sheet;
  readonly words: ReportWords;
  readonly locale: Locale;
  readonly timeZone: string | null;
}

/**
 * One sent version as PDF bytes. Nothing is computed here: every figure is the frozen document's own.
 * A page's bytes are handed on before the next photo is read, so memory does not grow with the number of photos.
 */
export async function* writeReport(input: ReportInput): AsyncGenerator<Buffer> {
  const { document, sha256, locale, timeZone } = input;
  const words = reportWords(locale);
  const sheet = new Sheet({
    title: `${words.changeOrder} ${document.number}, ${words.version} ${document.version}: ${document.wording.headline[locale]}`,
    author: document.company.name,
    locale,
    createdAt: new Date(document.sentAt),
    footer: `${document.company.name} · ${words.changeOrder} ${document.number}, ${words.version} ${document.version} · SHA-256 ${sha256}`,
    pageWord: words.page,
  });
  const pen = { sheet, words, locale, timeZone };
  for await (const _step of sections(pen, input)) yield* written(sheet);
  sheet.doc.end();
  for await (const rest of sheet.doc) yield rest as Buffer;
}

/** What the library has finished so far. */
function* written(sheet: Sheet): Generator<Buffer> {
  for (let chunk = sheet.doc.read(); chunk !== null; chunk = sheet.doc.read()) yield chunk as Buffer;
}

async function* sections(pen: Pen, input: ReportInput): AsyncGenerator<void> {
  const { document, decision, questions, loadPhoto } = input;
  writeLetter(pen, input);
  // Once approved, the sums in short are those of the answer; a letter that was declined keeps what it offered.
  writeChange(pen, decision?.kind === 'approved' ? documentOfAnswer(document, decision) : document);
  yield;
  const leftOut = decision ? leftOutOf(document, decision.findingIds) : [];
  for (const item of document.items) {
    writeItem(pen, document, item);
    if (leftOut.includes(item)) pen.sheet.paragraph(pen.words.leftOutHere, { bold: true });
    yield;
    yield* drawPhotos(pen.sheet, pen.words, item.photos, loadPhoto, pen.locale);
    writeSources(pen, item);
  }
  writePrice(pen, document, leftOut.length > 0);
  writeParts(pen, document);
  yield;
  writeSection(pen, document, 'not-known');
  writeSection(pen, document, 'cautions');
  writeSection(pen, document, 'words');
  writeQuestions(pen, document, questions, (instant) => sayInstant(instant, pen.locale, pen.timeZone));
  writeRecord(pen, input);
  writeDecision(pen, input);
  if (!input.decision) writePaperAnswer(pen, document);
}

function writeLetter(pen: Pen, { document, decision }: ReportInput) {
  const { sheet, words, locale } = pen;
  const { company, project, wording, number, version } = document;
  writeMakeSafe(pen, document);
  sheet.title(`${words.changeOrder} ${number}: ${wording.headline[locale]}`);
  writeStanding(pen, document, decision, (instant) => sayInstant(instant, locale, pen.timeZone));
  const license = company.licenseNumber ? `${words.license} ${company.licenseNumber}` : null;
  const contractor = [company.name, license, company.address, company.phone, company.email].filter(Boolean).join(', ');
  sheet.table(
    [{ widthPt: 110 }, { widthPt: textWidthPt - 110 }],
    [
      { cells: [words.versionLabel, String(version)] },
      { cells: [words.for, project.clientName] },
      { cells: [words.project, project.name] },
      { cells: [words.site, project.siteAddress] },
      { cells: [words.contractor, contractor] },
    ],
  );
  writeSection(pen, document, 'letter');
  for (const part of ['found', 'why', 'ifNot'] as const) {
    sheet.subheading(words[part]);
    sheet.paragraph(wording[part][locale]);
  }
  if (wording.note[locale]) {
    sheet.subheading(words.note);
    sheet.paragraph(wording.note[locale]);
  }
}

function writeChange({ sheet, words, locale }: Pen, document: ChangeOrderDocument): void {
  const { contract, days } = document;
  const money = (cents: number) => formatCents(cents, locale);
  const date = (day: string | null) => (day ? sayDay(day, locale) : words.unknown);
  const first = textWidthPt - 3 * 125;
  const right = { widthPt: 125, align: 'right' } as const;
  sheet.heading(words.inShort);
  sheet.table(
    [{ widthPt: first }, right, right, right],
    [
      { cells: ['', words.was, words.thisChange, words.is] },
      {
        cells: [
          words.contractSum,
          money(contract.beforeCents),
          money(contract.thisChangeCents),
          money(contract.afterCents),
        ],
        bold: true,
      },
      { cells: [say(dayWords(document), locale), String(contract.daysBefore), `+${days}`, String(contract.daysAfter)] },
      { cells: [words.finish, date(contract.finishBefore), '', date(contract.finishAfter)] },
    ],
    { header: true },
  );
  sheet.table(
    [{ widthPt: textWidthPt - 125 }, right],
    [
      { cells: [words.originalSum, money(contract.originalSumCents)] },
      { cells: [words.previousChanges, money(contract.previousChangesCents)] },
      ...(contract.allowancesCents ? [{ cells: [words.allowances, money(contract.allowancesCents)] }] : []),
    ],
  );
  if (!contract.payments) return;
  sheet.subheading(words.payments);
  sheet.table(
    [{ widthPt: textWidthPt - 125 }, right],
    contract.payments.map(({ name, cents }) => ({ cells: [inLocale(name, locale), money(cents)] })),
  );
}

/** Room of a heading with its second line and what begins below, points. */
const headingPt = 110;

function writeItem(pen: Pen, document: ChangeOrderDocument, item: DocumentItem): void {
  const { sheet, words, locale, timeZone } = pen;
  const here = document.items.filter((other) => other.place.locationId === item.place.locationId);
  // A heading stays with what it stands over.
  sheet.keep(headingPt + (here[0] === item ? (elevationHeight(item.place, textWidthPt) ?? 0) : 0));
  sheet.heading([`${words.finding} ${item.number}: `, inLocale(titleOf(item), locale)]);
  sheet.paragraph([inLocale(placeOf(item.place), locale), ` · ${say(SEVERITY_WORDS[item.severity], locale)}`], {
    bold: true,
  });
  sheet.paragraph(item.consequence?.[locale] ?? '');
  if (here[0] === item) writeElevation(pen, item, here);
  for (const part of ['found', 'why', 'ifNot'] as const) {
    sheet.subheading(words[part]);
    sheet.paragraph(item[part][locale]);
  }
  if (item.measured.length > 0) {
    sheet.subheading(words.measured);
    sheet.table(
      [{ widthPt: 260 }, { widthPt: textWidthPt - 260, align: 'right' }],
      item.measured.map(({ label, value }) => ({ cells: [label[locale], value] })),
    );
  }
  writeWords(pen, words.repair, item.repairs);
  if (item.seenAt) sheet.paragraph(`${words.seen}: ${sayDayOf(item.seenAt, locale, timeZone)}`);
  sheet.paragraph(`${words.checkedBy}: ${item.checkedBy}, ${sayInstant(item.checkedAt, locale, timeZone)}`);
  sheet.paragraph(`${words.share}: ${formatCents(item.shareCents, locale)}`, { bold: true });
}

function writeWords({ sheet, locale }: Pen, heading: string, items: DocumentItem['repairs']): void {
  if (items.length === 0) return;
  sheet.subheading(heading);
  sheet.list(items.map((one) => one[locale]));
}

/** A place is drawn once, with every finding of this change order that lies on it. */
function writeElevation({ sheet, words, locale }: Pen, { place }: DocumentItem, here: readonly DocumentItem[]): void {
  const heightPt = elevationHeight(place, textWidthPt);
  const scale = paperScale(place, textWidthPt);
  if (heightPt === null || scale === null) {
    sheet.paragraph(words.noSize, { sizePt: 9 });
    return;
  }
  const numbers = here.map(({ number }) => number).join(', ');
  const alt = `${words.elevationOf}: ${runText(inLocale(placeOf(place), locale))}. ${words.hatched} ${words.finding} ${numbers}.`;
  sheet.figure(alt, heightPt, (topPt) => {
    drawElevation(sheet.doc, { leftPt: sheet.leftPt, topPt, widthPt: textWidthPt }, place, here);
  });
  sheet.paragraph(`${words.elevationOf}. ${words.scale} 1:${scale}. ${words.hatched}`, { sizePt: 8.5 });
}

function writeSources({ sheet, words, locale }: Pen, item: DocumentItem): void {
  if (item.sources.length === 0) return;
  sheet.subheading(words.sources);
  sheet.list(
    item.sources.map(
      ({ title, edition, section, basis }) =>
        `${[title, edition, section].filter(Boolean).join(', ')} (${basisWord(basis, locale)})`,
    ),
    { sizePt: 8.5 },
  );
}

function writePrice(pen: Pen, document: ChangeOrderDocument, isPartOnly: boolean): void {
  const { sheet, words, locale } = pen;
  const { price } = document;
  const money = (cents: number) => formatCents(cents, locale);
  const columns = [{ widthPt: textWidthPt - 230 }, { widthPt: 120 }, { widthPt: 110, align: 'right' }] as const;
  const quantity = new Intl.NumberFormat(locale === 'es' ? 'es-US' : 'en-US', { maximumFractionDigits: 2 });
  sheet.heading(words.priceLines);
  if (isPartOnly) sheet.paragraph(words.asOffered, { bold: true });
  sheet.table(
    columns,
    [
      { cells: [words.line, words.quantity, words.amount] },
      ...price.lines.map((line) => ({
        cells: [
          lineName(line, pen),
          `${quantity.format(line.quantity)} ${unitText(line.unit, line.quantity)[locale]}`,
          money(line.totalCents),
        ],
      })),
      { cells: [words.subtotal, '', money(price.subtotalCents)], bold: true },
      { cells: [`${words.overhead} ${price.overheadPct}%`, '', money(price.overheadCents)] },
      { cells: [`${words.profit} ${price.profitPct}%`, '', money(price.profitCents)] },
      { cells: [words.total, '', money(price.totalCents)], bold: true },
    ],
    { header: true },
  );
  writeSection(pen, document, 'price');
  writeBesidePrice(pen, document);
  sheet.subheading(words.howLines);
  sheet.list(
    price.lines.map((line) => [
      inLocale(line.title, locale),
      ':',
      ...line.steps.flatMap((step) => [' ', inLocale(step, locale)]),
    ]),
    { sizePt: 8.5 },
  );
}

function lineName({ title, kind }: PriceLine, { words, locale }: Pen): SheetWords {
  const told = kind === 'allowance' ? words.allowance : kind === 'credit' ? words.credit : undefined;
  const name = inLocale(title, locale);
  const [said, lang] = typeof name === 'string' ? [name] : [name.words, name.lang];
  const whole = told === undefined ? said : `${said} (${told})`;
  return lang === undefined ? whole : { words: whole, lang };
}

/** What the price does not cover, and other ways that are in no sum. */
function writeBesidePrice({ sheet, words, locale }: Pen, { items }: ChangeOrderDocument): void {
  const ofFinding = ({ number }: DocumentItem) => (items.length > 1 ? `${number}. ` : '');
  const excluded = items.flatMap((item) =>
    (item.exclusions ?? []).map((exclusion) => ofFinding(item) + exclusion[locale]),
  );
  if (excluded.length > 0) {
    sheet.subheading(words.notCovered);
    sheet.list(excluded);
  }
  const ways = items.flatMap((item) =>
    (item.alternates ?? []).map(({ name, what, differenceCents: cents }) => {
      const change = cents === null ? words.noPrice : `${cents > 0 ? '+' : ''}${formatCents(cents, locale)}`;
      const done = what.flatMap((one) => [' ', inLocale(one, locale)]);
      return [ofFinding(item), inLocale(name, locale), `: ${change}.`, ...done];
    }),
  );
  if (ways.length === 0) return;
  sheet.subheading(words.otherWays);
  sheet.list(ways);
}

/** What it comes to when single findings are left out, choice by choice. */
function writeParts(pen: Pen, document: ChangeOrderDocument): void {
  const { sheet, words, locale } = pen;
  const { parts = [], items, price, days } = document;
  if (parts.length === 0) return;
  const numberOf = new Map(items.map(({ findingId, number }) => [findingId, number]));
  const numbers = (ids: readonly string[]) => ids.map((id) => numberOf.get(id)).join(', ');
  const all = { findingIds: items.map(({ findingId }) => findingId), price, days };
  writeSection(pen, document, 'parts');
  sheet.table(
    [{ widthPt: textWidthPt - 230 }, { widthPt: 120, align: 'right' }, { widthPt: 110, align: 'right' }],
    [
      { cells: [words.findings, words.days, words.amount] },
      ...[all, ...parts].map((choice) => ({
        cells: [numbers(choice.findingIds), `+${choice.days}`, formatCents(choice.price.totalCents, locale)],
      })),
    ],
    { header: true },
  );
  // What leaving findings out means, of each choice that means more than its price.
  for (const { findingIds, cautions } of parts.filter((part) => part.cautions.length > 0)) {
    sheet.subheading(`${words.findings}: ${numbers(findingIds)}`);
    sheet.list(cautions.map((caution) => caution[locale]));
  }
}

function writeRecord({ sheet, words, locale, timeZone }: Pen, { document, sha256, answerBy }: ReportInput): void {
  sheet.heading(words.record);
  sheet.table(
    [{ widthPt: 150 }, { widthPt: textWidthPt - 150 }],
    [
      { cells: [words.sentBy, document.sentBy] },
      { cells: [words.sentAt, sayInstant(document.sentAt, locale, timeZone)] },
      { cells: [words.answerBy, sayInstant(answerBy, locale, timeZone)] },
      { cells: [words.fingerprint, sha256] },
      { cells: [words.recordHead, `${document.record.seq}: ${document.record.hash}`] },
    ],
    { sizePt: 9 },
  );
}

/** What was approved of it and what was left out. */
function partRows(document: ChangeOrderDocument, part: DocumentPart, { words, locale }: Pick<Pen, 'words' | 'locale'>) {
  const names = (items: readonly DocumentItem[]) => items.map((item) => runText(titledRun(item, locale))).join('; ');
  const left = leftOutOf(document, part.findingIds);
  return [
    { cells: [words.approved, names(document.items.filter((item) => !left.includes(item)))] },
    { cells: [words.leftOut, names(left)] },
    { cells: [words.total, formatCents(part.price.totalCents, locale)] },
  ];
}

/** The contract before and after the answer; one figure where it did not change. */
function contractRows(answered: ChangeOrderDocument, { words, locale }: Pick<Pen, 'words' | 'locale'>) {
  const { beforeCents, afterCents, daysBefore, daysAfter, finishBefore, finishAfter } = answered.contract;
  const change = (before: string, after: string) => (before === after ? after : `${before} > ${after}`);
  const day = (date: string | null) => (date ? sayDay(date, locale) : words.unknown);
  return [
    {
      cells: [words.contractSumAfter, change(formatCents(beforeCents, locale), formatCents(afterCents, locale))],
    },
    { cells: [say(dayWords(answered), locale), change(String(daysBefore), String(daysAfter))] },
    { cells: [words.finish, change(day(finishBefore), day(finishAfter))] },
  ];
}

/** Words that were ticked with the answer, as they were shown. */
function writeTicked(sheet: Pen['sheet'], title: string, ticked: string | null): void {
  if (ticked === null) return;
  sheet.subheading(title);
  sheet.paragraph(ticked, { sizePt: 8.5 });
}

function writeDecision({ sheet, words, locale, timeZone }: Pen, { document, decision }: ReportInput): void {
  sheet.heading(words.decision);
  if (!decision) {
    sheet.paragraph(words.noDecision);
    sheet.subheading(words.consentAsked);
    sheet.paragraph(document.consent.text[locale], { sizePt: 8.5 });
    return;
  }
  const part = partOf(document, decision.findingIds);
  const answer = part ? words.partApproved : decision.kind === 'approved' ? words.approved : words.declined;
  sheet.paragraph(answer, { bold: true, sizePt: 12 });
  sheet.table(
    [{ widthPt: 150 }, { widthPt: textWidthPt - 150 }],
    [
      ...(part ? partRows(document, part, { words, locale }) : []),
      ...(decision.contract ? contractRows(documentOfAnswer(document, decision), { words, locale }) : []),
      { cells: [words.signedBy, decision.signerName] },
      { cells: [words.readIn, decision.locale === 'es' ? words.spanish : words.english] },
      { cells: [words.answeredAt, sayInstant(decision.decidedAt, locale, timeZone)] },
      ...(decision.reason ? [{ cells: [words.reason, decision.reason] }] : []),
      { cells: [words.fingerprint, decision.sha256] },
    ],
    { sizePt: 9 },
  );
  writeTicked(sheet, words.consent, decision.consentText);
  writeTicked(sheet, words.acknowledged, decision.acknowledged);
}
