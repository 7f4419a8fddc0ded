import type { ChangeOrderDocument, Decision } from '@underlath/contract';
import type { Locale } from '@underlath/rules';
import type { Clock } from '../../platform/clock.ts';
import type { Tx } from '../../platform/database/database.ts';
import type { MailOutbox } from '../../platform/mail/outbox.ts';
import { eventTypes } from '../../shared/record-events.ts';
import { letterZone } from '../../shared/site-words.ts';
import { toDocument } from '../change-orders/sent-document.mapper.ts';
import type { ContractProject } from '../contract/contract.service.ts';
import type { RecordHead, RecordsService } from '../records/records.service.ts';
import { decisionCopy, decisionLetter } from './decision-letter.ts';
import * as mails from './mail.repository.ts';
import { offerLetter, renewedLetter } from './offer-letter.ts';
import { answerLetter, questionLetter } from './question-letters.ts';

/** The project of a letter, as far as it says how the letter is told. */
type Project = Pick<ContractProject, 'id' | 'clientLocale' | 'timeZone'>;

/** The version of a change order that a letter is about. */
export interface LetterSubject {
  readonly companyId: string;
  readonly project: Project;
  readonly changeOrderId: string;
  readonly document: ChangeOrderDocument;
  readonly sha256: string;
  /** The member who sent it; that person reads for the office. */
  readonly sentById: string;
}

/** Of a version as it was stored. */
export const subjectOf = (
  project: Project,
  sent: Omit<LetterSubject, 'project' | 'document'> & { readonly document: string; readonly version: number },
): LetterSubject => {
  const { companyId, changeOrderId, sha256, sentById } = sent;
  return { companyId, project, changeOrderId, document: toDocument(sent), sha256, sentById };
};

/** How the client reads: in which language, and by which clock. */
function readerOf({ project, document }: LetterSubject) {
  const locale: Locale = project.clientLocale === 'es' ? 'es' : 'en';
  return { locale, timeZone: letterZone(document, project) };
}

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
    const { locale, timeZone } = readerOf(subject);
    const letter = offerLetter({ ...subject, ...facts, timeZone }, locale);
    await this.postOne(tx, subject, { kind: 'offer', to, letter });
  }

  /** The link that took the place of the one before it; null: it is handed over another way. */
  async renewLink(tx: Tx, subject: LetterSubject, facts: LinkFacts, to: string | null): Promise<void> {
    await this.replaceLinkMails(tx, subject);
    if (to === null) return;
    const { locale, timeZone } = readerOf(subject);
    const letter = renewedLetter({ ...subject, ...facts, timeZone }, locale);
    await this.postOne(tx, subject, { kind: 'linkRenewed', to, letter });
  }

  private replaceLinkMails(tx: Tx, { companyId, changeOrderId }: LetterSubject): Promise<unknown> {
    const which = { changeOrderId, kind: { in: ['offer' as const, 'linkRenewed' as const] } };
    return mails.replaceMails(tx, companyId, which, this.clock.now());
  }

  /** To the office: a client's question. */
  async askOffice(tx: Tx, subject: LetterSubject, question: { id: string; name: string; text: string }): Promise<void> {
    const { project, changeOrderId, document } = subject;
    const office = await mails.findOffice(tx, subject.companyId, subject.sentById);
    if (!office.reads) return;
    const page = `${this.publicUrl}/projects/${project.id}/change-orders/${changeOrderId}`;
    const letter = questionLetter({ document, name: question.name, question: question.text }, page);
    await this.post(tx, subject, office, [
      { kind: 'questionAsked', to: office.reads, letter, questionId: question.id },
    ]);
  }

  /** To the client: the office's answer. */
  async answer(tx: Tx, subject: LetterSubject, { text, ...question }: AnsweredQuestion): Promise<void> {
    const { companyId, changeOrderId, document } = subject;
    const to = await this.clientEmail(tx, subject);
    if (!to) return;
    const { locale, timeZone } = readerOf(subject);
    const link = await mails.findLink(tx, companyId, changeOrderId, document.version);
    const works = link && !link.revokedAt && link.expiresAt > this.clock.now() ? link.expiresAt : null;
    const mail = await mails.findLinkMail(tx, companyId, changeOrderId, document.version);
    const facts = { linkMailedAt: mail?.createdAt ?? null, linkWorksUntil: works, timeZone };
    const letter = answerLetter({ ...subject, ...question, ...facts, question: text }, locale);
    await this.postOne(tx, subject, { kind: 'questionAnswered', to, letter, questionId: question.id });
  }

  /** To both sides: what was decided. The signer's copy is in the language of the answer and carries the PDF. */
  async tellDecision(
    tx: Tx,
    subject: LetterSubject,
    settled: { decision: Decision; head: RecordHead; locale: Locale },
  ): Promise<void> {
    const { timeZone } = readerOf(subject);
    const facts = { ...settled, ...subject, timeZone };
    const office = await mails.findOffice(tx, subject.companyId, subject.sentById);
    const client = await this.clientEmail(tx, subject);
    await this.post(tx, subject, office, [
      ...(office.reads
        ? [{ kind: 'decisionTold' as const, to: office.reads, letter: decisionLetter(facts, 'en') }]
        : []),
      ...(client ? [{ kind: 'decisionCopy' as const, to: client, letter: decisionCopy(facts, settled.locale) }] : []),
    ]);
  }

  /** Where the client reads: where the newest link to this version was mailed; null where it was handed over. */
  async clientEmail(tx: Tx, { companyId, changeOrderId, document }: LetterSubject): Promise<string | null> {
    const mail = await mails.findLinkMail(tx, companyId, changeOrderId, document.version);
    if (mail) return mail.to;
    // Sent before mails knew what they were about.
    const sending = await this.records.lastData(tx, companyId, changeOrderId, eventTypes.changeOrderSent);
    return typeof sending?.clientEmail === 'string' ? sending.clientEmail : null;
  }

  private async postOne(tx: Tx, subject: LetterSubject, letter: Posted): Promise<void> {
    const office = await mails.findOffice(tx, subject.companyId, subject.sentById);
    await this.post(tx, subject, office, [letter]);
  }

  private async post(
    tx: Tx,
    { companyId, project, changeOrderId, document }: LetterSubject,
    { company, writerEmail }: mails.Office,
    letters: readonly Posted[],
  ): Promise<void> {
    const about = { projectId: project.id, changeOrderId, version: document.version };
    await this.outbox.postAll(
      tx,
      companyId,
      letters.map(({ kind, to, letter, questionId }) => ({
        letter: { to, ...letter, writerEmail },
        about: { kind, ...about, ...(questionId && { questionId }) },
      })),
      company,
    );
  }
}

interface Posted {
  readonly kind: NonNullable<mails.MailRow['kind']>;
  readonly to: string;
  readonly letter: { readonly subject: string; readonly text: string; readonly locale: Locale };
  readonly questionId?: string;
}
