import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { createDatabase, type Database } from '../../apps/api/src/platform/database/database.ts';
import { migrate, pendingMigrations, readMigrations } from '../../apps/api/src/platform/database/migrations.ts';
import { newId } from '../../apps/api/src/platform/ids.ts';
import { findProjectRoot } from '../../apps/api/src/platform/project-root.ts';
import { cloneDatabase, emptyDatabase } from '../support/database.ts';

const migrations = readMigrations(join(findProjectRoot(), 'prisma/migrations'));

describe('two companies in one database', () => {
  let clone: Awaited<ReturnType<typeof cloneDatabase>>;
  let database: Database;
  const [here, there] = [newId(), newId()];

  beforeAll(async () => {
    clone = await cloneDatabase(inject('postgresUrl'));
    database = createDatabase({ databaseUrl: clone.databaseUrl, maxConnections: 4 });
    for (const id of [here, there]) {
      await database.inCompany(id, (tx) => tx.company.create({ data: { id, name: `Company ${id}` } }));
    }
  });

  afterAll(async () => {
    await database.close();
    await clone.drop();
  });

  test('a transaction for one company sees that company only', async () => {
    const seen = await database.inCompany(here, (tx) => tx.company.findMany());
    expect(seen.map(({ id }) => id)).toEqual([here]);
  });

  test('a row for another company is refused by the database itself', async () => {
    const id = newId();
    await expect(
      database.inCompany(here, (tx) => tx.company.create({ data: { id, name: 'Elsewhere' } })),
    ).rejects.toThrow(/row-level security/);
  });

  test('outside a fence the application role sees nothing', async () => {
    expect(await database.app.company.findMany()).toEqual([]);
    expect((await database.pool.query('select id from company')).rows).toEqual([]);
  });

  test('the fence does not leak into the next transaction on the same connection', async () => {
    const single = createDatabase({ databaseUrl: clone.databaseUrl, maxConnections: 1 });
    await single.inCompany(here, (tx) => tx.company.findMany());
    expect(await single.app.company.findMany()).toEqual([]);
    await single.close();
  });

  test('hand-written SQL stays behind the same fence and cannot write', async () => {
    const rows = await database.inCompanySql(
      there,
      async (client) => (await client.query('select id from company')).rows,
    );
    expect(rows).toEqual([{ id: there }]);
    await expect(
      database.inCompanySql(there, (client) => client.query(`update company set name = 'x'`)),
    ).rejects.toThrow(/read-only/);
  });

  test('the application role is neither owner nor free of the fences', async () => {
    const { rows } = await database.pool.query(
      `select current_user as name, rolbypassrls, rolsuper, rolcanlogin from pg_roles where rolname = current_user`,
    );
    expect(rows).toEqual([{ name: 'underlath_app', rolbypassrls: false, rolsuper: false, rolcanlogin: false }]);
  });
});

describe('work done as one transaction', () => {
  let clone: Awaited<ReturnType<typeof cloneDatabase>>;
  let database: Database;
  const company = newId();
  const add = (id: string, name: string) =>
    database.inCompany(id, (tx) => tx.company.create({ data: { id, name }, select: { id: true } }));
  const names = async () =>
    (await database.owner.company.findMany({ orderBy: { name: 'asc' } })).map(({ name }) => name);

  beforeAll(async () => {
    clone = await cloneDatabase(inject('postgresUrl'));
    // One connection: a second transaction beside the first would wait for it in vain.
    database = createDatabase({ databaseUrl: clone.databaseUrl, maxConnections: 1 });
  });
  afterAll(async () => {
    await database.close();
    await clone.drop();
  });

  test('stands or falls together, whatever pieces it was made of', async () => {
    const broken = database.asOne({ companyId: company }, async () => {
      await add(company, 'Never kept');
      throw new Error('after the first piece');
    });
    await expect(broken).rejects.toThrow('after the first piece');
    expect(await names()).toEqual([]);
    await database.asOne({ companyId: company }, () => add(company, 'Kept'));
    expect(await names()).toEqual(['Kept']);
  });

  test('a piece that fails is undone alone, and pieces begun together take turns', async () => {
    const other = newId();
    await database.asOne({ companyId: company }, async () => {
      const pieces = [add(company, 'The same id again'), add(other, 'Other'), add(company, 'And again')];
      const ends = await Promise.allSettled(pieces);
      expect(ends.map(({ status }) => status)).toEqual(['rejected', 'fulfilled', 'rejected']);
      // The fence of the second piece is not that of the next one.
      expect(await database.inCompany(company, (tx) => tx.company.count())).toBe(1);
    });
    expect(await names()).toEqual(['Kept', 'Other']);
  });

  test('what goes on after its end is on its own', async () => {
    const late = newId();
    let later: Promise<unknown> = Promise.resolve();
    let goOn = () => {};
    const ended = new Promise<void>((done) => {
      goOn = done;
    });
    await database.asOne({ companyId: company }, async () => {
      later = ended.then(() => add(late, 'Late'));
    });
    goOn();
    await later;
    expect(await names()).toEqual(['Kept', 'Late', 'Other']);
  });
});

describe('migrating', () => {
  test('two processes that start together apply each migration once', async () => {
    const { databaseUrl, drop } = await emptyDatabase(inject('postgresUrl'));
    const both = await Promise.all([migrate(databaseUrl, migrations), migrate(databaseUrl, migrations)]);
    expect(both.flat().sort()).toEqual(migrations.map(({ name }) => name));
    await drop();
  });

  test('a migration that fails leaves nothing behind and names itself', async () => {
    const { databaseUrl, drop } = await emptyDatabase(inject('postgresUrl'));
    const wrong = [{ name: '0001_wrong', sql: 'create table half (id int); select 1/0', checksum: 'x' }];
    await expect(migrate(databaseUrl, wrong)).rejects.toThrow(
      'Migration 0001_wrong failed and nothing of it was kept: division by zero.',
    );
    const database = createDatabase({ databaseUrl });
    const { rows } = await database.ownerPool.query(
      `select to_regclass('half') as half, count(*)::int from _prisma_migrations`,
    );
    expect(rows).toEqual([{ half: null, count: 0 }]);
    await database.close();
    await drop();
  });

  test('a changed, an unfinished and an unknown migration each stop the start', async () => {
    const { databaseUrl, drop } = await emptyDatabase(inject('postgresUrl'));
    const one = { name: '0001_one', sql: 'select 1', checksum: 'a' };
    await migrate(databaseUrl, [one]);
    await expect(migrate(databaseUrl, [{ ...one, checksum: 'b' }])).rejects.toThrow(/was changed after it was applied/);
    await expect(migrate(databaseUrl, [])).rejects.toThrow(/older than the database/);
    const database = createDatabase({ databaseUrl });
    const two = { name: '0002_two', sql: 'select 2', checksum: 'c' };
    expect(await pendingMigrations(database.ownerPool, [one, two])).toEqual(['0002_two']);
    await database.ownerPool.query('update _prisma_migrations set finished_at = null');
    await database.close();
    await expect(migrate(databaseUrl, [one])).rejects.toThrow(/began and never finished/);
    await drop();
  });
});
