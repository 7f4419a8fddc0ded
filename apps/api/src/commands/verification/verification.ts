import { createHash } from 'node:crypto';
import { pipeline } from 'node:stream/promises';
import { viewKey } from '../../features/photos/photo-files.ts';
import type { Witness } from '../../features/records/record-chain.ts';
import { type KeptWitness, readHeads } from '../../features/records/record-witnesses.ts';
import { RecordsService } from '../../features/records/records.service.ts';
import { FileMissingError } from '../../platform/file-store/store-errors.ts';
import type { Platform } from '../../platform/platform.ts';
import { newCounts, sayCompared, type VerifiedCounts } from './words.ts';

/** One thing that is not as it was recorded. */
export interface RecordFault {
  where: string;
  what: string;
}

/** Where a record stood, by a letter, a mail or a backup. The record of a company bears the company's id. */
export interface HandedWitness extends Witness {
  recordId: string;
}

export interface Verification extends VerifiedCounts {
  faults: RecordFault[];
}

/** Compares the record of every company and project with its rows and with the witnesses, and re-hashes every photo and view. */
export async function verifyEverything(
  platform: Platform,
  handed: readonly HandedWitness[] = [],
): Promise<Verification> {
  const found: Verification = { ...newCounts(), faults: [] };
  const kept = await readHeads(platform.fileStore);
  const known = new Set([
    ...(await verifyCompanies(platform, found, kept, handed)),
    ...(await verifyProjects(platform, found, kept, handed)),
  ]);
  for (const { recordId, seq } of [...kept, ...handed]) {
    if (known.has(recordId)) continue;
    found.faults.push({
      where: `record ${recordId}`,
      what: `a witness knows its event ${seq}, and there is no such company or project.`,
    });
  }
  await verifyPhotos(platform, found);
  return found;
}

const of = <W extends { recordId: string }>(recordId: string, witnesses: readonly W[]): W[] =>
  witnesses.filter((witness) => witness.recordId === recordId);

async function verifyCompanies(
  { database, clock }: Platform,
  found: Verification,
  kept: readonly KeptWitness[],
  handed: readonly HandedWitness[],
): Promise<string[]> {
  const records = new RecordsService(database, clock);
  // One whose own row is gone is found by what it left.
  const { rows } = await database.ownerPool.query<{ id: string; name: string | null }>(
    `select all_of_them.id::text, c.name from
       (select id from company union select company_id from record_head union select company_id from project) all_of_them
     left join company c on c.id = all_of_them.id order by 1`,
  );
  for (const { id, name } of rows) {
    const where = `company ${name ?? '?'} (${id})`;
    if (name === null) found.faults.push({ where, what: 'The company is gone, and what belongs to it is there.' });
    const check = await records.verifyCompany(id, of(id, handed), of(id, kept));
    for (const fault of check.faults) found.faults.push({ where, what: describe(fault) });
    found.companies++;
    found.events += check.events;
    found.costBooks += check.costBooks;
    if (!check.hasRecord) found.companiesWithoutRecord++;
    found.witnesses += check.witnesses.kept + check.witnesses.handed;
    found.agreed += check.witnesses.agreed;
  }
  return rows.map(({ id }) => id);
}

async function verifyProjects(
  { database, clock }: Platform,
  found: Verification,
  kept: readonly KeptWitness[],
  handed: readonly HandedWitness[],
): Promise<string[]> {
  const records = new RecordsService(database, clock);
  const projects = await database.owner.project.findMany({
    select: { companyId: true, id: true, name: true },
    orderBy: { id: 'asc' },
  });
  for (const { companyId, id, name } of projects) {
    const { faults, events, compared, untold, otherKinds, witnesses } = await records.verify(
      companyId,
      id,
      of(id, handed),
      of(id, kept),
    );
    for (const fault of faults) found.faults.push({ where: `project ${name} (${id})`, what: describe(fault) });
    found.projects++;
    found.events += events;
    for (const key of ['rows', 'moneyRows', 'documents', 'decisions'] as const) found[key] += compared[key];
    for (const { what, rows } of untold) found.untold.set(what, (found.untold.get(what) ?? 0) + rows);
    for (const kind of otherKinds) found.otherKinds.add(kind);
    found.witnesses += witnesses.kept + witnesses.handed;
    found.agreed += witnesses.keptAgreed + witnesses.handedAgreed;
    if (witnesses.kept + witnesses.handed === 0) found.projectsWithoutWitness++;
  }
  return projects.map(({ id }) => id);
}

async function verifyPhotos({ database, fileStore }: Platform, found: Verification): Promise<void> {
  let after: string | undefined;
  for (;;) {
    const photos = await database.owner.photo.findMany({
      select: { id: true, sha256: true, fileKey: true, viewSha256: true },
      where: after ? { id: { gt: after } } : {},
      orderBy: { id: 'asc' },
      take: 500,
    });
    for (const { id, sha256, fileKey, viewSha256 } of photos) {
      const compare = async (what: string, key: string, wanted: string) => {
        const hash = await hashOfFile(fileStore, key);
        if (hash === wanted) return;
        const told = hash ? `its ${what} has hash ${hash}, not ${wanted}` : `its ${what} is missing`;
        found.faults.push({ where: `photo ${id}`, what: told });
      };
      await compare('file', fileKey, sha256);
      if (viewSha256 === null) continue;
      found.views++;
      await compare('view', viewKey(fileKey), viewSha256);
    }
    found.photos += photos.length;
    after = photos.at(-1)?.id;
    if (photos.length < 500) return;
  }
}

async function hashOfFile(fileStore: Platform['fileStore'], key: string): Promise<string | undefined> {
  const hash = createHash('sha256');
  try {
    await pipeline((await fileStore.open(key)).stream, hash);
    return hash.digest('hex');
  } catch (error) {
    if (error instanceof FileMissingError) return undefined;
    throw error;
  }
}

const describe = ({ seq, what }: { seq: number | null; what: string }): string =>
  seq === null ? what : `event ${seq}: ${what}`;

/** Prints every fault, and at the end what was compared and what was not. Returns false when there is a fault. */
export async function reportVerification(platform: Platform, handed: readonly HandedWitness[] = []): Promise<boolean> {
  const { faults, ...counts } = await verifyEverything(platform, handed);
  for (const { where, what } of faults) console.error(`FAULT ${where}: ${what}`);
  console.log(sayCompared(counts, faults.length));
  return faults.length === 0;
}
