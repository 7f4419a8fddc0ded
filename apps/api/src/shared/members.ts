import type { Tx } from '../platform/database/database.ts';

/** Names of members and of API keys, by id. */
export async function namesOf(
  tx: Tx,
  companyId: string,
  ids: readonly (string | null)[],
): Promise<Map<string, string>> {
  const where = { companyId, id: { in: [...new Set(ids.filter((id) => id !== null))] } };
  const members = await tx.member.findMany({ where, select: { id: true, name: true } });
  const keys = await tx.apiKey.findMany({ where, select: { id: true, name: true } });
  return new Map([...keys, ...members].map(({ id, name }) => [id, name]));
}

/** Where a member reads mail; null for somebody who left, and for an API key. */
export async function findMemberEmail(tx: Tx, companyId: string, memberId: string): Promise<string | null> {
  const where = { companyId, id: memberId, removedAt: null };
  return (await tx.member.findFirst({ where, select: { email: true } }))?.email ?? null;
}
