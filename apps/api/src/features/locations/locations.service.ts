import type { BodyOut, Location, locationRoutes } from '@underlath/contract';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../../shared/client-ids.ts';
import { toEnum } from '../../shared/enum-words.ts';
import { assertVersion } from '../../shared/versions.ts';
import type { RecordsService } from '../records/records.service.ts';
import { liesAbove, rollUp } from './location-tree.ts';
import * as locations from './locations.repository.ts';

type NewLocation = BodyOut<typeof locationRoutes.createLocation>;
type LocationChange = BodyOut<typeof locationRoutes.changeLocation>;

export class LocationsService {
  constructor(
    private readonly database: Database,
    private readonly records: RecordsService,
  ) {}

  /** @throws ProblemError `not-found` */
  async list(companyId: string, projectId: string): Promise<{ items: Location[] }> {
    return this.database.inCompany(companyId, async (tx) => {
      if (!(await this.records.exists(tx, companyId, projectId))) throw notFound('project');
      return { items: await listTree(tx, companyId, projectId) };
    });
  }

  /** A repeat with the same id and content answers the place that exists. @throws ProblemError */
  async create(caller: Caller, projectId: string, { id = newId(), ...content }: NewLocation): Promise<Location> {
    const { companyId, actor } = caller;
    return makeOnce(() =>
      this.database.inCompany(companyId, async (tx) => {
        await this.records.lock(tx, companyId, projectId);
        const asked = { projectId, ...content };
        if (await locations.findLocation(tx, companyId, id)) {
          const made = await this.records.lastData(tx, companyId, id, 'location.added');
          assertSameContent('place', made?.contentSha256, asked);
          return pick(await listTree(tx, companyId, projectId), id);
        }
        await assertParent(tx, companyId, projectId, id, content.parentId);
        await locations.insertLocation(tx, { companyId, id, projectId, ...content, kind: toEnum(content.kind) });
        const data = { contentSha256: contentHash(asked), ...content };
        await this.records.append(tx, { companyId, projectId, actor, type: 'location.added', subjectId: id, data });
        return pick(await listTree(tx, companyId, projectId), id);
      }),
    );
  }

  /** @throws ProblemError `not-found`, `stale-version`, `invalid-input` */
  async change(caller: Caller, id: string, seen: number, { kind, ...change }: LocationChange): Promise<Location> {
    const { companyId, actor } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const { projectId } = await this.take(tx, companyId, id, seen);
      if (change.parentId !== undefined) await assertParent(tx, companyId, projectId, id, change.parentId);
      const data = { ...change, ...(kind && { kind: toEnum(kind) }) };
      await locations.updateLocation(tx, companyId, id, data);
      const changed = { ...change, ...(kind && { kind }) };
      const entry = { companyId, projectId, actor, subjectId: id };
      await this.records.append(tx, { ...entry, type: 'location.changed', data: changed });
      return pick(await listTree(tx, companyId, projectId), id);
    });
  }

  /** @throws ProblemError `not-found`, `stale-version`, `wrong-state` when something is in it */
  async remove(caller: Caller, id: string, seen: number): Promise<void> {
    const { companyId, actor } = caller;
    await this.database.inCompany(companyId, async (tx) => {
      const { projectId, name } = await this.take(tx, companyId, id, seen);
      const { places, findings, photos, loadPaths } = await locations.countContents(tx, companyId, id);
      if (places + findings + photos + loadPaths > 0) {
        const inside = `${places} places, ${findings} findings, ${photos} photos and ${loadPaths} load paths`;
        throw new ProblemError('wrong-state', `"${name}" has ${inside} in it; only an empty place can be removed.`);
      }
      await locations.deleteLocation(tx, companyId, id);
      const entry = { companyId, projectId, actor, subjectId: id };
      await this.records.append(tx, { ...entry, type: 'location.removed', data: { name } });
    });
  }

  /** The place as it is now, with the project's turn taken. */
  private async take(tx: Tx, companyId: string, id: string, seen: number): Promise<locations.LocationRow> {
    const found = await locations.findLocation(tx, companyId, id);
    if (!found) throw notFound('place');
    await this.records.lock(tx, companyId, found.projectId);
    const row = await locations.findLocation(tx, companyId, id);
    if (!row) throw notFound('place');
    assertVersion(seen, row.version);
    return row;
  }
}

async function listTree(tx: Tx, companyId: string, projectId: string): Promise<Location[]> {
  const rows = await locations.listLocations(tx, companyId, projectId);
  return rollUp(rows, await locations.countOpen(tx, companyId, projectId));
}

function pick(tree: Location[], id: string): Location {
  const location = tree.find((one) => one.id === id);
  if (!location) throw notFound('place');
  return location;
}

async function assertParent(tx: Tx, companyId: string, projectId: string, id: string, parentId: string | null) {
  if (parentId === null) return;
  const rows = await locations.listLocations(tx, companyId, projectId);
  if (parentId !== id && !rows.some((row) => row.id === parentId)) {
    throw invalidInput('/parentId', `parentId: there is no place ${parentId} in this project.`);
  }
  if (liesAbove(rows, id, parentId)) {
    throw invalidInput('/parentId', `parentId: ${parentId} is this place or lies inside it; choose a place outside.`);
  }
}
