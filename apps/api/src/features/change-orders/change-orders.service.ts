import type {
  BodyOut,
  ChangeOrder,
  ChangeOrderRow,
  changeOrderRoutes,
  DocumentPart,
  DraftEdit,
  DraftField,
  Question,
} from '@underlath/contract';
import { composeWords, editDraft, type KeptDraft, markStale, newDraft } from '@underlath/rules/offers';
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
import type { History } from '../contract/contract.service.ts';
import { type LettersService, subjectOf } from '../mail/letters.service.ts';
import { mailsOf } from '../mail/sent-mails.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import {
  currentVersion,
  keptDraftOf,
  memberIds,
  type Shown,
  toChangeOrder,
  toQuestion,
  toRow,
} from './change-orders.mapper.ts';
import type { ChangeOrderRecord } from './change-orders.repository.ts';
import * as changeOrders from './change-orders.repository.ts';
import { assertMembers } from './members-check.ts';
import type { Offer, OfferBuilder, OfferSources } from './offer-builder.ts';
import { approvedOf } from './sent-document.mapper.ts';

/** Of what was sent: it is not edited. */
const NOTHING_TO_MEND = { blocks: [], marks: [], missingSpanish: [], conflicts: [], review: null };

type NewChangeOrder = BodyOut<typeof changeOrderRoutes.createChangeOrder>;

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
      const rows = await this.rowsIn(tx, companyId, projectId);
      // Only an empty list needs to know whether there is such a project at all.
      if (rows.length === 0 && !(await this.records.exists(tx, companyId, projectId))) throw notFound('project');
      return rows;
    });
  }

  /** All of a project, newest first, drafts as they would be sent now; the caller holds the transaction. */
  async rowsIn(tx: Tx, companyId: string, projectId: string, history?: History): Promise<ChangeOrderRow[]> {
    const records = await changeOrders.listChangeOrders(tx, companyId, projectId);
    const members = records.flatMap((record) => (record.state === 'draft' ? memberIds(record) : []));
    const sources =
      members.length > 0 ? await this.offers.sources(tx, companyId, projectId, members, history) : undefined;
    return records.map((record) => {
      const kept = keptDraftOf(record);
      if (record.state !== 'draft' || !sources) return toRow(record, { ...kept, totalCents: record.totalCents });
      const { price, fromFindings } = this.offers.scope(sources, memberIds(record), kept);
      return toRow(record, { ...composeWords(kept, fromFindings), totalCents: price.scope.totalCents });
    });
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
        const known = await changeOrders.findChangeOrder(tx, companyId, id);
        if (known) {
          const made = await this.records.lastData(tx, companyId, id, 'change-order.created');
          assertSameContent('change order', made?.contentSha256, content);
          return this.show(tx, known);
        }
        const { findingIds } = content;
        const sources = await this.offers.sources(tx, companyId, projectId, findingIds);
        await this.assertMembers(tx, sources, id, findingIds);
        const typed: DraftField[] = content.days === undefined ? [] : ['days'];
        const { fromFindings } = this.offers.scope(sources, findingIds, newDraft(typed));
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
        return this.view(tx, companyId, id, sources);
      }),
    );
  }

  /**
   * Edits; what was sent becomes a draft again and its link dies in the same transaction.
   * @throws ProblemError `not-found`, `stale-version`, `wrong-state`, `invalid-input`
   */
  async change(caller: Caller, id: string, seen: number, edit: DraftEdit): Promise<ChangeOrder> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const record = await this.lock(tx, companyId, id);
      assertVersion(seen, record.version);
      const { projectId, state } = record;
      if (state !== 'draft' && state !== 'sent') throw answered(record);
      if (Object.keys(edit).length === 0) return this.show(tx, record);
      if (state === 'sent') await this.reopen(tx, caller, record);
      const members = [...memberIds(record), ...(edit.findingIds ?? [])];
      const sources = await this.offers.sources(tx, companyId, projectId, members);
      if (edit.findingIds) {
        await this.assertMembers(tx, sources, id, edit.findingIds);
        await changeOrders.replaceMemberships(tx, companyId, id, edit.findingIds);
      }
      const next = this.edited(sources, record, edit);
      await changeOrders.updateDraft(tx, companyId, id, next);
      const data = { ...edit, days: next.days, wordingSha256: hashOf(next.wording) };
      await this.records.append(tx, {
        companyId,
        projectId,
        actor,
        type: 'change-order.changed',
        subjectId: id,
        data,
      });
      return this.view(tx, companyId, id, sources);
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
      if (record.state === 'setAside') return this.show(tx, record);
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
      const { project, versions } = await this.lock(tx, companyId, id);
      const question = await changeOrders.findQuestion(tx, companyId, id, questionId);
      if (!question) throw notFound('question');
      await assertEmailConfirmed(tx, companyId, memberId);
      if (question.answeredAt)
        throw new ProblemError('wrong-state', 'This question has been answered; the answer stays as it is.');
      const data = { answer, answeredAt: this.clock.now(), answeredById: memberId };
      const row = await changeOrders.answerQuestion(tx, companyId, questionId, data);
      await this.records.append(tx, {
        companyId,
        projectId: project.id,
        actor,
        type: 'question.answered',
        subjectId: id,
        data: { questionId, answer },
      });
      const sent = versions.find(({ version }) => version === row.version);
      if (sent) await this.letters.answer(tx, subjectOf(project, sent), { ...row, answer, answeredBy: actor.name });
      return toQuestion(row);
    });
  }

  /** Takes the project's turn, in which every change of its change orders is made. @throws ProblemError `not-found` */
  async lock(tx: Tx, companyId: string, id: string): Promise<ChangeOrderRecord> {
    await this.records.lockOf(tx, companyId, 'change_order', id);
    return requireOrder(tx, companyId, id);
  }

  /** As the office sees it; the caller holds the transaction. @throws ProblemError `not-found` */
  async view(tx: Tx, companyId: string, id: string, sources?: OfferSources): Promise<ChangeOrder> {
    return this.show(tx, await requireOrder(tx, companyId, id), sources);
  }

  /** @param sources where they were read in this transaction; what is done to a change order short of its approval moves nothing of them */
  private async show(tx: Tx, record: ChangeOrderRecord, sources?: OfferSources): Promise<ChangeOrder> {
    const { companyId, versions } = record;
    const names = await namesOf(
      tx,
      companyId,
      versions.map(({ sentById }) => sentById),
    );
    const shown = await this.shown(tx, record, sources);
    const mails = await mailsOf(tx, companyId, record.id);
    return toChangeOrder(record, { ...shown, names, mails, now: this.clock.now() });
  }

  private async shown(tx: Tx, record: ChangeOrderRecord, sources?: OfferSources): Promise<Shown> {
    const sent = currentVersion(record);
    if (!sent) return this.draft(tx, record, { sources });
    const draft = approvedOf(sent);
    if (record.state !== 'sent') return { ...NOTHING_TO_MEND, draft };
    // While it waits, with the contract as it stands now and not as it was when it was sent.
    const history = sources?.history ?? (await this.offers.history(tx, record));
    const change = { cents: draft.contract.thisChangeCents, days: draft.days };
    return { ...NOTHING_TO_MEND, draft: { ...draft, contract: this.offers.effect(history, change) } };
  }

  /** What would be sent now, to the address given or else the project's own. */
  async draft(
    tx: Tx,
    record: ChangeOrderRecord,
    { sources, mailTo }: { sources?: OfferSources | undefined; mailTo?: string | null | undefined } = {},
  ): Promise<Offer> {
    const { companyId, projectId } = record;
    const findingIds = memberIds(record);
    const read = sources ?? (await this.offers.sources(tx, companyId, projectId, findingIds));
    return this.offers.build(tx, read, {
      changeOrderId: record.id,
      number: record.number,
      version: (record.versions[0]?.version ?? 0) + 1,
      findingIds,
      kept: keptDraftOf(record),
      questions: record.questions
        .map(toQuestion)
        .map(({ name, text, askedAt, answer, answeredAt }) => ({ name, text, askedAt, answer, answeredAt })),
      mailTo,
    });
  }

  /** What the offer comes to when single findings are left out. @throws ProblemError `invalid-input` */
  parts(offer: Offer): DocumentPart[] {
    return this.offers.parts(offer);
  }

  /** @throws ProblemError `invalid-input` */
  private async assertMembers(tx: Tx, sources: OfferSources, id: string, findingIds: readonly string[]) {
    const elsewhere = await changeOrders.findOpenMemberships(tx, sources.companyId, findingIds, id);
    assertMembers(findingIds, sources.findings, elsewhere);
  }

  /** What is kept after an edit. Words and days that nobody typed follow the findings; typed ones that may be stale are marked. */
  private edited(sources: OfferSources, record: ChangeOrderRecord, edit: DraftEdit): KeptDraft {
    const before = keptDraftOf(record);
    const was = this.offers.scope(sources, memberIds(record), before);
    const kept = editDraft(before, composeWords(before, was.fromFindings), edit);
    const now = this.offers.scope(sources, edit.findingIds ?? memberIds(record), kept);
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

async function requireOrder(tx: Tx, companyId: string, id: string): Promise<ChangeOrderRecord> {
  const record = await changeOrders.findChangeOrder(tx, companyId, id);
  if (!record) throw notFound('change order');
  return record;
}

const answered = ({ number, state }: ChangeOrderRecord): ProblemError =>
  new ProblemError(
    'wrong-state',
    `Change order ${number} was ${toWord(state)}; an answer stands. Put what comes next into a new change order.`,
  );
