import {
  type BodyOut,
  type ChangeOrder,
  type ChangeOrderDocument,
  changeOrderDocument,
  type changeOrderRoutes,
  type DraftField,
} from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import type { Outbox } from '../../platform/outbox.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import { assertVersion } from '../../plugins/etag.ts';
import type { Caller } from '../caller.ts';
import { toWord } from '../enum-words.ts';
import { eventTypes } from '../records/record-events.ts';
import { canonicalJson, sha256Of } from '../records/record-hash.ts';
import type { RecordHead, RecordsService } from '../records/records.service.ts';
import { memberIds } from './change-orders.mapper.ts';
import type { ChangeOrderRecord } from './change-orders.repository.ts';
import * as changeOrders from './change-orders.repository.ts';
import type { ChangeOrdersService } from './change-orders.service.ts';
import type { Offer } from './offer-builder.ts';
import { assertContent, reviewEvent } from './offer-content.ts';
import { type DraftDocument, withSections } from './offer-document.ts';
import { offerLetter } from './offer-letter.ts';
import { assertSpanish } from './spanish-names.ts';

type Send = BodyOut<typeof changeOrderRoutes.sendChangeOrder>;
const dayMs = 86_400_000;

/** Freezes versions and makes the links that open them. */
export class SendingService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly outbox: Outbox,
    private readonly changeOrders: ChangeOrdersService,
    private readonly publicUrl: string,
  ) {}

  /**
   * The document, its hash, the link and the mail come to be in one transaction. The link is told once and kept as a hash.
   * @throws ProblemError `not-found`, `stale-version`, `wrong-state` with the reasons, `invalid-input` when it lacks what a
   * law asks for and no reason says why it goes out all the same
   */
  async send(
    caller: Caller,
    id: string,
    seen: number,
    { clientEmail, expiresInDays, missingReason = '', byPart, withEnglish }: Send,
  ) {
    const { companyId } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const record = await this.changeOrders.lock(tx, companyId, id);
      assertVersion(seen, record.version);
      const head = await this.records.lock(tx, companyId, record.projectId);
      const sentAt = this.clock.now();
      const expiresAt = new Date(sentAt.getTime() + expiresInDays * dayMs);
      const offer = await this.offer(tx, companyId, record, clientEmail);
      assertContent(offer.review, missingReason);
      if (record.project.clientLocale === 'es' && !withEnglish) assertSpanish(offer.missingSpanish);
      const parts = byPart ? await this.changeOrders.parts(tx, companyId, record, offer) : undefined;
      const document = freeze(withSections({ ...offer.draft, ...(parts && { parts }) }), caller, {
        head,
        sentAt,
        expiresAt,
      });
      const { sha256 } = document;
      await this.store(tx, caller, record, document);
      const link = await this.makeLink(tx, companyId, id, document.content.version, expiresAt);
      await this.announce(tx, caller, record, { ...document, ...offer, missingReason });
      await this.mail(tx, record, document.content, link, offer.mailTo);
      return { changeOrder: await this.changeOrders.view(tx, companyId, id), link, sha256 };
    });
  }

  /** A new link for the version already sent; earlier ones die. @throws ProblemError `not-found`, `wrong-state` */
  async renewLink(caller: Caller, id: string, expiresInDays: number): Promise<{ link: string; expiresAt: string }> {
    const { companyId } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const version = await this.endLinks(tx, caller, id, 'change-order.link-renewed');
      const expiresAt = new Date(this.clock.now().getTime() + expiresInDays * dayMs);
      const link = await this.makeLink(tx, companyId, id, version, expiresAt);
      return { link, expiresAt: expiresAt.toISOString() };
    });
  }

  /** @throws ProblemError `not-found`, `wrong-state` */
  async revokeLink(caller: Caller, id: string): Promise<void> {
    await this.database.inCompany(caller.companyId, (tx) => this.endLinks(tx, caller, id, 'change-order.link-revoked'));
  }

  /** The exact bytes that were sent. @throws ProblemError `not-found` */
  async sentDocument(companyId: string, id: string, version: number): Promise<{ document: string; sha256: string }> {
    return this.database.inCompany(companyId, async (tx) => {
      const record = await changeOrders.findChangeOrder(tx, companyId, id);
      const sent = record?.versions.find((one) => one.version === version);
      if (!sent) throw notFound('sent version');
      return { document: sent.document, sha256: sent.sha256 };
    });
  }

  private async offer(
    tx: Tx,
    companyId: string,
    record: ChangeOrderRecord,
    clientEmail: string | null | undefined,
  ): Promise<Offer> {
    if (record.state !== 'draft') throw notADraft(record);
    const offer = await this.changeOrders.draft(tx, companyId, record, clientEmail);
    if (offer.blocks.length > 0) {
      const errors = offer.marks.map(({ field, words }) => ({ pointer: pointerOf(field), detail: words }));
      throw new ProblemError('wrong-state', `It cannot be sent yet. ${offer.blocks.join(' ')}`, { errors });
    }
    return offer;
  }

  private async store(
    tx: Tx,
    { companyId, memberId }: Caller,
    record: ChangeOrderRecord,
    { content, bytes, sha256, sentAt }: Frozen,
  ) {
    const { id } = record;
    const row = {
      companyId,
      changeOrderId: id,
      version: content.version,
      document: bytes,
      sha256,
      sentAt,
      sentById: memberId,
    };
    await changeOrders.insertVersion(tx, row);
    const { wording, days, price } = content;
    const sent = { state: 'sent', sentVersion: content.version, totalCents: price.totalCents, wording, days } as const;
    await changeOrders.updateChangeOrder(tx, companyId, id, sent);
    await changeOrders.moveFindings(tx, companyId, memberIds(record), ['priced', 'declined'], 'offered');
  }

  private async mail(
    tx: Tx,
    { companyId, projectId }: ChangeOrderRecord,
    document: ChangeOrderDocument,
    link: string,
    to: string | null,
  ): Promise<void> {
    if (to === null) return;
    const project = await changeOrders.findProject(tx, companyId, projectId);
    await this.outbox.post(tx, companyId, { to, ...offerLetter(document, link, project?.clientLocale) });
  }

  /** The record keeps what was sent, its hash, the address it went to, and what it lacked and why it went out so. */
  private async announce(
    tx: Tx,
    { companyId, actor }: Caller,
    { id, projectId }: ChangeOrderRecord,
    { content, sha256, mailTo, review, missingReason }: Announced,
  ): Promise<void> {
    const { version, price, days, expiresAt } = content;
    const data = {
      version,
      sha256,
      totalCents: price.totalCents,
      days,
      expiresAt,
      clientEmail: mailTo,
      ...(review.missing.length > 0 && { contentReview: reviewEvent(review) }),
      ...(missingReason && { missingReason }),
    };
    await this.records.append(tx, {
      companyId,
      projectId,
      actor,
      type: eventTypes.changeOrderSent,
      subjectId: id,
      data,
    });
  }

  private async makeLink(
    tx: Tx,
    companyId: string,
    changeOrderId: string,
    version: number,
    expiresAt: Date,
  ): Promise<string> {
    const token = newSecret();
    const row = {
      companyId,
      id: newId(),
      changeOrderId,
      version,
      tokenHash: hashSecret(token),
      createdAt: this.clock.now(),
      expiresAt,
    };
    await changeOrders.insertLink(tx, row);
    return `${this.publicUrl}/c#${token}`;
  }

  /** Answers the version that stays sent. */
  private async endLinks(tx: Tx, { companyId, actor }: Caller, id: string, type: string): Promise<number> {
    const { projectId, sentVersion, number } = await this.changeOrders.lock(tx, companyId, id);
    if (sentVersion === null) {
      throw new ProblemError('wrong-state', `Change order ${number} is a draft; it has no link. Send it first.`);
    }
    await changeOrders.revokeLinks(tx, companyId, id, this.clock.now());
    const data = { version: sentVersion };
    await this.records.append(tx, { companyId, projectId, actor, type, subjectId: id, data });
    return sentVersion;
  }
}

