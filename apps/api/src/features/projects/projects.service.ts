import {
  type BodyOut,
  type Project,
  type ProjectOverview,
  type ProjectRow,
  type projectRoutes,
  type Todo,
  zoneOfSite,
  zonesOf,
} from '@underlath/contract';
import { editionFamilies } from '@underlath/rules';
import { checks } from '@underlath/rules/all-checks';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../../shared/client-ids.ts';
import { cutPage, type ListPage, newestFirst, readCursor } from '../../shared/paging.ts';
import { assertVersion } from '../../shared/versions.ts';
import { type ContractProject, type History, sumsOf } from '../contract/contract.service.ts';
import { undeliveredMails } from '../mail/sent-mails.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { fromDay, toProject, toSeverityCounts } from './projects.mapper.ts';
import * as projects from './projects.repository.ts';
import { type DueNotice, listTodo } from './todo.ts';

type NewProject = BodyOut<typeof projectRoutes.createProject>;
type ProjectChange = BodyOut<typeof projectRoutes.changeProject>;

/** Tells everything that made a project's contract what it is. */
export interface ContractHistory {
  history(tx: Tx, companyId: string, projectId: string): Promise<History>;
}

/** Findings of a project whose notice has not gone out. */
export interface DueNotices {
  due(tx: Tx, project: ContractProject, take: number): Promise<DueNotice[]>;
}

/** Writes how a new contract counts its days. */
export interface FirstTerms {
  begin(tx: Tx, caller: Caller, projectId: string, dayKind: 'calendar' | 'working'): Promise<void>;
}

/** Rows of each kind that the list of things to do looks at; a project with more shows the gravest. */
const todoRows = 200;
const aboutMoney: ReadonlySet<Todo['kind']> = new Set(['answer-question', 'mail-failed', 'mail-waiting']);

export class ProjectsService {
  constructor(
    private readonly database: Database,
    private readonly records: RecordsService,
    private readonly contract: ContractHistory,
    private readonly notices: DueNotices,
    private readonly terms: FirstTerms,
  ) {}

  /** A repeat with the same id and content answers the project that exists. @throws ProblemError `already-exists` */
  async create(caller: Caller, { id = newId(), ...content }: NewProject): Promise<Project> {
    const { dayKind, ...fields } = content;
    const { companyId, actor } = caller;
    return makeOnce(() =>
      this.database.inCompany(companyId, async (tx) => {
        const existing = await projects.findProject(tx, companyId, id);
        if (existing) {
          const made = await this.records.lastData(tx, companyId, id, 'project.created');
          assertSameContent('project', made?.contentSha256, content);
          return toProject(existing);
        }
        assertEditions(content.standardEditions);
        const kept = { ...fields, timeZone: siteZone(content) };
        const row = await projects.insertProject(tx, { companyId, id, ...kept, startOn: fromDay(kept.startOn) });
        await this.records.open(tx, companyId, id, actor);
        await this.records.append(tx, {
          companyId,
          projectId: id,
          actor,
          type: 'project.created',
          subjectId: id,
          data: { contentSha256: contentHash(content), ...kept },
        });
        if (dayKind) await this.terms.begin(tx, caller, id, dayKind);
        return toProject(row);
      }),
    );
  }

  async list(companyId: string, query: { q?: string; cursor?: string; limit: number }): Promise<ListPage<ProjectRow>> {
    const after = readCursor(newestFirst('projects'), query.cursor);
    const q = query.q?.trim() || undefined;
    return this.database.inCompany(companyId, async (tx) => {
      const rows = await projects.listProjects(tx, companyId, { q, after, take: query.limit + 1 });
      const ids = rows.slice(0, query.limit).map(({ id }) => id);
      const counts = await projects.countOpen(tx, companyId, ids);
      return cutPage(
        rows,
        query.limit,
        (row) => ({ ...toProject(row), open: toSeverityCounts(row.id, counts) }),
        ({ id, createdAt }) => ({ list: 'projects', at: createdAt.toISOString(), id }),
      );
    });
  }

  async get(companyId: string, id: string): Promise<Project> {
    return this.database.inCompany(companyId, async (tx) => toProject(await requireProject(tx, companyId, id)));
  }

