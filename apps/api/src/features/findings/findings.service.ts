import type { BodyOut, Finding, FindingRow, findingRoutes, Locale, QueryOut } from '@underlath/contract';
import { findCheck } from '@underlath/rules/all-checks';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { toJsonOrNull } from '../../platform/database/json.ts';
import { newId } from '../../platform/ids.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../../shared/client-ids.ts';
import { cutPage, type ListPage, newestFirst, readCursor } from '../../shared/paging.ts';
import { readExtent } from '../../shared/stored/stored-columns.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { PhotosService } from '../photos/photos.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { assertInside, assertMove, assertSeen } from './finding-rules.ts';
import { toFinding, toFindingRow } from './findings.mapper.ts';
import * as findings from './findings.repository.ts';
import type { JudgingService } from './judging.service.ts';

type NewFinding = BodyOut<typeof findingRoutes.createFinding>;
type FindingChange = BodyOut<typeof findingRoutes.changeFinding>;
type Measured = BodyOut<typeof findingRoutes.judgeFinding>;
type Move = BodyOut<typeof findingRoutes.moveFinding>;

export class FindingsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly photos: PhotosService,
    private readonly judging: JudgingService,
  ) {}

  async list(
    companyId: string,
    projectId: string,
    query: QueryOut<typeof findingRoutes.listFindings>,
  ): Promise<ListPage<FindingRow>> {
    const { cursor, limit, q, ...filter } = query;
    const after = readCursor(newestFirst('findings'), cursor);
    const wanted = { ...filter, q: q?.trim() || undefined, after, take: limit + 1 };
    const rows = await this.database.inCompanySql(companyId, (client) =>
      findings.listFindings(client, companyId, projectId, wanted),
    );
    // Only an empty page needs to know whether there is such a project at all.
    if (rows.length === 0) await this.assertProject(companyId, projectId);
    return cutPage(rows, limit, toFindingRow, ({ createdAt, id }) => ({
      list: 'findings',
      at: createdAt.toISOString(),
      id,
    }));
  }

  async get(companyId: string, id: string, locale: Locale): Promise<Finding> {
    return this.database.inCompany(companyId, (tx) => this.read(tx, companyId, id, locale));
  }

  /** Records and judges at once. A repeat with the same id and content answers what exists. @throws ProblemError */
  async create(caller: Caller, projectId: string, body: NewFinding, locale: Locale): Promise<Finding> {
    const { id = newId(), ...content } = body;
    const check = findCheck(content.checkId);
    if (!check) throw invalidInput('/checkId', `checkId: there is no check "${content.checkId}".`);
    assertSeen(new Date(content.seenAt), this.clock.now());
    const asked = { projectId, ...content };
    const { companyId } = caller;
    return makeOnce(() =>
      this.database.inCompany(companyId, async (tx) => {
        await this.records.lock(tx, companyId, projectId);
        if (await findings.findFinding(tx, companyId, id)) {
          const made = await this.records.lastData(tx, companyId, id, 'finding.noted');
          assertSameContent('finding', made?.contentSha256, asked);
          return this.read(tx, companyId, id, locale);
        }
        const place = await requirePlace(tx, companyId, projectId, content.locationId, content.extent);
        await this.note(tx, caller, projectId, id, { ...content, title: content.title ?? check.title.en }, asked);
        const { checkId, inputs, edition, context } = content;
        const noted = { id, projectId, checkId, state: 'noted' as const, place, judgmentCount: 0 };
        await this.judging.judge(tx, caller, noted, { inputs, edition, context }, locale);
        return this.read(tx, companyId, id, locale);
      }),
    );
  }

  private async note(
    tx: Tx,
    { companyId, memberId, actor }: Caller,
    projectId: string,
    id: string,
    content: Omit<NewFinding, 'id'> & { title: string },
    asked: unknown,
  ): Promise<void> {
    const { locationId, checkId, title, note, extent, seenAt, photoIds } = content;
    await assertPhotos(tx, companyId, projectId, photoIds);
    const number = await findings.nextNumber(tx, companyId, projectId);
    const about = { locationId, number, checkId, title, note, seenAt };
    await findings.insertFinding(tx, {
      companyId,
      id,
      projectId,
      ...about,
      extent: toJsonOrNull(extent),
      createdById: memberId,
    });
    await findings.linkPhotos(tx, companyId, id, photoIds);
    const data = { contentSha256: contentHash(asked), ...about, extent, photoIds };
    await this.records.append(tx, { companyId, projectId, actor, type: 'finding.noted', subjectId: id, data });
  }

  /** Adds a judgment; the earlier ones stay. @throws ProblemError `not-found`, `invalid-input`, `wrong-state` */
  async judge(caller: Caller, id: string, measured: Measured, locale: Locale): Promise<Finding> {
    return this.database.inCompany(caller.companyId, async (tx) => {
      const { companyId } = caller;
      const { projectId, checkId, state, locationId } = await this.take(tx, companyId, id);
      const place = await requirePlace(tx, companyId, projectId, locationId);
      const judgmentCount = await findings.countJudgments(tx, companyId, id);
      await this.judging.judge(tx, caller, { id, projectId, checkId, state, place, judgmentCount }, measured, locale);
      return this.read(tx, caller.companyId, id, locale);
    });
  }

  /** @throws ProblemError `not-found`, `stale-version`, `invalid-input` */
  async change(caller: Caller, id: string, seen: number, change: FindingChange, locale: Locale): Promise<Finding> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const { projectId, ...before } = await this.take(tx, companyId, id, seen);
      const { extent, ...rest } = change;
      const standing = extent === undefined ? readExtent(id, before.extent) : extent;
      await requirePlace(tx, companyId, projectId, change.locationId ?? before.locationId, standing);
      const data = { ...rest, ...(extent !== undefined && { extent: toJsonOrNull(extent) }) };
      await findings.updateFinding(tx, companyId, id, data);
      const entry = { companyId, projectId, actor, subjectId: id };
      await this.records.append(tx, { ...entry, type: 'finding.changed', data: { ...change } });
      return this.read(tx, companyId, id, locale);
    });
  }

  /** Photos that are there already stay as they are. @throws ProblemError `not-found`, `invalid-input` */
  async attachPhotos(caller: Caller, id: string, photoIds: string[], locale: Locale): Promise<Finding> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const { projectId } = await this.take(tx, companyId, id);
      await assertPhotos(tx, companyId, projectId, photoIds);
      const added = await findings.linkPhotos(tx, companyId, id, photoIds);
      const entry = { companyId, projectId, actor, subjectId: id };
      if (added.length > 0) {
        await this.records.append(tx, { ...entry, type: 'finding.photos-added', data: { photoIds: added } });
      }
      return this.read(tx, companyId, id, locale);
    });
  }

  /** @throws ProblemError `not-found`, `stale-version`, `wrong-state`, `invalid-input` */
  async move(caller: Caller, id: string, seen: number, { state, reason }: Move, locale: Locale): Promise<Finding> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const finding = await this.take(tx, companyId, id, seen);
      assertMove(finding.state, state);
      if (state === 'withdrawn') await assertWithdrawal(tx, companyId, id, reason);
      const judgments = await findings.listJudgments(tx, companyId, id);
      if (state === 'proven') await this.assertProof(tx, companyId, id, judgments);
      await findings.updateFinding(tx, companyId, id, { state, stateReason: reason || null });
      const entry = { companyId, projectId: finding.projectId, actor, subjectId: id };
      // How many judgments there were tells later which of them came after the repair, whatever the clocks say.
      const data = { from: finding.state, reason, judgments: judgments.length };
      await this.records.append(tx, { ...entry, type: `finding.${state}`, data });
      return this.read(tx, companyId, id, locale);
    });
  }

  private async assertProof(tx: Tx, companyId: string, id: string, judgments: findings.JudgmentRow[]): Promise<void> {
    const repaired = await this.records.lastData(tx, companyId, id, 'finding.repaired');
    const newest = judgments.at(-1);
    if (!newest || judgments.length <= Number(repaired?.judgments) || newest.verdict !== 'meets') {
      throw new ProblemError(
        'wrong-state',
        'Measure it again after the repair: the newest measurement must meet the rule.',
      );
    }
    const photos = await this.photos.ofFinding(tx, companyId, id);
    if (!photos.some(({ stage }) => stage === 'before-cover')) {
      throw new ProblemError(
        'wrong-state',
        'Add a photo with the stage "before cover" first; it is the proof that stays.',
      );
    }
  }

  /** The finding as it is now, with the project's turn taken. */
  private async take(tx: Tx, companyId: string, id: string, seen?: number): Promise<findings.FindingRowData> {
    await this.records.lockOf(tx, companyId, 'finding', id);
    const finding = await findings.findFinding(tx, companyId, id);
    if (!finding) throw notFound('finding');
    if (seen !== undefined) assertVersion(seen, finding.version);
    return finding;
  }

  private async read(tx: Tx, companyId: string, id: string, locale: Locale): Promise<Finding> {
    const row = await findings.findFinding(tx, companyId, id);
    if (!row) throw notFound('finding');
    const photos = await this.photos.ofFinding(tx, companyId, id);
    return toFinding(row, photos, await findings.listJudgments(tx, companyId, id), locale);
  }

  private async assertProject(companyId: string, projectId: string): Promise<void> {
    const exists = await this.database.inCompany(companyId, (tx) => this.records.exists(tx, companyId, projectId));
    if (!exists) throw notFound('project');
  }
}

