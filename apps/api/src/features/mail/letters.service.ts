import type { ChangeOrderDocument, Decision } from '@underlath/contract';
import type { Locale } from '@underlath/rules';
import type { Clock } from '../../platform/clock.ts';
import type { Tx } from '../../platform/database/database.ts';
import type { MailOutbox } from '../../platform/mail/outbox.ts';
import { findMemberEmail } from '../../shared/members.ts';
import { eventTypes } from '../../shared/record-events.ts';
import { letterZone } from '../../shared/site-words.ts';
import { toDocument } from '../change-orders/change-orders.mapper.ts';
import type { RecordHead, RecordsService } from '../records/records.service.ts';
import { decisionCopy, decisionLetter } from './decision-letter.ts';
import * as mails from './mail.repository.ts';
import { offerLetter, renewedLetter } from './offer-letter.ts';
import { answerLetter, questionLetter } from './question-letters.ts';

/** The version of a change order that a letter is about. */
export interface LetterSubject {
  readonly companyId: string;
  readonly projectId: string;
  readonly changeOrderId: string;
  readonly document: ChangeOrderDocument;
  readonly sha256: string;
  /** The member who sent it; that person reads for the office. */
  readonly sentById: string;
}

/** Of a version as it was stored. */
export const subjectOf = (
  projectId: string,
  {
    companyId,
    changeOrderId,
    document,
    sha256,
    sentById,
  }: Omit<LetterSubject, 'projectId' | 'document'> & { document: string },
): LetterSubject => ({ companyId, projectId, changeOrderId, document: toDocument({ document }), sha256, sentById });

interface LinkFacts {
  readonly link: string;
  readonly expiresAt: Date;
  readonly isDecided: boolean;
}

interface AnsweredQuestion {
  readonly id: string;
  readonly name: string;
  readonly text: string;
  readonly askedAt: Date;
  readonly answer: string;
  readonly answeredBy: string;
}

/** Which letters go out about a change order, to whom and in whose language; each leaves with the caller's transaction. */
export class LettersService {
  constructor(
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly outbox: MailOutbox,
    private readonly publicUrl: string,
  ) {}

  /** The link to a version that was just frozen; null: it is handed over another way. */
  async offer(tx: Tx, subject: LetterSubject, facts: LinkFacts, to: string | null): Promise<void> {
    await this.replaceLinkMails(tx, subject);
    if (to === null) return;
    const { locale, timeZone } = await this.reader(tx, subject);
    await this.post(tx, subject, 'offer', to, offerLetter({ ...subject, ...facts, timeZone }, locale));
  }

  /** The link that took the place of the one before it; null: it is handed over another way. */
  async renewLink(tx: Tx, subject: LetterSubject, facts: LinkFacts, to: string | null): Promise<void> {
    await this.replaceLinkMails(tx, subject);
    if (to === null) return;
    const { locale, timeZone } = await this.reader(tx, subject);
    await this.post(tx, subject, 'linkRenewed', to, renewedLetter({ ...subject, ...facts, timeZone }, locale));
  }

  private replaceLinkMails(tx: Tx, { companyId, changeOrderId }: LetterSubject): Promise<unknown> {
    const which = { changeOrderId, kind: { in: ['offer' as const, 'linkRenewed' as const] } };
    return mails.replaceMails(tx, companyId, which, this.clock.now());
  }

  /** To the office: a client's question. */
  async askOffice(tx: Tx, subject: LetterSubject, question: { id: string; name: string; text: string }): Promise<void> {
    const { companyId, projectId, changeOrderId, document, sentById } = subject;
    const to = await mails.findOfficeEmail(tx, companyId, sentById);
    if (!to) return;
    const page = `${this.publicUrl}/projects/${projectId}/change-orders/${changeOrderId}`;
    const letter = questionLetter({ document, name: question.name, question: question.text }, page);
    await this.post(tx, subject, 'questionAsked', to, letter, question.id);
  }

  /** To the client: the office's answer. */
  async answer(tx: Tx, subject: LetterSubject, { text, ...question }: AnsweredQuestion): Promise<void> {
    const { companyId, changeOrderId, document } = subject;
    const to = await this.clientEmail(tx, subject);
    if (!to) return;
    const { locale, timeZone } = await this.reader(tx, subject);
    const link = await mails.findLink(tx, companyId, changeOrderId, document.version);
    const works = link && !link.revokedAt && link.expiresAt > this.clock.now() ? link.expiresAt : null;
    const mail = await mails.findLinkMail(tx, companyId, changeOrderId, document.version);
    const facts = { linkMailedAt: mail?.createdAt ?? null, linkWorksUntil: works, timeZone };
    const letter = answerLetter({ ...subject, ...question, ...facts, question: text }, locale);
    await this.post(tx, subject, 'questionAnswered', to, letter, question.id);
  }

  /** To both sides: what was decided. The signer's copy is in the language of the answer and carries the PDF. */
  async tellDecision(
    tx: Tx,
    subject: LetterSubject,
    settled: { decision: Decision; head: RecordHead; locale: Locale },
  ): Promise<void> {
    const { timeZone } = await this.reader(tx, subject);
    const facts = { ...settled, ...subject, timeZone };
    const office = await mails.findOfficeEmail(tx, subject.companyId, subject.sentById);
    if (office) await this.post(tx, subject, 'decisionTold', office, decisionLetter(facts, 'en'));
    const client = await this.clientEmail(tx, subject);
    if (client) await this.post(tx, subject, 'decisionCopy', client, decisionCopy(facts, settled.locale));
  }

  /** Where the client reads: where the newest link to this version was mailed; null where it was handed over. */
  async clientEmail(tx: Tx, { companyId, changeOrderId, document }: LetterSubject): Promise<string | null> {
    const mail = await mails.findLinkMail(tx, companyId, changeOrderId, document.version);
    if (mail) return mail.to;
    // Sent before mails knew what they were about.
    const sending = await this.records.lastData(tx, companyId, changeOrderId, eventTypes.changeOrderSent);
    return typeof sending?.clientEmail === 'string' ? sending.clientEmail : null;
  }

  private async reader(tx: Tx, { companyId, projectId, document }: LetterSubject) {
    const project = await mails.findProject(tx, companyId, projectId);
    const locale: Locale = project.clientLocale === 'es' ? 'es' : 'en';
    return { locale, timeZone: letterZone(document, project) };
  }

  private async post(
    tx: Tx,
    { companyId, projectId, changeOrderId, document, sentById }: LetterSubject,
    kind: NonNullable<mails.MailRow['kind']>,
    to: string,
    letter: { subject: string; text: string; locale: Locale },
    questionId?: string,
  ): Promise<void> {
    const writerEmail = await findMemberEmail(tx, companyId, sentById);
    const about = { kind, projectId, changeOrderId, version: document.version, ...(questionId && { questionId }) };
    await this.outbox.post(tx, companyId, { to, ...letter, writerEmail }, about);
  }
}
