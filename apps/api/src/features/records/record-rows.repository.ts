import type { Tx } from '../../platform/database/database.ts';
import { hashOf, sha256Of } from '../../platform/hash.ts';
import { judgmentHash } from '../../shared/record-events.ts';
import { type TableName, tableNames, tableOf } from './record-tables.data.ts';

/** A row of the database: its columns as JSON, and hashes of them. */
export type StoredRow = Record<string, unknown>;
/** Rows by what they are known by. */
export type StoredRows = ReadonlyMap<TableName, ReadonlyMap<string, StoredRow>>;

/** Long texts and whole outcomes are told as hashes; these are theirs as the rows stand now. */
const hashes: Partial<Record<TableName, (row: StoredRow) => StoredRow>> = {
  judgment: (row) => ({ sha256: judgmentHash(row) }),
  notice: ({ text }) => ({ textSha256: sha256Of(String(text)) }),
  change_order: ({ wording }) => ({ wordingSha256: hashOf(wording) }),
  decision: ({ consentText, userAgent }) => ({
    consentSha256: consentText === null ? null : sha256Of(String(consentText)),
    userAgentSha256: sha256Of(String(userAgent)),
  }),
};

/** Every row of a project that its events tell of, as the database has it. */
export async function readRows(tx: Tx, companyId: string, projectId: string): Promise<StoredRows> {
  const rows = new Map<TableName, Map<string, StoredRow>>();
  for (const table of tableNames) rows.set(table, await readTable(tx, table, companyId, projectId));
  return rows;
}

async function readTable(
  tx: Tx,
  table: TableName,
  companyId: string,
  projectId: string,
): Promise<Map<string, StoredRow>> {
  const { key, ofProject } = tableOf(table);
  const found = await tx.$queryRawUnsafe<{ row: StoredRow }[]>(
    `select to_jsonb(t) as row from ${table} t where t.company_id = $1::uuid and ${ofProject}`,
    companyId,
    projectId,
  );
  return new Map(
    found.map(({ row }) => {
      const named = Object.fromEntries(Object.entries(row).map(([column, value]) => [toCamel(column), value]));
      return [key.map((part) => named[part]).join('/'), { ...named, ...hashes[table]?.(named) }];
    }),
  );
}

const toCamel = (column: string): string =>
  column.replace(/_([a-z0-9])/g, (_all, letter: string) => letter.toUpperCase());