/** @throws ProblemError `invalid-input` for a place of elsewhere, or a rectangle that leaves it */
async function requirePlace(
  tx: Tx,
  companyId: string,
  projectId: string,
  locationId: string,
  extent?: FindingChange['extent'],
): Promise<findings.PlaceRow> {
  const place = await findings.findPlace(tx, companyId, projectId, locationId);
  if (!place) throw invalidInput('/locationId', `locationId: there is no place ${locationId} in this project.`);
  assertInside(extent, place);
  return place;
}

async function assertPhotos(tx: Tx, companyId: string, projectId: string, photoIds: string[]): Promise<void> {
  const known = await findings.findPhotoIds(tx, companyId, projectId, photoIds);
  const at = photoIds.findIndex((id) => !known.has(id));
  if (at < 0) return;
  throw invalidInput(`/photoIds/${at}`, `photoIds: there is no photo ${photoIds[at]} in this project.`);
}

async function assertWithdrawal(tx: Tx, companyId: string, id: string, reason: string): Promise<void> {
  if (reason === '') throw invalidInput('/reason', 'reason: say why the finding is withdrawn; it stays in the record.');
  const order = await findings.findOpenOrder(tx, companyId, id);
  if (!order) return;
  throw new ProblemError('wrong-state', `The finding is in change order ${order.number}; take it out of there first.`);
}
