import type {
  BodyOut,
  ChangeOrder,
  ChangeOrderRow,
  changeOrderRoutes,
  DocumentPart,
  Question,
  Wording,
} from '@underlath/contract';
import { text } from '@underlath/rules';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { assertVersion } from '../../plugins/etag.ts';
import type { Caller } from '../caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../client-ids.ts';
import { toWord } from '../enum-words.ts';
import { type LettersService, subjectOf } from '../mail/letters.service.ts';
import { mailsOf } from '../mail/mail.mapper.ts';
import { namesOf } from '../member-names.ts';
import { canonicalJson } from '../records/record-hash.ts';
import type { RecordsService } from '../records/records.service.ts';
import { approvedOf, currentVersion, toChangeOrder, toQuestion, toRow, toWording } from './change-orders.mapper.ts';
import type { ChangeOrderRecord } from './change-orders.repository.ts';
import * as changeOrders from './change-orders.repository.ts';
import { checkMembers } from './members-check.ts';
import type { Offer, OfferBuilder } from './offer-builder.ts';
import { suggestDays } from './offer-days.ts';
import { startWording } from './offer-wording.ts';

type NewChangeOrder = BodyOut<typeof changeOrderRoutes.createChangeOrder>;
type Edit = BodyOut<typeof changeOrderRoutes.changeChangeOrder>;

