import type { CompanySwitches, KeyUse, Role } from '@underlath/contract';

export interface MemberPrincipal {
  kind: 'member';
  sessionId: string;
  companyId: string;
  userId: string;
  memberId: string;
  name: string;
  role: Role;
  switches: CompanySwitches;
  /** Who did it, in records: the member's id. */
  actorId: string;
}

export interface ApiKeyPrincipal {
  kind: 'api-key';
  companyId: string;
  apiKeyId: string;
  name: string;
  /** In force now: the lower of the key's own and its maker's. */
  role: Role;
  use: KeyUse;
  switches: CompanySwitches;
  /** Who did it, in records: the id of the member who made the key. */
  actorId: string;
}

export interface ClientPrincipal {
  kind: 'client';
  companyId: string;
  /** The letter that was opened, by one of its links, in this session of one device. */
  letterId: string;
  linkId: string;
  sessionId: string;
  changeOrderId: string;
  version: number;
}

export type Principal = MemberPrincipal | ApiKeyPrincipal | ClientPrincipal;

/** What features know about presented secrets, by SHA-256 (hex). */
export interface PrincipalLookups {
  apiKey(tokenHash: string): Promise<ApiKeyPrincipal | null>;
  /** Of the letter that the address names. May throw a ProblemError about its link, which tells more than "sign in". */
  client(tokenHash: string, letterId: string): Promise<ClientPrincipal | null>;
}
