import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { PrismaPg } from '@prisma/adapter-pg';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import type pg from 'pg';

const require = createRequire(import.meta.url);

/** What the library's own types say is not exported by name. */
interface Engine {
  diff(ask: object): Promise<{ stdout?: string | null }>;
}

/** The SQL that makes an empty database into what a schema file says, by Prisma's own engine in WASM: nothing is downloaded. */
export async function scriptOf(schemaFile: string, databaseUrl: string): Promise<string> {
  const folder = dirname(require.resolve('@prisma/schema-engine-wasm/schema_engine_bg'));
  const glue = await import(pathToFileURL(join(folder, 'schema_engine_bg.js')).href);
  const bytes = readFileSync(join(folder, 'schema_engine_bg.wasm'));
  const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': glue });
  glue.__wbg_set_wasm(instance.exports);
  (instance.exports.__wbindgen_start as () => void)();
  const adapter = bindMigrationAwareSqlAdapterFactory(new PrismaPg({ connectionString: databaseUrl }));
  const engine: Engine = await glue.SchemaEngine.new({ datamodels: undefined }, () => {}, adapter);
  const files = [{ path: schemaFile, content: readFileSync(schemaFile, 'utf8') }];
  const { stdout } = await engine.diff({
    from: { tag: 'empty' },
    to: { tag: 'schemaDatamodel', files },
    script: true,
    exitCode: null,
    filters: { externalTables: [], externalEnums: [] },
  });
  return stdout ?? '';
}

/** Every column, index, constraint and enumeration of a database, a line each; not what Prisma's schema cannot say. */
export async function describeSchema(client: pg.Client): Promise<string[]> {
  const { rows } = await client.query<{ line: string }>(`
    select format('column %s.%s %s%s default %s', t.relname, c.attname, format_type(c.atttypid, c.atttypmod),
        case when c.attnotnull then ' not null' else '' end, coalesce(pg_get_expr(d.adbin, d.adrelid), 'none')) as line
      from pg_class t join pg_attribute c on c.attrelid = t.oid and c.attnum > 0 and not c.attisdropped
      left join pg_attrdef d on d.adrelid = t.oid and d.adnum = c.attnum
      where t.relnamespace = 'public'::regnamespace and t.relkind = 'r' and t.relname <> '_prisma_migrations'
    union all
    select format('index %s', indexdef) from pg_indexes where schemaname = 'public' and tablename <> '_prisma_migrations'
    union all
    select format('constraint %s on %s %s', conname, conrelid::regclass, pg_get_constraintdef(oid)) from pg_constraint
      where connamespace = 'public'::regnamespace and contype in ('f', 'p', 'u') and conrelid::regclass::text <> '_prisma_migrations'
    union all
    select format('enum %s %s', t.typname, string_agg(e.enumlabel, ', ' order by e.enumsortorder))
      from pg_type t join pg_enum e on e.enumtypid = t.oid where t.typnamespace = 'public'::regnamespace group by t.typname
    order by 1`);
  return rows.map(({ line }) => line);
}