/** Groups findings, words the letter, keeps it editable until it is answered. Every change takes the project's turn first, then this row. */
export class ChangeOrdersService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly offers: OfferBuilder,
    private readonly letters: LettersService,
  ) {}

  /** @throws ProblemError `not-found` */
  async list(companyId: string, projectId: string): Promise<ChangeOrderRow[]> {
    return this.database.inCompany(companyId, async (tx) => {
      if (!(await changeOrders.findProject(tx, companyId, projectId))) throw notFound('project');
      return this.rowsIn(tx, companyId, projectId);
    });
  }

  /** All of a project, newest first; the caller holds the transaction. */
  async rowsIn(tx: Tx, companyId: string, projectId: string): Promise<ChangeOrderRow[]> {
    const rows: ChangeOrderRow[] = [];
    for (const record of await changeOrders.listChangeOrders(tx, companyId, projectId)) {
      rows.push(toRow(record, await this.totalOf(tx, companyId, record)));
    }
    return rows;
  }

  /** @throws ProblemError `not-found` */
  async get(companyId: string, id: string): Promise<ChangeOrder> {
    return this.database.inCompany(companyId, (tx) => this.view(tx, companyId, id));
  }

  /** A repeat with the same id and content answers what exists. @throws ProblemError `invalid-input`, `already-exists` */
  async create(caller: Caller, projectId: string, { id = newId(), ...content }: NewChangeOrder): Promise<ChangeOrder> {
    const { companyId, actor } = caller;
    return makeOnce(() =>
      this.database.inCompany(companyId, async (tx) => {
        await this.records.lock(tx, companyId, projectId);
        if (await changeOrders.findChangeOrder(tx, companyId, id)) {
          const made = await this.records.lastData(tx, companyId, id, 'change-order.created');
          assertSameContent('change order', made?.contentSha256, content);
          return this.view(tx, companyId, id);
        }
        const { findingIds } = content;
        await checkMembers(tx, companyId, projectId, id, findingIds);
        const start = await this.start(tx, companyId, findingIds, content.days);
        const number = await changeOrders.nextNumber(tx, companyId, projectId);
        const row = {
          companyId,
          id,
          projectId,
          number,
          ...start,
          createdById: caller.memberId,
          createdAt: this.clock.now(),
        };
        await changeOrders.insertChangeOrder(tx, row, findingIds);
        const data = { contentSha256: contentHash(content), number, findingIds, days: start.days };
        await this.records.append(tx, {
          companyId,
          projectId,
          actor,
          type: 'change-order.created',
          subjectId: id,
          data,
        });
        return this.view(tx, companyId, id);
      }),
    );
  }

  /**
   * Edits; what was sent becomes a draft again and its link dies in the same transaction.
   * @throws ProblemError `not-found`, `stale-version`, `wrong-state`, `invalid-input`
   */
  async change(caller: Caller, id: string, seen: number, edit: Edit): Promise<ChangeOrder> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const record = await this.lock(tx, companyId, id);
      assertVersion(seen, record.version);
      if (record.state !== 'draft' && record.state !== 'sent') throw answered(record);
      if (Object.keys(edit).length === 0) return this.view(tx, companyId, id);
      if (record.state === 'sent') await this.reopen(tx, caller, record);
      const members = record.findings.map(({ findingId }) => findingId);
      if (edit.findingIds) {
        await checkMembers(tx, companyId, record.projectId, id, edit.findingIds);
        await changeOrders.replaceMemberships(tx, companyId, id, edit.findingIds);
      }
      const next = await this.edited(tx, companyId, record, members, edit);
      await changeOrders.updateChangeOrder(tx, companyId, id, { ...next, state: 'draft', sentVersion: null });
      const data = { ...edit, days: next.days };
      await this.records.append(tx, {
        companyId,
        projectId: record.projectId,
        actor,
        type: 'change-order.changed',
        subjectId: id,
        data,
      });
      return this.view(tx, companyId, id);
    });
  }

  /** @throws ProblemError `not-found`, `wrong-state` when it was answered already */
  async answer(caller: Caller, id: string, questionId: string, answer: string): Promise<Question> {
    const { companyId, actor, memberId } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const { projectId, versions } = await this.lock(tx, companyId, id);
      const question = await changeOrders.findQuestion(tx, companyId, id, questionId);
      if (!question) throw notFound('question');
      if (question.answeredAt)
        throw new ProblemError('wrong-state', 'This question has been answered; the answer stays as it is.');
      const data = { answer, answeredAt: this.clock.now(), answeredById: memberId };
      const row = await changeOrders.answerQuestion(tx, companyId, questionId, data);
      await this.records.append(tx, {
        companyId,
        projectId,
        actor,
        type: 'question.answered',
        subjectId: id,
        data: { questionId, answer },
      });
      const sent = versions.find(({ version }) => version === row.version);
      if (sent) await this.letters.answer(tx, subjectOf(projectId, sent), { ...row, answer, answeredBy: actor.name });
      return toQuestion(row);
    });
  }

  /** Takes the project's turn, then the change order's row. @throws ProblemError `not-found` */
  async lock(tx: Tx, companyId: string, id: string): Promise<ChangeOrderRecord> {
    const found = await changeOrders.findChangeOrder(tx, companyId, id);
    if (!found) throw notFound('change order');
    await this.records.lock(tx, companyId, found.projectId);
    const record = await changeOrders.lockChangeOrder(tx, companyId, id);
    if (!record) throw notFound('change order');
    return record;
  }

  /** As the office sees it; the caller holds the transaction. @throws ProblemError `not-found` */
  async view(tx: Tx, companyId: string, id: string): Promise<ChangeOrder> {
    const record = await changeOrders.findChangeOrder(tx, companyId, id);
    if (!record) throw notFound('change order');
    const names = await namesOf(
      tx,
      companyId,
      record.versions.map(({ sentById }) => sentById),
    );
    const sent = currentVersion(record);
    const { draft, blocks, conflicts, review } = sent
      ? { draft: approvedOf(sent), blocks: [], conflicts: [], review: null }
      : await this.draft(tx, companyId, record);
    const mails = await mailsOf(tx, companyId, id);
    return toChangeOrder(record, { draft, blocks, conflicts, review, names, mails, now: this.clock.now() });
  }

  /** What would be sent now, to the address given or else the project's own. */
  draft(tx: Tx, companyId: string, record: ChangeOrderRecord, mailTo?: string | null) {
    return this.offers.build(tx, {
      companyId,
      changeOrderId: record.id,
      projectId: record.projectId,
      number: record.number,
      version: (record.versions[0]?.version ?? 0) + 1,
      findingIds: record.findings.map(({ findingId }) => findingId),
      wording: toWording(record),
      days: record.days,
      mailTo,
    });
  }

  /** What the offer comes to when single findings are left out. @throws ProblemError `invalid-input` */
  parts(tx: Tx, companyId: string, { projectId }: ChangeOrderRecord, offer: Offer): Promise<DocumentPart[]> {
    return this.offers.parts(tx, { companyId, projectId }, offer);
  }

  private async totalOf(tx: Tx, companyId: string, record: ChangeOrderRecord): Promise<number> {
    if (record.sentVersion !== null) return record.totalCents;
    const { scope } = await this.offers.scope(
      tx,
      companyId,
      record.findings.map(({ findingId }) => findingId),
    );
    return scope.totalCents;
  }

  private async start(tx: Tx, companyId: string, findingIds: readonly string[], days: number | undefined) {
    const { items, scope, time } = await this.offers.scope(tx, companyId, findingIds);
    const suggested = suggestDays(scope.hours, time);
    const wording = startWording(items, days === undefined ? suggested.reason : text('', ''));
    return { wording, days: days ?? suggested.days };
  }

  /** Words and days that nobody touched follow the findings; edited ones stay. */
  private async edited(tx: Tx, companyId: string, record: ChangeOrderRecord, members: string[], edit: Edit) {
    const wording: Wording = edit.wording ?? toWording(record);
    const days = edit.days ?? record.days;
    if (!edit.findingIds || edit.wording) return { wording, days };
    const before = await this.start(tx, companyId, members, undefined);
    const untouched = canonicalJson(before) === canonicalJson({ wording: toWording(record), days: record.days });
    return untouched ? this.start(tx, companyId, edit.findingIds, edit.days) : { wording, days };
  }

  private async reopen(
    tx: Tx,
    { companyId, actor }: Caller,
    { id, projectId, sentVersion, findings }: ChangeOrderRecord,
  ) {
    await changeOrders.revokeLinks(tx, companyId, id, this.clock.now());
    const ids = findings.map(({ findingId }) => findingId);
    await changeOrders.moveFindings(tx, companyId, ids, ['offered'], 'priced');
    const data = { version: sentVersion };
    await this.records.append(tx, { companyId, projectId, actor, type: 'change-order.reopened', subjectId: id, data });
  }
}

const answered = ({ number, state }: ChangeOrderRecord): ProblemError =>
  new ProblemError(
    'wrong-state',
    `Change order ${number} was ${toWord(state)}; an answer stands. Put what comes next into a new change order.`,
  );
