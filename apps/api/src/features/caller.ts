import type { Role } from '@underlath/contract';
import type { Actor } from './records/record-actor.ts';

/** Whom a service works for: a signed-in member or an API key of one company. */
export interface Caller {
  companyId: string;
  role: Role;
  actor: Actor & { kind: 'member' | 'api-key' };
}
