import type {
  BodyOut,
  CapacityProposal,
  KeptSegment,
  LineAboveChoice,
  LoadPathAnswer,
  loadPathRoutes,
  StoredLoadPath,
} from '@underlath/contract';
import { findEntry, findingIdsOf, keptFaults, type LinkFinding, type Locale, photoIdsOf } from '@underlath/rules';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { notFound } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../../shared/client-ids.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { RecordsService } from '../records/records.service.ts';
import { proposalsOf } from './from-checks.ts';
import { lineAboveFaults, lineAboveOf, linesAbove } from './lines-above.ts';
import type { LoadPathRow, PlaceRow } from './load-paths.repository.ts';
import * as paths from './load-paths.repository.ts';
import {
  type Around,
  type KeptLoadPath,
  keptOf,
  nowOf,
  outcomeOf,
  refuseFields,
  segmentsOf,
  toColumns,
  toStored,
  worthOf,
} from './stored-load-path.ts';

type LoadPathBody = BodyOut<typeof loadPathRoutes.evaluateLoadPath>;
type NewPath = BodyOut<typeof loadPathRoutes.createLoadPath>;
type PathChange = BodyOut<typeof loadPathRoutes.changeLoadPath>;

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
      const items: StoredLoadPath[] = [];
      for (const row of rows) {
        const above = await lineAboveOf(tx, companyId, keptOf(row), place);
        items.push(toStored(row, { place, findings, above }, locale));
      }
      return { items };
    });
  }

  /** With `repaired`, what it would be worth once these findings are made good. @throws ProblemError `not-found`, `invalid-input` */
  async get(companyId: string, id: string, repaired: readonly string[], locale: Locale): Promise<StoredLoadPath> {
    return this.database.inCompany(companyId, async (tx) => {
      const row = await paths.findLoadPath(tx, companyId, id);
      if (!row) throw notFound('load path');
      const strange = repaired.find((finding) => !findingIdsOf(segmentsOf(row)).includes(finding));
      if (strange)
        refuseFields([
          { pointer: '/repaired', detail: `repaired: no link of this load path has the finding ${strange}.` },
        ]);
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
        await this.assertKept(tx, companyId, id, place, kept, locale);
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
        const data = { contentSha256: contentHash(asked), ...asked };
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
      await this.assertKept(tx, companyId, id, place, kept, locale);
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

  /** Lines it stood on lose it, and say so in the record. @throws ProblemError `not-found`, `stale-version` */
  async remove({ companyId, actor }: Caller, id: string, seen: number): Promise<void> {
    await this.database.inCompany(companyId, async (tx) => {
      const { projectId, name } = await this.take(tx, companyId, id, seen);
      for (const carrier of await paths.listCarriers(tx, companyId, id)) {
        const change = { lineAboveId: null, floorDepthIn: null, changedAt: this.clock.now() };
        await paths.updateLoadPath(tx, companyId, carrier.id, change);
        const data = { name: carrier.name, lineAbove: null };
        const entry = { companyId, projectId, actor, subjectId: carrier.id };
        await this.records.append(tx, { ...entry, type: 'load-path.changed', data });
      }
      await paths.deleteLoadPath(tx, companyId, id);
      const entry = { companyId, projectId, actor, subjectId: id };
      await this.records.append(tx, { ...entry, type: 'load-path.removed', data: { name } });
    });
  }

  /** Wall lines that may stand on one of this place. @throws ProblemError `not-found` */
  async linesAbove(companyId: string, locationId: string): Promise<{ items: LineAboveChoice[] }> {
    return this.database.inCompany(companyId, async (tx) => ({
      items: await linesAbove(tx, companyId, await requirePlace(tx, companyId, locationId)),
    }));
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
    return toStored(row, await around(tx, row, keptOf(row), place), locale, repaired);
  }

  private async assertKept(
    tx: Tx,
    companyId: string,
    id: string,
    place: PlaceRow,
    kept: KeptLoadPath,
    locale: Locale,
  ): Promise<void> {
    const line = { companyId, projectId: place.projectId };
    refuseFields(await lineAboveFaults(tx, line, kept, id));
    const near = await around(tx, line, kept, place);
    const photos = await paths.knownPhotos(tx, companyId, place.projectId, photoIdsOf(kept.segments));
    refuseFields(keptFaults(kept.segments, place, { findings: near.findings, photos }));
    worthOf(nowOf(kept, near).path, locale);
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

async function requirePlace(tx: Tx, companyId: string, id: string): Promise<PlaceRow> {
  const place = await paths.findPlace(tx, companyId, id);
  if (!place) throw notFound('place');
  return place;
}

async function around(
  tx: Tx,
  { companyId, projectId }: Pick<LoadPathRow, 'companyId' | 'projectId'>,
  kept: KeptLoadPath,
  place: PlaceRow,
): Promise<Around> {
  const findings = await findingsOf(tx, companyId, projectId, kept.segments);
  return { place, findings, above: await lineAboveOf(tx, companyId, kept, place) };
}

async function findingsOf(
  tx: Tx,
  companyId: string,
  projectId: string,
  segments: readonly KeptSegment[],
): Promise<Map<string, LinkFinding>> {
  const rows = await paths.listFindings(tx, companyId, projectId, { id: { in: findingIdsOf(segments) } });
  return new Map(
    rows.map((row) => [
      row.id,
      { state: row.state, lossMode: findEntry(row.checkId)?.lossMode, outcome: outcomeOf(row) },
    ]),
  );
}
