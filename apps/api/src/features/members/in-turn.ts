import type { Tx } from '../../platform/database/database.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import * as members from './members.repository.ts';

/**
 * Rights change one after another in a company, and whoever changes them is looked at again once it is their turn: the owner
 * who asked may have been removed while the request was on its way. @throws ProblemError `not-allowed`
 */
export async function takeOwnersTurn(tx: Tx, { companyId, memberId }: Caller): Promise<void> {
  await members.lockCompany(tx, companyId);
  const by = await members.findMember(tx, companyId, memberId);
  if (by && !by.removedAt && by.role === 'owner') return;
  throw new ProblemError('not-allowed', 'You are no owner of this company any more.');
}
