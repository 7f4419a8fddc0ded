import { appendFileSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { filePath, tablePath } from '../../apps/api/src/commands/backup/folder.ts';
import { restore } from '../../apps/api/src/commands/backup/reader.ts';
import { backUp } from '../../apps/api/src/commands/backup/writer.ts';
import { bringKey, tellKey } from '../../apps/api/src/commands/backup-key.ts';
import { readWitnesses } from '../../apps/api/src/commands/verification/handed-witnesses.ts';
import { verifyEverything } from '../../apps/api/src/commands/verification/verification.ts';
import { tellUnsentMail } from '../../apps/api/src/features/mail/mail-of-backup.ts';
import { readHeads } from '../../apps/api/src/features/records/record-witnesses.ts';
import { RecordsService } from '../../apps/api/src/features/records/records.service.ts';
import { createSealing, sealingKeyFile } from '../../apps/api/src/platform/accounts/sealing.ts';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { systemActor } from '../../apps/api/src/shared/actor.ts';
import { type Person, startTestApi, type TestApi } from '../support/api.ts';
import { runToEnd } from '../support/serve.ts';

let folder: string;
let from: TestApi;
let owner: Person;
const projectId = newId();

beforeAll(async () => {
  folder = join(mkdtempSync(join(tmpdir(), 'underlath-drill-')), 'backup');
  from = await startTestApi();
  owner = await from.signIn();
  await addPhoto();
});
afterAll(async () => {
  await from.close();
  rmSync(join(folder, '..'), { recursive: true, force: true });
});

/** A row and the bytes it names, with text that a careless copy would spoil. */
async function addPhoto(): Promise<void> {
  const { database, fileStore, clock } = from.platform;
  const { companyId, memberId } = owner;
  const received = await fileStore.receive(Readable.from([Buffer.from('bytes of a photo')]));
  const fileKey = `${companyId}/${received.sha256}`;
  await fileStore.keep(received, fileKey);
  await database.inCompany(companyId, async (tx) => {
    await tx.project.create({
      data: {
        companyId,
        id: projectId,
        name: 'Tab\there, back\\slash, line\nbreak, ñ, 🪵',
        siteAddress: '12 Elm Street',
        clientName: 'Ines Roth',
        stories: 2,
        originalSumCents: 4_812_500,
        originalDays: 45,
        codeEdition: 'irc-2021',
        jurisdiction: 'Invented County',
      },
    });
    await new RecordsService(database, clock).open(tx, companyId, projectId, systemActor);
    await tx.photo.create({
      data: {
        companyId,
        id: newId(),
        projectId,
        sha256: received.sha256,
        byteCount: received.byteCount,
        mediaType: 'image/jpeg',
        widthPx: 1,
        heightPx: 1,
        fileKey,
        uploadedById: memberId,
      },
    });
  });
}

const project = ({ platform }: TestApi) =>
  platform.database.inCompany(owner.companyId, (tx) =>
    tx.project.findFirst({ where: { id: projectId }, include: { photos: true } }),
  );

describe('a backup', () => {
  test('restored into an empty place holds every row, every byte, and the people who sign in', async () => {
    const waiting = { companyId: owner.companyId, id: newId(), to: 'ines@wren.example', subject: 'Your change order' };
    await from.platform.database.owner.mail.create({ data: { ...waiting, text: 'Hello' } });
    const { manifest, faults } = await backUp(from.platform, folder);
    expect(faults).toEqual([]);
    expect(manifest.files.filter(({ key }) => !key.startsWith('heads/'))).toHaveLength(1);
    const to = await startTestApi();
    await restore(to.platform, folder);
    expect(await project(to)).toEqual(await project(from));
    // Whether it went out since the backup is not known, so it is told instead of sent.
    expect(await tellUnsentMail(to.platform.database)).toEqual([
      expect.stringContaining('One mail waited'),
      expect.stringContaining('to ines@wren.example: Your change order'),
    ]);
    const verified = await verifyEverything(to.platform);
    // The photo was put in by hand, past its record; that is said of both places alike.
    expect(verified).toEqual(await verifyEverything(from.platform));
    expect(verified.faults.filter(({ where }) => where.startsWith('photo '))).toEqual([]);
    expect(verified.photos).toBe(1);
    expect((await to.platform.accounts.signIn(owner.email, owner.password)).userId).toBe(owner.userId);
    await to.close();
  });

  test('is refused by a database that holds anything', async () => {
    await expect(restore(from.platform, folder)).rejects.toThrow('The database is not empty');
  });

  test('does not overwrite a folder', async () => {
    await expect(backUp(from.platform, folder)).rejects.toThrow('exists already');
  });

  test('whose manifest was edited is refused, and nothing of it is restored', async () => {
    const to = await startTestApi();
    const path = join(folder, 'manifest.json');
    const whole = readFileSync(path, 'utf8');
    const { tables, ...rest } = JSON.parse(whole);
    writeFileSync(path, JSON.stringify({ ...rest, tables: tables.slice(1), files: [] }));
    await expect(restore(to.platform, folder)).rejects.toThrow(
      'manifest.json is not as it was when the backup was taken',
    );
    expect(await readHeads(to.platform.fileStore)).toEqual([]);
    writeFileSync(path, whole);
    await restore(to.platform, folder);
    expect(await project(to)).not.toBeNull();
    await to.close();
  });

  test('names where every record stood, and is a witness of it later', async () => {
    const { rows } = await from.platform.database.ownerPool.query('select seq, hash from record_head where seq > 0');
    const witnesses = readWitnesses(['--expect-file', join(folder, 'manifest.json')]);
    expect(witnesses.map(({ seq, hash }) => ({ seq, hash }))).toEqual(rows);
    expect(() => readWitnesses(['--expect', 'project:12'])).toThrow('a witness is PROJECT:SEQ:HASH');
    expect(() => readWitnesses(['--expected', 'x'])).toThrow('verify-record takes --expect PROJECT:SEQ:HASH');
  });

  test('that lacks a file is refused in a sentence before anything is restored', async () => {
    const to = await startTestApi();
    const folders = readdirSync(join(folder, 'files', owner.companyId));
    const photo = filePath(folder, `${owner.companyId}/${folders[0]}`);
    renameSync(photo, `${photo}.away`);
    await expect(restore(to.platform, folder)).rejects.toThrow(`${photo} is missing; the backup is not whole`);
    renameSync(`${photo}.away`, photo);
    expect(await project(to)).toBeNull();
    await to.close();
  });

  test('that lost a byte is refused by name, and nothing of it is restored', async () => {
    const to = await startTestApi();
    const photo = filePath(
      folder,
      readdirSync(join(folder, 'files', owner.companyId)).map((name) => `${owner.companyId}/${name}`)[0] ?? '',
    );
    appendFileSync(photo, 'x');
    await expect(restore(to.platform, folder)).rejects.toThrow(`${photo} is not as it was`);
    appendFileSync(tablePath(folder, 'project'), 'x');
    await expect(restore(to.platform, folder)).rejects.toThrow(`${tablePath(folder, 'project')} is not as it was`);
    expect(await project(to)).toBeNull();
    await to.close();
  });
});

describe('the key that seals the secrets of authenticator apps', () => {
  const own = (api: TestApi) => readFileSync(sealingKeyFile(api.dataDir), 'utf8');

  test('goes along, so that codes go on working in the place restored into; the key there is put aside', async () => {
    const sealed = from.platform.sealing.seal(owner.userId, 'JBSWY3DPEHPK3PXP');
    const other = join(folder, '..', 'with-key');
    const { manifest } = await backUp(from.platform, other);
    expect(tellKey(manifest)).toContain('whoever has the backup can read them');
    const to = await startTestApi();
    const before = own(to);
    await restore(to.platform, other);
    const told = await bringKey(to.platform, other, manifest);
    expect(own(to)).toBe(own(from));
    expect(createSealing(to.platform.config).unseal(owner.userId, sealed)).toBe('JBSWY3DPEHPK3PXP');
    const aside = /sealing-key\.before-restore-\d+/.exec(told[0] ?? '')?.[0] ?? '';
    expect(readFileSync(join(to.dataDir, aside), 'utf8')).toBe(before);
    expect(await bringKey(to.platform, other, manifest)).toEqual([]);
    appendFileSync(join(other, 'sealing-key'), 'x');
    const third = await startTestApi();
    await expect(restore(third.platform, other)).rejects.toThrow('sealing-key is not as it was');
    await Promise.all([to.close(), third.close()]);
  });

  test('stays out where it is configured, and the output says to keep it', async () => {
    const other = join(folder, '..', 'without-key');
    const config = { ...from.platform.config, sealingKey: 'forty random characters that somebody keeps' };
    const { manifest } = await backUp({ ...from.platform, config }, other);
    expect(readdirSync(other).sort()).toEqual(['files', 'manifest.json', 'tables']);
    expect(tellKey(manifest)).toContain('SEALING_KEY is configured, so it is not in the backup');
  });
});

test('a backup of files that are not what the rows say names each, and what no row speaks of', async () => {
  const { database, fileStore } = from.platform;
  const { fileKey } = await database.owner.photo.findFirstOrThrow();
  const bytes = await fileStore.bytes(fileKey);
  await fileStore.put('photos/left-by-a-killed-process', Buffer.from('half'));
  const wrong = join(folder, '..', 'wrong');
  await fileStore.put(fileKey, Buffer.from('other bytes'));
  const changed = await backUp(from.platform, wrong);
  expect(changed.faults).toEqual([expect.stringMatching(/^The file of photo .* has hash .*, not /)]);
  expect(changed.leftOver).toEqual(['photos/left-by-a-killed-process']);
  await fileStore.remove(fileKey);
  const env = { DATABASE_URL: from.databaseUrl, DATA_DIR: from.dataDir };
  const { code, printed } = await runToEnd('backup', env, [join(folder, '..', 'gone')]);
  expect(code).toBe(1);
  expect(printed).toMatch(/FAULT The file of photo .* is missing/);
  expect(printed).toContain('Left over, no row speaks of it: photos/left-by-a-killed-process');
  // Faults and the last line come through two pipes, in no order of their own.
  expect(printed).toMatch(/but it is not whole: 1 file is not what the rows say\.\n/);
  await fileStore.put(fileKey, bytes);
  await fileStore.remove('photos/left-by-a-killed-process');
}, 240_000);

test('a record whose head was taken away is found, and the others are still looked at', async () => {
  const { database } = from.platform;
  await database.ownerPool.query(
    'begin; set local session_replication_role = replica; delete from record_head; commit',
  );
  const { faults, photos } = await verifyEverything(from.platform);
  expect(faults).toContainEqual({
    where: expect.stringContaining(projectId),
    what: 'The head of the record is missing.',
  });
  expect(photos).toBe(1);
});

test('a photo whose bytes were changed or taken away is found', async () => {
  const { database, fileStore } = from.platform;
  const photo = await database.owner.photo.findFirstOrThrow();
  await fileStore.put(photo.fileKey, Buffer.from('other bytes'));
  const changed = await verifyEverything(from.platform);
  expect(changed.faults).toContainEqual({
    where: `photo ${photo.id}`,
    what: expect.stringContaining(`not ${photo.sha256}`),
  });
  await fileStore.remove(photo.fileKey);
  const gone = await verifyEverything(from.platform);
  expect(gone.faults).toContainEqual({ where: `photo ${photo.id}`, what: 'its file is missing' });
});
