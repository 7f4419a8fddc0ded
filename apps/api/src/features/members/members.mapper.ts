import type { ApiKey, Company, Invitation, Member } from '@underlath/contract';
import type { ApiKeyRow, CompanyRow, InvitationRow, MemberRow } from './members.repository.ts';

const toInstant = (date: Date | null): string | null => date?.toISOString() ?? null;

export const toCompany = ({ createdAt: _created, ...company }: CompanyRow): Company => company;

export const toMember = ({ id, name, email, role, createdAt, removedAt }: MemberRow): Member => ({
  id,
  name,
  email,
  role,
  createdAt: createdAt.toISOString(),
  removedAt: toInstant(removedAt),
});

export const toInvitation = (row: InvitationRow): Invitation => ({
  id: row.id,
  email: row.email,
  role: row.role,
  createdAt: row.createdAt.toISOString(),
  expiresAt: row.expiresAt.toISOString(),
  acceptedAt: toInstant(row.acceptedAt),
  revokedAt: toInstant(row.revokedAt),
});

export const toApiKey = ({ id, name, role, prefix, createdAt, revokedAt }: ApiKeyRow): ApiKey => ({
  id,
  name,
  role,
  prefix,
  createdAt: createdAt.toISOString(),
  revokedAt: toInstant(revokedAt),
});
