import type { Role } from '@underlath/contract';
import type { Actor } from './actor.ts';
import type { ApiKeyPrincipal, MemberPrincipal } from './principals.ts';

/** Whom a service works for: a signed-in member or an API key of one company. */
export interface Caller {
  companyId: string;
  role: Role;
  /** The member it is put down to; for an API key, the member who made it. */
  memberId: string;
  actor: Actor;
}

/** What a role may see and do is asked before, of the whole principal; which session asks makes no difference. */
type Doer = Omit<MemberPrincipal, 'switches' | 'sessionId'> | Omit<ApiKeyPrincipal, 'switches' | 'use'>;

export function callerOf(principal: Doer): Caller {
  const { companyId, role, name, kind, actorId } = principal;
  const id = principal.kind === 'member' ? principal.memberId : principal.apiKeyId;
  return { companyId, role, memberId: actorId, actor: { kind, id, name } };
}
