import { createHash } from 'node:crypto';
import { pipeline } from 'node:stream/promises';
import { RecordsService } from '../features/records/records.service.ts';
import { FileMissingError } from '../platform/file-store/store-errors.ts';
import type { Platform } from '../platform/platform.ts';

/** One thing that is not as it was recorded. */
export interface RecordFault {
  where: string;
  what: string;
}

/** Checks every project's event chain and re-hashes every original photo, of every company. */
export async function verifyEverything(
  platform: Platform,
): Promise<{ projects: number; photos: number; faults: RecordFault[] }> {
  const { database, clock } = platform;
  const records = new RecordsService(database, clock);
  const faults: RecordFault[] = [];
  const projects = await database.owner.project.findMany({
    select: { companyId: true, id: true, name: true },
    orderBy: { id: 'asc' },
  });
  for (const project of projects) {
    const check = await records.verify(project.companyId, project.id);
    for (const fault of check.faults)
      faults.push({ where: `project ${project.name} (${project.id})`, what: describe(fault) });
  }
  const photos = await verifyPhotos(platform, faults);
  return { projects: projects.length, photos, faults };
}

async function verifyPhotos({ database, fileStore }: Platform, faults: RecordFault[]): Promise<number> {
  let count = 0;
  let after: string | undefined;
  for (;;) {
    const photos = await database.owner.photo.findMany({
      select: { id: true, sha256: true, fileKey: true },
      where: after ? { id: { gt: after } } : {},
      orderBy: { id: 'asc' },
      take: 500,
    });
    for (const { id, sha256, fileKey } of photos) {
      const found = await hashOf(fileStore, fileKey);
      if (found !== sha256)
        faults.push({
          where: `photo ${id}`,
          what: found ? `its bytes have hash ${found}, not ${sha256}` : 'its file is missing',
        });
    }
    count += photos.length;
    after = photos.at(-1)?.id;
    if (photos.length < 500) return count;
  }
}

async function hashOf(fileStore: Platform['fileStore'], key: string): Promise<string | undefined> {
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

/** Prints what was checked and every fault. Returns false when there is one. */
export async function reportVerification(platform: Platform): Promise<boolean> {
  const { projects, photos, faults } = await verifyEverything(platform);
  for (const { where, what } of faults) console.error(`FAULT ${where}: ${what}`);
  console.log(
    `Checked ${projects} records and ${photos} photos: ${faults.length === 0 ? 'everything is as it was recorded' : `${faults.length} faults`}.`,
  );
  return faults.length === 0;
}
