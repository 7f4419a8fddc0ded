import { join } from 'node:path';
import pg from 'pg';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { findProjectRoot } from '../../apps/api/src/platform/project-root.ts';
import { cloneDatabase, emptyDatabase } from '../support/database.ts';
import { describeSchema, scriptOf } from '../support/schema-script.ts';

let clone: Awaited<ReturnType<typeof cloneDatabase>>;
let client: pg.Client;

beforeAll(async () => {
  clone = await cloneDatabase(inject('postgresUrl'));
  client = new pg.Client({ connectionString: clone.databaseUrl });
  await client.connect();
});
afterAll(async () => {
  await client.end();
  await clone.drop();
});

/** What is wrong with the fence of a table that names a company; nothing when it is whole. */
const unfenced = async (): Promise<string[]> => {
  const { rows } = await client.query<{ name: string }>(`
    select t.relname as name from pg_class t
    join pg_attribute c on c.attrelid = t.oid and c.attname = 'company_id' and not c.attisdropped
    where t.relnamespace = 'public'::regnamespace and t.relkind in ('r', 'p') and not (
      t.relrowsecurity and t.relforcerowsecurity
      and exists (select 1 from pg_policy p where p.polrelid = t.oid and p.polcmd = '*' and p.polname = 'company_fence'
        and 'underlath_app'::regrole = any(p.polroles)
        and pg_get_expr(p.polqual, p.polrelid) = '(company_id = app_company())'
        and pg_get_expr(p.polwithcheck, p.polrelid) = '(company_id = app_company())')
      and c.attnotnull
      and not exists (select 1 from pg_policy p where p.polrelid = t.oid and 0 = any(p.polroles)))
    order by 1`);
  return rows.map(({ name }) => name);
};

test('every table that names a company is fenced by it, for reading and for writing', async () => {
  expect(await unfenced()).toEqual([]);
});

test('a new table that names a company and has no fence, or half of one, is found', async () => {
  await client.query('begin');
  await client.query('create table loose (company_id uuid not null, id uuid)');
  await client.query('create table half (company_id uuid not null, id uuid)');
  await client.query('alter table half enable row level security');
  await client.query('create policy company_fence on half to underlath_app using (company_id = app_company())');
  expect(await unfenced()).toEqual(['half', 'loose']);
  await client.query('rollback');
});

test('a table without a company is one of people who sign in, or one of those few that are named here', async () => {
  const { rows } = await client.query<{ name: string; app: boolean; people: boolean }>(`
    select t.relname as name, has_table_privilege('underlath_app', t.oid, 'select') as app,
      has_table_privilege('underlath_people', t.oid, 'select') as people
    from pg_class t where t.relnamespace = 'public'::regnamespace and t.relkind in ('r', 'p')
      and not exists (select 1 from pg_attribute c where c.attrelid = t.oid and c.attname = 'company_id')
    order by 1`);
  const others = ['_prisma_migrations', 'company', 'idempotency_key', 'rate_limit'];
  expect(rows.filter(({ people }) => !people).map(({ name }) => name)).toEqual(
    others.filter((one) => one !== 'company'),
  );
  // Features read none of the tables of people.
  expect(rows.filter(({ app }) => app).map(({ name }) => name)).toEqual(others);
});

test('the migrations lead to prisma/schema.prisma, and a column too many would be seen', async () => {
  const schema = join(findProjectRoot(), 'prisma/schema.prisma');
  const empty = await emptyDatabase(inject('postgresUrl'));
  const wanted = new pg.Client({ connectionString: empty.databaseUrl });
  await wanted.connect();
  await wanted.query(await scriptOf(schema, empty.databaseUrl));
  const said = await describeSchema(wanted);
  await wanted.end();
  await empty.drop();
  expect(said.length).toBeGreaterThan(300);
  expect(await describeSchema(client)).toEqual(said);
  await client.query('alter table company add column slogan text');
  expect(await describeSchema(client)).not.toEqual(said);
});
