import {
  type BodyOut,
  type ChangeOrder,
  type ChangeOrderDocument,
  changeOrderDocument,
  type changeOrderRoutes,
  type DraftField,
} from '@underlath/contract';
import { type DraftDocument, withSections } from '@underlath/rules/offers';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { canonicalJson, sha256Of } from '../../platform/hash.ts';
import { newId } from '../../platform/ids.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newLetterId, newSecret } from '../../platform/secrets.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertEmailConfirmed } from '../../shared/confirmed-email.ts';
import { toWord } from '../../shared/enum-words.ts';
import { eventTypes } from '../../shared/record-events.ts';
import { assertVersion } from '../../shared/versions.ts';
import { type LettersService, subjectOf } from '../mail/letters.service.ts';
import type { RecordHead, RecordsService } from '../records/records.service.ts';
import { memberIds } from './change-orders.mapper.ts';
import type { ChangeOrderRecord } from './change-orders.repository.ts';
import * as changeOrders from './change-orders.repository.ts';
import type { ChangeOrdersService } from './change-orders.service.ts';
import { assertSpanish } from './missing-spanish.ts';
import type { Offer } from './offer-builder.ts';
import { assertContent, reviewEvent } from './offer-content.ts';

type Send = BodyOut<typeof changeOrderRoutes.sendChangeOrder>;
type Renewal = BodyOut<typeof changeOrderRoutes.renewClientLink>;

interface Renew {
  /** Only if this version still stands. */
  version?: number;
  expiresAt: Date;
  mailTo?: string | null | undefined;
}

interface Renewed {
  link: string;
  expiresAt: string;
  /** Null: it is handed over another way. */
  mailedTo: string | null;
}

const dayMs = 86_400_000;

/** Freezes versions and makes the links that open them. */
export class SendingService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly letters: LettersService,
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
      const offer = await this.offer(tx, record, clientEmail);
      if (offer.mailTo) await assertEmailConfirmed(tx, companyId, caller.memberId);
      assertContent(offer.review, missingReason);
      if (record.project.clientLocale === 'es' && !withEnglish) assertSpanish(offer.missingSpanish);
      const parts = byPart ? this.changeOrders.parts(offer) : undefined;
      const document = freeze(withSections({ ...offer.draft, ...(parts && { parts }) }), caller, {
        head,
        sentAt,
        expiresAt,
      });
      const { sha256 } = document;
      await this.store(tx, caller, record, document);
      const link = await this.makeLink(tx, companyId, id, document.content.version, expiresAt);
      await this.announce(tx, caller, record, { ...document, ...offer, missingReason });
      const subject = { companyId, project: record.project, changeOrderId: id, sentById: caller.memberId };
      const facts = { link, expiresAt, isDecided: false };
      await this.letters.offer(tx, { ...subject, document: document.content, sha256 }, facts, offer.mailTo);
      return { changeOrder: await this.changeOrders.view(tx, companyId, id, offer.sources), link, sha256 };
    });
  }

  /** A new link for the version already sent; earlier ones die. @throws ProblemError `not-found`, `wrong-state` */
  async renewLink(caller: Caller, id: string, { expiresInDays, clientEmail }: Renewal): Promise<Renewed> {
    const expiresAt = new Date(this.clock.now().getTime() + expiresInDays * dayMs);
    return this.database.inCompany(caller.companyId, (tx) =>
      this.renew(tx, caller, id, { expiresAt, mailTo: clientEmail }),
    );
  }

  /**
   * The same in the caller's transaction, told to the address given or else to where the offer went.
   * @throws ProblemError `not-found`, `wrong-state` also when another version than the one asked for stands now
   */
  async renew(tx: Tx, caller: Caller, id: string, { version: asked, expiresAt, mailTo }: Renew): Promise<Renewed> {
    const { companyId } = caller;
    const { record, version } = await this.endLinks(tx, companyId, id, asked);
    const sent = record.versions.find((one) => one.version === version);
    if (!sent) throw noLink(record.number);
    const subject = subjectOf(record.project, sent);
    const to = mailTo === undefined ? await this.letters.clientEmail(tx, subject) : mailTo;
    if (to) await assertEmailConfirmed(tx, companyId, caller.memberId);
    await this.note(tx, caller, record, 'change-order.link-renewed', {
      version,
      expiresAt: expiresAt.toISOString(),
      clientEmail: to,
    });
    const link = await this.makeLink(tx, companyId, id, version, expiresAt);
    await this.letters.renewLink(tx, subject, { link, expiresAt, isDecided: record.state !== 'sent' }, to);
    return { link, expiresAt: expiresAt.toISOString(), mailedTo: to };
  }

  /** Where none works any more, nothing happens and nothing is recorded. @throws ProblemError `not-found`, `wrong-state` */
  async revokeLink(caller: Caller, id: string): Promise<void> {
    await this.database.inCompany(caller.companyId, async (tx) => {
      const { record, version, ended } = await this.endLinks(tx, caller.companyId, id);
      if (ended > 0) await this.note(tx, caller, record, 'change-order.link-revoked', { version });
    });
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

  private async offer(tx: Tx, record: ChangeOrderRecord, mailTo: string | null | undefined): Promise<Offer> {
    if (record.state !== 'draft') throw notADraft(record);
    const offer = await this.changeOrders.draft(tx, record, { mailTo });
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
    const letterId = newLetterId();
    const row = {
      companyId,
      id: newId(),
      letterId,
      changeOrderId,
      version,
      tokenHash: hashSecret(token),
      createdAt: this.clock.now(),
      expiresAt,
    };
    await changeOrders.insertLink(tx, row);
    return `${this.publicUrl}/c/${letterId}#${token}`;
  }

  /** Every link that still works stops; answers how many did, and the version that stays sent, which has to be the one asked for. */
  private async endLinks(tx: Tx, companyId: string, id: string, asked?: number) {
    const record = await this.changeOrders.lock(tx, companyId, id);
    const { sentVersion: version, number } = record;
    if (version === null || (asked !== undefined && asked !== version)) throw noLink(number);
    const { count: ended } = await changeOrders.revokeLinks(tx, companyId, id, this.clock.now());
    return { record, version, ended };
  }

  private async note(
    tx: Tx,
    { companyId, actor }: Caller,
    { id, projectId }: ChangeOrderRecord,
    type: string,
    data: { version: number; expiresAt?: string; clientEmail?: string | null },
  ) {
    await this.records.append(tx, { companyId, projectId, actor, type, subjectId: id, data: { ...data } });
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

const noLink = (number: number): ProblemError =>
  new ProblemError(
    'wrong-state',
    `Change order ${number} is being edited, or this version of it no longer stands; it has no link. Send it first.`,
  );

const notADraft = ({ number, state }: ChangeOrderRecord): ProblemError =>
  new ProblemError(
    'wrong-state',
    state === 'sent'
      ? `Change order ${number} is with the client. Edit it to make a new version, or renew its link.`
      : state === 'setAside'
        ? `Change order ${number} was set aside. Put its findings into a new one.`
        : `Change order ${number} was ${toWord(state)}; an answer stands.`,
  );
