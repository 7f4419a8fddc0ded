import type { Prisma } from '../../generated/prisma/client.ts';

/** The client inside a transaction. */
export type Tx = Prisma.TransactionClient;

/** For whom a transaction works; row-level security shows exactly what these allow (see migration 0002). */
export interface Fence {
  companyId?: string;
  userId?: string;
  /** SHA-256 (hex) of a secret just presented: shows the one invitation, API key, client link or client session it opens. */
  tokenHash?: string;
  /** Whose repeated requests are looked up. */
  principal?: string;
}

/** Until the transaction ends, or its savepoint is given up. */
export const setFence = (tx: Tx, fence: Fence): Promise<unknown> =>
  tx.$queryRaw`select set_config('app.company_id', ${fence.companyId ?? ''}, true),
    set_config('app.user_id', ${fence.userId ?? ''}, true),
    set_config('app.token_hash', ${fence.tokenHash ?? ''}, true),
    set_config('app.principal', ${fence.principal ?? ''}, true)`;
