import type { ApiKey, Company, Invitation, Member } from '@underlath/contract';
import type { ApiKeyRow, CompanyRow, InvitationRow, MemberRow } from './members.repository.ts';

const toInstant = (date: Date | null): string | null => date?.toISOString() ?? null;

export const toCompany = ({ createdAt: _created, ...company }: CompanyRow): Company => company;

export const toMember = ({ id, version, name, email, role, createdAt, removedAt }: MemberRow): Member => ({
  id,
  version,
  name,
  email,
  role,
  createdAt: createdAt.toISOString(),
  removedAt: toInstant(removedAt),
});

const person = (id: string, names: Map<string, string>) => ({ id, name: names.get(id) ?? '' });

export const toInvitation = (row: InvitationRow, names: Map<string, string>): Invitation => ({
  id: row.id,
  email: row.email,
  role: row.role,
  invitedBy: person(row.invitedById, names),
  createdAt: row.createdAt.toISOString(),
  expiresAt: row.expiresAt.toISOString(),
  acceptedAt: toInstant(row.acceptedAt),
  revokedAt: toInstant(row.revokedAt),
});

export const toApiKey = (row: ApiKeyRow, names: Map<string, string>): ApiKey => ({
  id: row.id,
  name: row.name,
  role: row.role,
  use: row.use,
  prefix: row.prefix,
  createdBy: person(row.createdById, names),
  createdAt: row.createdAt.toISOString(),
  expiresAt: row.expiresAt.toISOString(),
  lastUsedAt: toInstant(row.lastUsedAt),
  revokedAt: toInstant(row.revokedAt),
});
