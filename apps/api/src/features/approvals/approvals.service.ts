import {
  type BodyOut,
  type ChangeOrderDocument,
  type ClientLetter,
  type clientRoutes,
  type DocumentPart,
  documentOfAnswer,
  isSameName,
  partOf,
  type Question,
  sameIds,
  understoodAtDeclining,
} from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { sha256Of } from '../../platform/hash.ts';
import { newId } from '../../platform/ids.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { ClientPrincipal } from '../../shared/principals.ts';
import { type DecidedData, eventTypes } from '../../shared/record-events.ts';
import { letterZone } from '../../shared/site-words.ts';
import { toQuestion } from '../change-orders/change-orders.mapper.ts';
import { answerOf, toDecision } from '../change-orders/decisions.mapper.ts';
import { toDocument } from '../change-orders/sent-document.mapper.ts';
import type { ContractService } from '../contract/contract.service.ts';
import { effectOf, ledgerName, noChange } from '../contract/contract-change.ts';
import { contractToday } from '../contract/contract-today.ts';
import { type LettersService, subjectOf } from '../mail/letters.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import * as approvals from './approvals.repository.ts';
import { assertLive, contactOf, contactWords } from './link-state.ts';

type Answer = BodyOut<typeof clientRoutes.decide>;
type Asked = BodyOut<typeof clientRoutes.ask>;

type StoredDecision = NonNullable<approvals.SentRow['decision']>;

/** A letter has a few findings: more than anyone asks in earnest, and few enough to read. Each mails the office and stays in the record. */
const QUESTIONS_WAITING = 10;
/** Answered at once or not, each is a mail to the office (common practice, no source). */
const QUESTIONS_AN_HOUR = 20;
const HOUR_MS = 3_600_000;

interface Opened {
  order: approvals.OrderRow;
  sent: approvals.SentRow;
  link: approvals.LetterRow;
}

