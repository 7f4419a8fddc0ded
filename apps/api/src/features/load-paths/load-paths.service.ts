import type {
  BodyOut,
  CapacityProposal,
  FieldProblem,
  KeptSegment,
  LoadPathAnswer,
  loadPathRoutes,
  StoredLoadPath,
} from '@underlath/contract';
import {
  evaluateLoadPath,
  type LoadPath,
  LoadPathError,
  type Locale,
  type Outcome,
  toLoadPathAnswer,
} from '@underlath/rules';
import type { Prisma } from '../../generated/prisma/client.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { assertVersion } from '../../plugins/etag.ts';
import type { Caller } from '../caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../client-ids.ts';
import { toEnum, toWord } from '../enum-words.ts';
import type { RecordsService } from '../records/records.service.ts';
import { refusedInputs } from '../refused-inputs.ts';
import { proposalsOf, samplingOf } from './from-checks.ts';
import { findingIdsOf, keptFaults, type LinkFinding, pathNow, photoIdsOf } from './kept-load-path.ts';
import type { FindingRow, LoadPathRow, PlaceRow } from './load-paths.repository.ts';
import * as paths from './load-paths.repository.ts';

type LoadPathBody = BodyOut<typeof loadPathRoutes.evaluateLoadPath>;
type NewPath = BodyOut<typeof loadPathRoutes.createLoadPath>;
type PathChange = BodyOut<typeof loadPathRoutes.changeLoadPath>;
type Kept = Omit<NewPath, 'id'>;

/** What lines of a house are worth, by the rules package: of lines described in a request, and of those kept with a place. */
export class LoadPathsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
  ) {}

  /** Keeps nothing. @throws ProblemError `invalid-input` with a pointer for each thing that cannot be */
  evaluate(body: LoadPathBody, locale: Locale): LoadPathAnswer {
    return worthOf(body, locale);
  }

  /** @throws ProblemError `not-found` */
  async list(companyId: string, locationId: string, locale: Locale): Promise<{ items: StoredLoadPath[] }> {
    return this.database.inCompany(companyId, async (tx) => {
      const place = await requirePlace(tx, companyId, locationId);
      const rows = await paths.listLoadPaths(tx, companyId, locationId);
      const findings = await findingsOf(tx, companyId, place.projectId, rows.flatMap(segmentsOf));
      return { items: rows.map((row) => toStored(row, place, findings, locale)) };
    });
  }

  /** With `repaired`, what it would be worth once these findings are made good. @throws ProblemError `not-found`, `invalid-input` */
  async get(companyId: string, id: string, repaired: readonly string[], locale: Locale): Promise<StoredLoadPath> {
    return this.database.inCompany(companyId, async (tx) => {
      const row = await paths.findLoadPath(tx, companyId, id);
      if (!row) throw notFound('load path');
      const strange = repaired.find((finding) => !findingIdsOf(segmentsOf(row)).includes(finding));
      if (strange)
        refuse([{ pointer: '/repaired', detail: `repaired: no link of this load path has the finding ${strange}.` }]);
      return this.view(tx, row, locale, repaired);
    });
  }

  /** A repeat with the same id and content answers the one that exists. @throws ProblemError */
  async create(caller: Caller, locationId: string, body: NewPath, locale: Locale): Promise<StoredLoadPath> {
    const { companyId, actor } = caller;
    const { id = newId(), ...kept } = body;
    return makeOnce(() =>
      this.database.inCompany(companyId, async (tx) => {
        const { projectId } = await requirePlace(tx, companyId, locationId);
        await this.records.lock(tx, companyId, projectId);
        const place = await requirePlace(tx, companyId, locationId);
        const asked = { locationId, ...kept };
        const known = await paths.findLoadPath(tx, companyId, id);
        if (known) {
          const made = await this.records.lastData(tx, companyId, id, 'load-path.added');
          assertSameContent('load path', made?.contentSha256, asked);
          return this.view(tx, known, locale);
        }
        await this.assertKept(tx, companyId, place, kept, locale);
        const now = this.clock.now();
        const row = await paths.insertLoadPath(tx, {
          companyId,
          id,
          projectId,
          locationId,
          ...toColumns(kept),
          createdAt: now,
          changedAt: now,
        });
        const data = { contentSha256: contentHash(asked), ...kept };
        await this.records.append(tx, { companyId, projectId, actor, type: 'load-path.added', subjectId: id, data });
        return this.view(tx, row, locale);
      }),
    );
  }

  /** @throws ProblemError `not-found`, `stale-version`, `invalid-input` */
  async change(caller: Caller, id: string, seen: number, change: PathChange, locale: Locale): Promise<StoredLoadPath> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const row = await this.take(tx, companyId, id, seen);
      const place = await requirePlace(tx, companyId, row.locationId);
      const kept = { ...keptOf(row), ...change };
      await this.assertKept(tx, companyId, place, kept, locale);
      const after = await paths.updateLoadPath(tx, companyId, id, { ...toColumns(kept), changedAt: this.clock.now() });
      const { projectId } = row;
      await this.records.append(tx, {
        companyId,
        projectId,
        actor,
        type: 'load-path.changed',
        subjectId: id,
        data: { name: kept.name, ...change },
      });
      return this.view(tx, after, locale);
    });
  }

  /** @throws ProblemError `not-found`, `stale-version` */
  async remove({ companyId, actor }: Caller, id: string, seen: number): Promise<void> {
    await this.database.inCompany(companyId, async (tx) => {
      const { projectId, name } = await this.take(tx, companyId, id, seen);
      await paths.deleteLoadPath(tx, companyId, id);
      const entry = { companyId, projectId, actor, subjectId: id };
      await this.records.append(tx, { ...entry, type: 'load-path.removed', data: { name } });
    });
  }

  /** Strengths that checks of the place worked out. @throws ProblemError `not-found` */
  async capacities(companyId: string, locationId: string, locale: Locale): Promise<{ items: CapacityProposal[] }> {
    return this.database.inCompany(companyId, async (tx) => {
      const { projectId } = await requirePlace(tx, companyId, locationId);
      const rows = await paths.listFindings(tx, companyId, projectId, { locationId });
      return { items: rows.flatMap((row) => proposalsOf(row, outcomeOf(row), locale)) };
    });
  }

  private async view(
    tx: Tx,
    row: LoadPathRow,
    locale: Locale,
    repaired: readonly string[] = [],
  ): Promise<StoredLoadPath> {
    const place = await requirePlace(tx, row.companyId, row.locationId);
    const findings = await findingsOf(tx, row.companyId, row.projectId, segmentsOf(row));
    return toStored(row, place, findings, locale, repaired);
  }

  private async assertKept(tx: Tx, companyId: string, place: PlaceRow, kept: Kept, locale: Locale): Promise<void> {
    const findings = await findingsOf(tx, companyId, place.projectId, kept.segments);
    const photos = await paths.knownPhotos(tx, companyId, place.projectId, photoIdsOf(kept.segments));
    refuse(keptFaults(kept.segments, place, { findings, photos }));
    worthOf(pathNow(pathOf(kept, place), findings), locale);
  }

  private async take(tx: Tx, companyId: string, id: string, seen: number): Promise<LoadPathRow> {
    const found = await paths.findLoadPath(tx, companyId, id);
    if (!found) throw notFound('load path');
    await this.records.lock(tx, companyId, found.projectId);
    const row = await paths.findLoadPath(tx, companyId, id);
    if (!row) throw notFound('load path');
    assertVersion(seen, row.version);
    return row;
  }
}

