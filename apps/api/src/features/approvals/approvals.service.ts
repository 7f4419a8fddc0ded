import {
  type BodyOut,
  type ChangeOrderDocument,
  type ClientLetter,
  type clientRoutes,
  type DocumentPart,
  partOf,
  type Question,
  sameIds,
} from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { ClientPrincipal } from '../../plugins/auth.ts';
import { answerOf, toDecision, toDocument, toQuestion } from '../change-orders/change-orders.mapper.ts';
import { type LettersService, subjectOf } from '../mail/letters.service.ts';
import { type DecidedData, eventTypes } from '../records/record-events.ts';
import { sha256Of } from '../records/record-hash.ts';
import type { RecordsService } from '../records/records.service.ts';
import * as approvals from './approvals.repository.ts';
import { assertLive } from './client-links.ts';

type Answer = BodyOut<typeof clientRoutes.decide>;
type Asked = BodyOut<typeof clientRoutes.ask>;

type StoredDecision = NonNullable<approvals.SentRow['decision']>;

interface Opened {
  order: approvals.OrderRow;
  sent: approvals.SentRow;
  /** The end of the link, which a renewal moves; the document keeps the one it was sent with. */
  answerBy: Date;
}

/** What the holder of a client link may do: read, ask, and answer one version once. */
export class ApprovalsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly letters: LettersService,
  ) {}

  /** Reads only. */
  async letter(client: ClientPrincipal): Promise<ClientLetter> {
    return this.database.inCompany(client.companyId, async (tx) => {
      const order = await approvals.findOrder(tx, client.companyId, client.changeOrderId);
      return toLetter(await opened(tx, client, order));
    });
  }

  /** The document of the link, if this photo is in it. @throws ProblemError `not-found` */
  async assertPhoto(client: ClientPrincipal, photoId: string): Promise<void> {
    const { document } = await this.letter(client);
    if (!document.items.some(({ photos }) => photos.some(({ id }) => id === photoId))) throw notFound('photo');
  }

  /**
   * Exactly one answer a version, to exactly the bytes shown. The same answer sent again is told what stands.
   * @throws ProblemError `link-replaced`, `link-gone`, `wrong-state`, `invalid-input`
   */
  async decide(client: ClientPrincipal, answer: Answer, userAgent: string): Promise<ClientLetter> {
    const { companyId } = client;
    return this.database.inCompany(companyId, async (tx) => {
      const { order, sent, answerBy } = await this.lock(tx, client);
      assertSeen(sent, answer);
      if (sent.decision) {
        assertSameAnswer(sent, sent.decision, answer);
        return toLetter({ order, sent, answerBy });
      }
      if (order.state !== 'sent')
        throw new ProblemError('wrong-state', 'This change order is not waiting for an answer.');
      await this.settle(tx, client, { order, sent }, answer, userAgent);
      return toLetter(await opened(tx, client, await approvals.findOrder(tx, companyId, order.id)));
    });
  }

  /** @throws ProblemError `link-replaced`, `link-gone` */
  async ask(client: ClientPrincipal, { name, text }: Asked): Promise<Question> {
    const { companyId } = client;
    return this.database.inCompany(companyId, async (tx) => {
      const { order, sent } = await this.lock(tx, client);
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
      await this.letters.askOffice(tx, subjectOf(projectId, sent), question);
      return toQuestion(question);
    });
  }

  /** The project's turn, then the row that edits and answers share; whether the link still lives is asked again under the lock. */
  private async lock(tx: Tx, client: ClientPrincipal): Promise<Opened> {
    const { companyId, changeOrderId } = client;
    const found = await approvals.findOrder(tx, companyId, changeOrderId);
    if (found) await this.records.lock(tx, companyId, found.projectId);
    const order = await approvals.lockOrder(tx, companyId, changeOrderId);
    const link = await approvals.findLinkById(tx, companyId, client.linkId);
    if (!link) throw notFound('link');
    await assertLive(tx, link, order?.sentVersion ?? null, this.clock.now());
    return opened(tx, client, order);
  }

  private async settle(
    tx: Tx,
    client: ClientPrincipal,
    { order, sent }: Omit<Opened, 'answerBy'>,
    answer: Answer,
    userAgent: string,
  ) {
    const { companyId, linkId } = client;
    const document = toDocument(sent);
    const { kind, sha256, signerName, reason, locale } = answer;
    const part = chosenPart(document, answer);
    const findingIds = part?.findingIds ?? [];
    const decidedAt = this.clock.now();
    const consentText = document.consent.text[locale];
    const row = {
      kind,
      findingIds,
      signerName,
      reason,
      sha256,
      consentId: document.consent.id,
      consentText,
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
      userAgent,
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
      consentId: row.consentId,
      consentSha256: sha256Of(consentText),
      reason,
      decidedAt: decidedAt.toISOString(),
      ...(part && { findingIds }),
    };
    const head = await this.records.append(tx, {
      companyId,
      projectId: order.projectId,
      actor: { kind: 'client', id: linkId, name: signerName },
      type: eventTypes.changeOrderDecided,
      subjectId: order.id,
      data: { ...data },
    });
    const decision = { kind, findingIds, version, signerName, reason, sha256, consentText, decidedAt: data.decidedAt };
    await this.letters.tellDecision(tx, subjectOf(order.projectId, sent), { decision, head, locale });
  }
}

async function opened(tx: Tx, client: ClientPrincipal, order: approvals.OrderRow | null): Promise<Opened> {
  const sent = order && (await approvals.findSent(tx, client.companyId, client.changeOrderId, client.version));
  const link = await approvals.findLinkById(tx, client.companyId, client.linkId);
  if (!order || !sent || !link) throw notFound('change order');
  return { order, sent, answerBy: link.expiresAt };
}

function toLetter({ order, sent, answerBy }: Opened): ClientLetter {
  return {
    document: toDocument(sent),
    sha256: sent.sha256,
    state: sent.decision ? answerOf(sent.decision) : 'open',
    decision: sent.decision && toDecision(sent.decision),
    questions: order.questions.map(toQuestion),
    locale: order.project.clientLocale === 'es' ? 'es' : 'en',
    answerBy: answerBy.toISOString(),
  };
}

/** The answer names what was on the screen: these bytes and this consent. */
function assertSeen(sent: approvals.SentRow, { sha256, consentId }: Answer): void {
  if (sha256 !== sent.sha256) {
    throw new ProblemError(
      'link-replaced',
      'What you saw is not the version that stands now. Load the page again and read it anew.',
    );
  }
  if (consentId !== toDocument(sent).consent.id) {
    throw invalidInput('/consentId', 'is not the consent text of this version; load the page again');
  }
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