  /** @throws ProblemError `not-found`, `stale-version`, `wrong-state` */
  async change(caller: Caller, id: string, seen: number, { startOn, ...given }: ProjectChange): Promise<Project> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      await this.records.lock(tx, companyId, id);
      const before = await requireProject(tx, companyId, id);
      assertVersion(seen, before.version);
      const change = { ...given, ...zoneChange(before, given) };
      assertEditions(change.standardEditions ?? []);
      await this.assertSumsStand(tx, companyId, id, before, change);
      const dates = startOn === undefined ? {} : { startOn: fromDay(startOn) };
      const row = await projects.updateProject(tx, companyId, id, { ...change, ...dates });
      const data = { ...change, ...(startOn !== undefined && { startOn }) };
      await this.records.append(tx, { companyId, projectId: id, actor, type: 'project.changed', subjectId: id, data });
      return toProject(row);
    });
  }

  /** Letters and what clients ask name addresses and prices: they wait on whom those are shown to. */
  async overview(companyId: string, id: string, showsMoney: boolean): Promise<ProjectOverview> {
    return this.database.inCompany(companyId, async (tx) => {
      const history = await this.contract.history(tx, companyId, id);
      const { photos: _photos, terms: _terms, changeOrders: _orders, entries: _entries, ...row } = history.project;
      const open = await projects.countOpen(tx, companyId, [id]);
      const todo = listTodo(
        await projects.listUnsettled(tx, companyId, id, todoRows),
        await projects.listAwaited(tx, companyId, id),
        await projects.listFailedPhotos(tx, companyId, id, todoRows),
        await this.notices.due(tx, history.project, todoRows),
        await undeliveredMails(tx, companyId, id, todoRows),
      );
      return {
        project: toProject(row),
        contract: sumsOf(history),
        open: toSeverityCounts(id, open),
        todo: todo.filter(({ kind }) => showsMoney || !aboutMoney.has(kind)),
        ...(await projects.countContents(tx, companyId, id)),
      };
    });
  }

  /** The original sum and days stand in every letter that was sent. */
  private async assertSumsStand(
    tx: Tx,
    companyId: string,
    id: string,
    before: { originalSumCents: number; originalDays: number },
    { originalSumCents, originalDays }: Pick<ProjectChange, 'originalSumCents' | 'originalDays'>,
  ): Promise<void> {
    const stays =
      (originalSumCents ?? before.originalSumCents) === before.originalSumCents &&
      (originalDays ?? before.originalDays) === before.originalDays;
    if (stays || (await projects.countSentOrders(tx, companyId, id)) === 0) return;
    throw new ProblemError(
      'wrong-state',
      'The original contract sum and days stand in a change order that was sent; write the difference as a change order.',
    );
  }
}

async function requireProject(tx: Tx, companyId: string, id: string): Promise<projects.ProjectRecord> {
  const row = await projects.findProject(tx, companyId, id);
  if (!row) throw notFound('project');
  return row;
}

/** @throws ProblemError `invalid-input` for a zone that the state does not have */
function siteZone({ siteState, timeZone }: Pick<projects.ProjectRecord, 'siteState' | 'timeZone'>): string | null {
  const zone = zoneOfSite(siteState, timeZone);
  if (timeZone === null || timeZone === zone) return zone;
  const known = zonesOf(siteState).map((one) => one.timeZone);
  const allowed = known.length > 0 ? `of ${siteState}, ${known.join(' or ')}` : 'none without a state';
  throw invalidInput('/timeZone', `timeZone: got "${timeZone}"; allowed is ${allowed}.`);
}

/** A site that moves to another state keeps its zone only where that state has it too. */
function zoneChange(before: projects.ProjectRecord, { siteState, timeZone }: ProjectChange) {
  if (siteState === undefined && timeZone === undefined) return {};
  const state = siteState === undefined ? before.siteState : siteState;
  return {
    timeZone: timeZone === undefined ? zoneOfSite(state, before.timeZone) : siteZone({ siteState: state, timeZone }),
  };
}

/** One edition of each document at most, and only those the checks have. @throws ProblemError `invalid-input` */
function assertEditions(chosen: readonly string[]): void {
  const families = editionFamilies(checks);
  const known = families.flatMap(({ editions }) => editions.map((edition) => edition.id));
  for (const [at, id] of chosen.entries()) {
    const family = families.find(({ editions }) => editions.some((edition) => edition.id === id));
    const isTaken = family?.editions.some((edition) => chosen.slice(0, at).includes(edition.id));
    if (family && !isTaken) continue;
    throw invalidInput(
      `/standardEditions/${at}`,
      `standardEditions.${at}: got "${id}"; allowed is one edition of each document, of ${known.join(', ')}.`,
    );
  }
}