/** What the holder of a client link may do: read, ask, and answer one version once. */
export class ApprovalsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly letters: LettersService,
    private readonly contract: ContractService,
  ) {}

  /** Reads only. */
  async letter(client: ClientPrincipal): Promise<ClientLetter> {
    return this.database.inCompany(client.companyId, async (tx) => {
      return this.toLetter(tx, client, await opened(tx, client));
    });
  }

  /** The document of the link, if this photo is in it. @throws ProblemError `not-found` */
  async assertPhoto(client: ClientPrincipal, photoId: string): Promise<void> {
    const { document } = await this.letter(client);
    if (!document.items.some(({ photos }) => photos.some(({ id }) => id === photoId))) throw notFound('photo');
  }

  /**
   * Exactly one answer a version, to exactly the bytes shown. The same answer sent again is told what stands.
   * @throws ProblemError `other-letter`, `wrong-state`, `contract-moved`, `invalid-input`, and what `assertLive` says
   */
  async decide(client: ClientPrincipal, answer: Answer, userAgent: string): Promise<ClientLetter> {
    return this.database.inCompany(client.companyId, async (tx) => {
      const { order, sent, link } = await this.lock(tx, client);
      assertSeen(sent, answer);
      assertTicked(toDocument(sent), answer);
      if (sent.decision) {
        assertSameAnswer(sent, sent.decision, answer);
        return this.toLetter(tx, client, { order, sent, link });
      }
      await assertLive(tx, link, this.clock.now());
      if (order.state !== 'sent')
        throw new ProblemError('wrong-state', 'This change order is not waiting for an answer.');
      await this.settle(tx, client, { order, sent }, answer, userAgent);
      return this.toLetter(tx, client, await opened(tx, client));
    });
  }

  /** @throws ProblemError `other-letter`, `questions-wait`, and what `assertLive` says */
  async ask(client: ClientPrincipal, { version: seen, name, text }: Asked): Promise<Question> {
    const { companyId } = client;
    return this.database.inCompany(companyId, async (tx) => {
      const { order, sent, link } = await this.lock(tx, client);
      assertVersionSeen(sent, seen);
      await assertLive(tx, link, this.clock.now());
      await this.assertRoom(tx, order, sent);
      const { id: changeOrderId, projectId } = order;
      const row = {
        companyId,
        id: newId(),
        changeOrderId,
        version: sent.version,
        name,
        text,
        askedAt: this.clock.now(),
      };
      const question = await approvals.insertQuestion(tx, row);
      await approvals.touchOrder(tx, companyId, changeOrderId);
      await this.records.append(tx, {
        companyId,
        projectId,
        actor: { kind: 'client', id: client.linkId, name },
        type: 'question.asked',
        subjectId: changeOrderId,
        data: { questionId: question.id, version: sent.version, text },
      });
      await this.letters.askOffice(tx, subjectOf(order.project, sent), question);
      return toQuestion(question);
    });
  }

  private async assertRoom(tx: Tx, order: approvals.OrderRow, { version }: approvals.SentRow): Promise<void> {
    this.assertPace(order);
    const waiting = order.questions.filter((question) => question.version === version && question.answeredAt === null);
    if (waiting.length < QUESTIONS_WAITING) return;
    const contact = await contactOf(tx, order.companyId);
    throw new ProblemError(
      'questions-wait',
      `${waiting.length} of your questions wait for an answer; please let them be answered first. ${contactWords(contact)} if it is urgent.`,
      { contact },
    );
  }

  private assertPace({ questions }: approvals.OrderRow): void {
    const nowMs = this.clock.now().getTime();
    const freeAtMs = questions.map(({ askedAt }) => askedAt.getTime() + HOUR_MS).filter((ms) => ms > nowMs);
    if (freeAtMs.length < QUESTIONS_AN_HOUR) return;
    const seconds = Math.ceil((Math.min(...freeAtMs) - nowMs) / 1000);
    throw new ProblemError(
      'too-many-requests',
      `${freeAtMs.length} questions were asked within an hour; please try again in ${Math.ceil(seconds / 60)} min.`,
      { headers: { 'retry-after': String(seconds) } },
    );
  }

  /** The project's turn, which edits and answers share; everything is read under it. */
  private async lock(tx: Tx, client: ClientPrincipal): Promise<Opened> {
    await this.records.lockOf(tx, client.companyId, 'change_order', client.changeOrderId);
    return opened(tx, client);
  }

  private async settle(
    tx: Tx,
    client: ClientPrincipal,
    { order, sent }: Omit<Opened, 'link'>,
    answer: Answer,
    userAgent: string,
  ) {
    const { companyId, linkId, sessionId } = client;
    const document = toDocument(sent);
    const letterFor = confirmedFor(document, answer);
    const { kind, sha256, signerName, reason, locale } = answer;
    const part = chosenPart(document, answer);
    const findingIds = part?.findingIds ?? [];
    const contract = await this.contractAfter(tx, order, document, answer);
    const decidedAt = this.clock.now();
    const consent = kind === 'approved' ? { id: document.consent.id, text: document.consent.text[locale] } : null;
    const understood = kind === 'declined' ? (understoodAtDeclining(document)?.[locale] ?? null) : null;
    const row = {
      kind,
      findingIds,
      signerName,
      letterFor,
      reason,
      sha256,
      consentId: consent?.id ?? null,
      consentText: consent?.text ?? null,
      acknowledged: understood,
      locale,
      decidedAt,
    };
    const { version } = sent;
    await approvals.insertDecision(tx, {
      ...row,
      companyId,
      changeOrderId: order.id,
      version,
      id: newId(),
      linkId,
      sessionId,
      userAgent,
      contract,
    });
    await approvals.settleOrder(tx, companyId, order.id, {
      decidedAt,
      ...(part ? { state: 'partApproved', totalCents: part.price.totalCents, days: part.days } : { state: kind }),
    });
    const all = order.findings.map(({ findingId }) => findingId);
    const isLeft = (id: string) => part !== undefined && !findingIds.includes(id);
    await approvals.settleFindings(
      tx,
      companyId,
      all.filter((id) => !isLeft(id)),
      kind,
    );
    await approvals.settleFindings(tx, companyId, all.filter(isLeft), 'declined');
    const data: DecidedData = {
      version,
      kind,
      sha256,
      signerName,
      ...(letterFor !== null && { letterFor }),
      ...(consent && { consentId: consent.id, consentSha256: sha256Of(consent.text) }),
      ...(understood !== null && { acknowledged: understood }),
      reason,
      decidedAt: decidedAt.toISOString(),
      ...(part && { findingIds }),
      locale,
      userAgentSha256: sha256Of(userAgent),
      contract,
    };
    const head = await this.records.append(tx, {
      companyId,
      projectId: order.projectId,
      actor: { kind: 'client', id: linkId, name: signerName },
      type: eventTypes.changeOrderDecided,
      subjectId: order.id,
      data: { ...data },
    });
    const { consentText, acknowledged } = row;
    const said = {
      kind,
      findingIds,
      version,
      signerName,
      letterFor,
      reason,
      sha256,
      consentText,
      acknowledged,
      locale,
    };
    const decision = { ...said, decidedAt: data.decidedAt, contract };
    await this.letters.tellDecision(tx, subjectOf(order.project, sent), { decision, head, locale });
  }

  /** What the answer does to the contract by the ledger of this moment. @throws ProblemError `contract-moved` */
  private async contractAfter(tx: Tx, order: approvals.OrderRow, document: ChangeOrderDocument, answer: Answer) {
    const history = await this.contract.history(tx, order.companyId, order.projectId);
    if (answer.kind === 'declined') return effectOf(history, noChange);
    if (answer.ledger !== ledgerName(history)) {
      throw new ProblemError(
        'contract-moved',
        'The contract changed after this letter was shown. Nothing was signed; read the new sum and answer then.',
      );
    }
    const { price, days } = documentOfAnswer(document, { findingIds: answer.findingIds ?? [], contract: null });
    return effectOf(history, { cents: price.totalCents, days });
  }

  private async toLetter(tx: Tx, client: ClientPrincipal, { order, sent, link }: Opened): Promise<ClientLetter> {
    const document = toDocument(sent);
    const history = await this.contract.history(tx, order.companyId, order.projectId);
    return {
      letterId: client.letterId,
      document,
      sha256: sent.sha256,
      state: sent.decision ? answerOf(sent.decision) : 'open',
      decision: sent.decision && toDecision(sent.decision),
      answeredHere: sent.decision?.sessionId === client.sessionId,
      questions: order.questions.map(toQuestion),
      locale: order.project.clientLocale === 'es' ? 'es' : 'en',
      timeZone: letterZone(document, order.project),
      // A renewal moves it; the document keeps the day it was sent with.
      answerBy: link.expiresAt.toISOString(),
      contract: contractToday(history, document),
    };
  }
}

