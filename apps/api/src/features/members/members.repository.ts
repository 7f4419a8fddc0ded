import type { Prisma, Role } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import { setFence } from '../../platform/database/fence.ts';

export type CompanyRow = Prisma.CompanyGetPayload<object>;
export type MemberRow = Prisma.MemberGetPayload<object>;
export type InvitationRow = Prisma.InvitationGetPayload<object>;
export type ApiKeyRow = Prisma.ApiKeyGetPayload<object>;

export const insertCompany = (tx: Tx, id: string, name: string): Promise<CompanyRow> =>
  tx.company.create({ data: { id, name } });

export const findCompany = (tx: Tx, id: string): Promise<CompanyRow> => tx.company.findUniqueOrThrow({ where: { id } });

/** Holds the company's row until the transaction ends: one change of its people at a time. Rows that name it are not held up. */
export const lockCompany = (tx: Tx, id: string) =>
  tx.$queryRaw`select 1 from company where id = ${id}::uuid for no key update`;

/** Opens the fence further, once it is known to which company or whom a presented secret leads. */
export const widenFence = setFence;

/** One opening of a company at a time, until the transaction ends. */
export const lockSignUp = (tx: Tx) => tx.$executeRaw`select pg_advisory_xact_lock(hashtextextended('sign-up', 0))`;

export const updateCompany = (tx: Tx, id: string, data: Prisma.CompanyUpdateInput): Promise<CompanyRow> =>
  tx.company.update({ where: { id }, data: { ...data, version: { increment: 1 } } });

export const insertCostBook = (tx: Tx, companyId: string, book: Prisma.InputJsonValue) =>
  tx.costBook.create({ data: { companyId, version: 1, book } });

export const insertMember = (tx: Tx, data: Prisma.MemberUncheckedCreateInput): Promise<MemberRow> =>
  tx.member.create({ data });

export const findMember = (tx: Tx, companyId: string, id: string): Promise<MemberRow | null> =>
  tx.member.findUnique({ where: { companyId_id: { companyId, id } } });

export const findMemberOfUser = (tx: Tx, companyId: string, userId: string): Promise<MemberRow | null> =>
  tx.member.findUnique({ where: { companyId_userId: { companyId, userId } } });

/** Where a person works now; behind the person's own fence. */
export const listMemberships = (tx: Tx, userId: string): Promise<MemberRow[]> =>
  tx.member.findMany({ where: { userId, removedAt: null }, orderBy: { createdAt: 'asc' } });

export const listMembers = (tx: Tx, companyId: string): Promise<MemberRow[]> =>
  tx.member.findMany({ where: { companyId }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] });

export const countOwners = (tx: Tx, companyId: string): Promise<number> =>
  tx.member.count({ where: { companyId, role: 'owner', removedAt: null } });

export const updateMember = (
  tx: Tx,
  companyId: string,
  id: string,
  data: Prisma.MemberUpdateInput,
): Promise<MemberRow> =>
  tx.member.update({ where: { companyId_id: { companyId, id } }, data: { ...data, version: { increment: 1 } } });

export const insertInvitation = (tx: Tx, data: Prisma.InvitationUncheckedCreateInput): Promise<InvitationRow> =>
  tx.invitation.create({ data });

/** Behind the fence of the secret's hash, which shows this one row. */
export const findInvitationByHash = (tx: Tx, tokenHash: string): Promise<InvitationRow | null> =>
  tx.invitation.findUnique({ where: { tokenHash } });

export const listInvitations = (tx: Tx, companyId: string): Promise<InvitationRow[]> =>
  tx.invitation.findMany({ where: { companyId }, orderBy: [{ createdAt: 'desc' }, { id: 'asc' }] });

/** As it is now; the caller holds the company's row, so nobody else takes it meanwhile. */
export const findInvitation = (tx: Tx, companyId: string, id: string): Promise<InvitationRow> =>
  tx.invitation.findUniqueOrThrow({ where: { companyId_id: { companyId, id } } });

export const acceptInvitation = (tx: Tx, companyId: string, id: string, now: Date) =>
  tx.invitation.update({ where: { companyId_id: { companyId, id } }, data: { acceptedAt: now } });

/** False when there is no such invitation or it is over already. */
export async function revokeInvitation(tx: Tx, companyId: string, id: string, now: Date): Promise<boolean> {
  const revoked = await tx.invitation.updateMany({
    where: { companyId, id, acceptedAt: null, revokedAt: null },
    data: { revokedAt: now },
  });
  return revoked.count === 1;
}

/** The number of links that worked until now. */
export async function revokeInvitationsOf(tx: Tx, companyId: string, invitedById: string, now: Date) {
  const revoked = await tx.invitation.updateMany({
    where: { companyId, invitedById, acceptedAt: null, revokedAt: null, expiresAt: { gt: now } },
    data: { revokedAt: now },
  });
  return revoked.count;
}

export const insertApiKey = (tx: Tx, data: Prisma.ApiKeyUncheckedCreateInput): Promise<ApiKeyRow> =>
  tx.apiKey.create({ data });

/** Behind the fence of the secret's hash, which shows this one row. */
export const findApiKeyByHash = (tx: Tx, tokenHash: string): Promise<ApiKeyRow | null> =>
  tx.apiKey.findUnique({ where: { tokenHash } });

export const listApiKeys = (tx: Tx, companyId: string): Promise<ApiKeyRow[]> =>
  tx.apiKey.findMany({ where: { companyId }, orderBy: [{ createdAt: 'desc' }, { id: 'asc' }] });

export const touchApiKey = (tx: Tx, companyId: string, id: string, now: Date) =>
  tx.apiKey.update({ where: { companyId_id: { companyId, id } }, data: { lastUsedAt: now } });

/** The number of keys that could do more. */
export async function lowerApiKeys(tx: Tx, companyId: string, createdById: string, role: Role, above: Role[]) {
  const lowered = await tx.apiKey.updateMany({
    where: { companyId, createdById, revokedAt: null, role: { in: above } },
    data: { role },
  });
  return lowered.count;
}

/** The number of keys that worked until now. */
export async function revokeApiKeys(
  tx: Tx,
  companyId: string,
  which: { id: string } | { createdById: string },
  now: Date,
) {
  const revoked = await tx.apiKey.updateMany({
    where: { companyId, ...which, revokedAt: null },
    data: { revokedAt: now },
  });
  return revoked.count;
}
