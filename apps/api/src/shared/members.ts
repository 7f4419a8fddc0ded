import type { Tx } from '../platform/database/database.ts';

/** Names of members and of API keys, by id. */
export async function namesOf(
  tx: Tx,
  companyId: string,
  ids: readonly (string | null)[],
): Promise<Map<string, string>> {
  const asked = [...new Set(ids.filter((id) => id !== null))];
  if (asked.length === 0) return new Map();
  const rows = await tx.$queryRaw<{ id: string; name: string }[]>`
    select id::text, name from api_key where company_id = ${companyId}::uuid and id = any(${asked}::uuid[])
    union all select id::text, name from member where company_id = ${companyId}::uuid and id = any(${asked}::uuid[])`;
  return new Map(rows.map(({ id, name }) => [id, name]));
}

/** Where a member reads mail; null for somebody who left, and for an API key. */
export async function findMemberEmail(tx: Tx, companyId: string, memberId: string): Promise<string | null> {
  const where = { companyId, id: memberId, removedAt: null };
  return (await tx.member.findFirst({ where, select: { email: true } }))?.email ?? null;
}