async function opened(tx: Tx, { companyId, linkId }: ClientPrincipal): Promise<Opened> {
  const link = await approvals.findLetter(tx, companyId, linkId);
  if (!link) throw notFound('change order');
  return { order: link.sent.changeOrder, sent: link.sent, link };
}

/** The answer names what was on the screen. */
function assertSeen(sent: approvals.SentRow, { version, sha256 }: Answer): void {
  assertVersionSeen(sent, version);
  if (sha256 !== sent.sha256) {
    throw new ProblemError(
      'link-replaced',
      'What you saw is not the version that stands now. Load the page again and read it anew.',
    );
  }
}

/** An approval agrees to answer online in these words; a refusal agrees to nothing, and says what it leaves as it is. */
function assertTicked(document: ChangeOrderDocument, { kind, consent, consentId, acknowledged }: Answer): void {
  if (kind === 'declined') {
    if (consent || consentId !== undefined)
      throw invalidInput('/consent', 'came with a refusal, which agrees to nothing; leave it out');
    if (!acknowledged && understoodAtDeclining(document)) throw invalidInput('/acknowledged', 'must be ticked');
    return;
  }
  if (!consent) throw invalidInput('/consent', 'must be ticked');
  if (consentId !== document.consent.id)
    throw invalidInput('/consentId', 'is not the consent text of this version; load the page again');
}

/** @throws ProblemError `other-letter` */
function assertVersionSeen({ version }: approvals.SentRow, seen: number): void {
  if (seen === version) return;
  throw new ProblemError(
    'other-letter',
    `You saw version ${seen}, and this letter is version ${version}; nothing was sent. Load the page again.`,
  );
}

/**
 * Whom the letter is for, where the signer typed another name and said that it is right; null for the same name.
 * @throws ProblemError `invalid-input` when nobody was asked yet
 */
function confirmedFor({ project }: ChangeOrderDocument, { signerName, nameConfirmed }: Answer): string | null {
  if (isSameName(signerName, project.clientName)) return null;
  if (nameConfirmed) return project.clientName;
  throw invalidInput(
    '/nameConfirmed',
    `The letter is for ${project.clientName}, and ${signerName} was typed. Ask whether that is right, and send nameConfirmed: true when it is.`,
  );
}

/**
 * The part that was approved; undefined for all of it, or none.
 * @throws ProblemError `invalid-input` for a choice that this version does not offer
 */
function chosenPart(document: ChangeOrderDocument, { kind, findingIds }: Answer): DocumentPart | undefined {
  if (!findingIds) return undefined;
  if (kind === 'declined')
    throw invalidInput('/findingIds', 'came with a refusal, which is of the whole; leave it out');
  const part = partOf(document, findingIds);
  const all = document.items.map(({ findingId }) => findingId);
  if (!part && !sameIds(all, findingIds))
    throw invalidInput('/findingIds', 'is no choice that this version offers; load the page again and choose there');
  return part;
}

function assertSameAnswer(sent: approvals.SentRow, decision: StoredDecision, answer: Answer): void {
  const chosen = chosenPart(toDocument(sent), answer)?.findingIds ?? [];
  const isSame =
    decision.kind === answer.kind &&
    decision.signerName === answer.signerName &&
    String(chosen) === String(decision.findingIds);
  if (isSame) return;
  throw new ProblemError(
    'wrong-state',
    `This version was ${answerOf(decision)} by ${decision.signerName} at ${decision.decidedAt.toISOString()}; that answer stands.`,
  );
}