function refuse(errors: FieldProblem[]): void {
  if (errors.length > 0)
    throw new ProblemError('invalid-input', errors.map(({ detail }) => detail).join(' '), { errors });
}

function worthOf(path: LoadPath, locale: Locale): LoadPathAnswer {
  try {
    return toLoadPathAnswer(evaluateLoadPath(path), locale) as LoadPathAnswer;
  } catch (error) {
    if (!(error instanceof LoadPathError)) throw error;
    throw refusedInputs(error.issues, [], locale);
  }
}

async function requirePlace(tx: Tx, companyId: string, id: string): Promise<PlaceRow> {
  const place = await paths.findPlace(tx, companyId, id);
  if (!place) throw notFound('place');
  return place;
}

const outcomeOf = ({ judgments: [newest] }: FindingRow): Outcome | undefined =>
  newest?.outcome as unknown as Outcome | undefined;

async function findingsOf(
  tx: Tx,
  companyId: string,
  projectId: string,
  segments: readonly KeptSegment[],
): Promise<Map<string, LinkFinding>> {
  const rows = await paths.listFindings(tx, companyId, projectId, { id: { in: findingIdsOf(segments) } });
  return new Map(rows.map((row) => [row.id, { state: row.state, outcome: outcomeOf(row) }]));
}

const segmentsOf = (row: LoadPathRow): KeptSegment[] => row.segments as unknown as KeptSegment[];

function keptOf(row: LoadPathRow): Kept {
  const { name, storiesAbove, storyShare, shored, demandLb, capacitiesFrom } = row;
  const segments = segmentsOf(row);
  return { name, kind: toWord(row.kind), storiesAbove, storyShare, shored, demandLb, capacitiesFrom, segments };
}

const toColumns = ({ kind, segments, ...kept }: Kept) => ({
  ...kept,
  kind: toEnum(kind),
  segments: segments as unknown as Prisma.InputJsonArray,
});

/** What the load path leaves open, the place says. */
const pathOf = ({ kind, storiesAbove, storyShare, shored, demandLb, segments }: Kept, place: PlaceRow) => ({
  kind,
  storiesAbove: storiesAbove ?? place.storiesAbove,
  storyShare: storyShare ?? undefined,
  shored,
  demandLb: demandLb ?? undefined,
  segments,
});

function toStored(
  row: LoadPathRow,
  place: PlaceRow,
  findings: ReadonlyMap<string, LinkFinding>,
  locale: Locale,
  repaired: readonly string[] = [],
): StoredLoadPath {
  const kept = keptOf(row);
  const answer = worthOf(pathNow(pathOf(kept, place), findings, repaired), locale);
  const { id, version, projectId, locationId, changedAt } = row;
  return {
    id,
    version,
    projectId,
    locationId,
    ...kept,
    repaired: [...repaired],
    answer,
    sampling: samplingOf(kept.segments, answer, locale),
    changedAt: changedAt.toISOString(),
  };
}
