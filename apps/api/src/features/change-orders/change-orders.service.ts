import type {
  BodyOut,
  ChangeOrder,
  ChangeOrderRow,
  changeOrderRoutes,
  DocumentPart,
  DraftField,
  Question,
} from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { hashOf } from '../../platform/hash.ts';
import { newId } from '../../platform/ids.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../../shared/client-ids.ts';
import { assertEmailConfirmed } from '../../shared/confirmed-email.ts';
import { toWord } from '../../shared/enum-words.ts';
import { namesOf } from '../../shared/members.ts';
import { assertVersion } from '../../shared/versions.ts';
import { type LettersService, subjectOf } from '../mail/letters.service.ts';
import { mailsOf } from '../mail/sent-mails.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { approvedOf, currentVersion, memberIds, toChangeOrder, toQuestion, toRow } from './change-orders.mapper.ts';
import type { ChangeOrderRecord } from './change-orders.repository.ts';
import * as changeOrders from './change-orders.repository.ts';
import { composeWords, editDraft, type KeptDraft, keptDraftOf, markStale, newDraft } from './draft-words.ts';
import { checkMembers } from './members-check.ts';
import type { Offer, OfferBuilder } from './offer-builder.ts';
import type { DraftDocument } from './offer-document.ts';

/** Of what was sent: it is not edited. */
const NOTHING_TO_MEND = { blocks: [], marks: [], missingSpanish: [], conflicts: [], review: null };

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
      rows.push(await this.row(tx, companyId, record));
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
        const typed: DraftField[] = content.days === undefined ? [] : ['days'];
        const { fromFindings } = await this.offers.scope(tx, companyId, findingIds, newDraft(typed));
        const { wording } = fromFindings;
        const days = content.days ?? fromFindings.days;
        const number = await changeOrders.nextNumber(tx, companyId, projectId);
        const row = {
          companyId,
          id,
          projectId,
          number,
          ...{ wording, days, typed },
          createdById: caller.memberId,
          createdAt: this.clock.now(),
        };
        await changeOrders.insertChangeOrder(tx, row, findingIds);
        const wordingSha256 = hashOf(wording);
        const data = { contentSha256: contentHash(content), number, findingIds, days, wordingSha256 };
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
      const next = await this.edited(tx, companyId, record, edit);
      if (edit.findingIds) {
        await checkMembers(tx, companyId, record.projectId, id, edit.findingIds);
        await changeOrders.replaceMemberships(tx, companyId, id, edit.findingIds);
      }
      await changeOrders.updateDraft(tx, companyId, id, next);
      const data = { ...edit, days: next.days, wordingSha256: hashOf(next.wording) };
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

  /**
   * Throws a draft away, or sets aside what was sent and waits: its link ends and its findings can be offered again. The
   * row stays, so that its number is not used twice. Set aside twice is set aside.
   * @throws ProblemError `not-found`, `stale-version`, `wrong-state`
   */
  async setAside(caller: Caller, id: string, seen: number): Promise<ChangeOrder> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const record = await this.lock(tx, companyId, id);
      if (record.state === 'setAside') return this.view(tx, companyId, id);
      assertVersion(seen, record.version);
      const { projectId, state, number, sentVersion } = record;
      if (state !== 'draft' && state !== 'sent') throw answered(record);
      await changeOrders.revokeLinks(tx, companyId, id, this.clock.now());
      const findingIds = memberIds(record);
      await changeOrders.moveFindings(tx, companyId, findingIds, ['offered'], 'priced');
      await changeOrders.updateChangeOrder(tx, companyId, id, { state: 'setAside' });
      const data = { number, findingIds, sentVersion };
      await this.records.append(tx, {
        companyId,
        projectId,
        actor,
        type: 'change-order.set-aside',
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
      await assertEmailConfirmed(tx, companyId, memberId);
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
    const shown = sent
      ? { ...NOTHING_TO_MEND, draft: await this.standing(tx, record, approvedOf(sent)) }
      : await this.draft(tx, companyId, record);
    const mails = await mailsOf(tx, companyId, id);
    return toChangeOrder(record, { ...shown, names, mails, now: this.clock.now() });
  }

  /** While it waits, with the contract as it stands now and not as it was when it was sent. */
  private async standing(tx: Tx, { companyId, projectId, state }: ChangeOrderRecord, sent: DraftDocument) {
    if (state !== 'sent') return sent;
    const { contract, days } = sent;
    return {
      ...sent,
      contract: await this.offers.effect(tx, { companyId, projectId }, { cents: contract.thisChangeCents, days }),
    };
  }

  /** What would be sent now, to the address given or else the project's own. */
  draft(tx: Tx, companyId: string, record: ChangeOrderRecord, mailTo?: string | null) {
    return this.offers.build(tx, {
      companyId,
      changeOrderId: record.id,
      projectId: record.projectId,
      number: record.number,
      version: (record.versions[0]?.version ?? 0) + 1,
      findingIds: memberIds(record),
      kept: keptDraftOf(record),
      questions: record.questions
        .map(toQuestion)
        .map(({ name, text, askedAt, answer, answeredAt }) => ({ name, text, askedAt, answer, answeredAt })),
      mailTo,
    });
  }

  /** What the offer comes to when single findings are left out. @throws ProblemError `invalid-input` */
  parts(tx: Tx, companyId: string, { projectId }: ChangeOrderRecord, offer: Offer): Promise<DocumentPart[]> {
    return this.offers.parts(tx, { companyId, projectId }, offer);
  }

  /** A list's row: a draft as it would be sent now, the rest as it was sent. */
  private async row(tx: Tx, companyId: string, record: ChangeOrderRecord): Promise<ChangeOrderRow> {
    if (record.state !== 'draft') return toRow(record, record);
    const kept = keptDraftOf(record);
    const { scope, fromFindings } = await this.offers.scope(tx, companyId, memberIds(record), kept);
    return toRow(record, { ...composeWords(kept, fromFindings), totalCents: scope.totalCents });
  }

  /** What is kept after an edit. Words and days that nobody typed follow the findings; typed ones that may be stale are marked. */
  private async edited(tx: Tx, companyId: string, record: ChangeOrderRecord, edit: Edit): Promise<KeptDraft> {
    const before = keptDraftOf(record);
    const was = await this.offers.scope(tx, companyId, memberIds(record), before);
    const kept = editDraft(before, composeWords(before, was.fromFindings), edit);
    const now = await this.offers.scope(tx, companyId, edit.findingIds ?? memberIds(record), kept);
    const marks = edit.findingIds ? markStale(kept, was.items, now.items, edit) : kept.marks;
    return { ...kept, ...composeWords(kept, now.fromFindings), marks };
  }

  private async reopen(tx: Tx, { companyId, actor }: Caller, record: ChangeOrderRecord) {
    const { id, projectId, sentVersion } = record;
    await changeOrders.revokeLinks(tx, companyId, id, this.clock.now());
    await changeOrders.moveFindings(tx, companyId, memberIds(record), ['offered'], 'priced');
    const data = { version: sentVersion };
    await this.records.append(tx, { companyId, projectId, actor, type: 'change-order.reopened', subjectId: id, data });
  }
}

const answered = ({ number, state }: ChangeOrderRecord): ProblemError =>
  new ProblemError(
    'wrong-state',
    `Change order ${number} was ${toWord(state)}; an answer stands. Put what comes next into a new change order.`,
  );