function freeze(
  draft: DraftDocument,
  caller: Caller,
  { head, sentAt, expiresAt }: { head: RecordHead; sentAt: Date; expiresAt: Date },
): Frozen {
  const content = changeOrderDocument.parse({
    ...draft,
    sentAt: sentAt.toISOString(),
    sentBy: caller.actor.name,
    expiresAt: expiresAt.toISOString(),
    record: head,
  });
  const bytes = canonicalJson(content);
  return { content, bytes, sha256: sha256Of(bytes), sentAt };
}

/** Where the request that edits a draft takes a field. */
const pointerOf = (field: DraftField): string => (field === 'days' ? '/days' : `/wording/${field}`);

type Announced = Pick<Frozen, 'content' | 'sha256'> & Pick<Offer, 'mailTo' | 'review'> & { missingReason: string };

interface Frozen {
  content: ChangeOrderDocument;
  /** Canonical JSON (RFC 8785) of the content. */
  bytes: string;
  sha256: string;
  sentAt: Date;
}

export interface Sent {
  changeOrder: ChangeOrder;
  link: string;
  sha256: string;
}

const notADraft = ({ number, state }: ChangeOrderRecord): ProblemError =>
  new ProblemError(
    'wrong-state',
    state === 'sent'
      ? `Change order ${number} is with the client. Edit it to make a new version, or renew its link.`
      : state === 'setAside'
        ? `Change order ${number} was set aside. Put its findings into a new one.`
        : `Change order ${number} was ${toWord(state)}; an answer stands.`,
  );
