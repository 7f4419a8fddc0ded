import type { CompanySwitches, Role } from '@underlath/contract';
import type { Prisma } from '../../generated/prisma/client.ts';
import type { Database, Tx } from '../database/database.ts';
import { orAway } from '../database/database-errors.ts';
import { newId } from '../ids.ts';
import { hashSecret, newSecret } from '../secrets.ts';

export interface SignedIn {
  /** Goes into the cookie; the database keeps its hash. */
  token: string;
  userId: string;
  expiresAt: Date;
}

/** Where a person signs in from. */
export interface SeenDevice {
  userAgent?: string | undefined;
  address?: string | undefined;
}

/** Whom a session belongs to, and where they work. */
export interface SessionMember {
  sessionId: string;
  userId: string;
  companyId: string;
  memberId: string;
  name: string;
  role: Role;
  /** What the company lets its people see and do. */
  switches: CompanySwitches;
}

export type SessionRow = Prisma.SessionGetPayload<object>;

const hourSeconds = 3_600;
const daySeconds = 24 * hourSeconds;
/** However much a session is used, it ends then. Common practice, no source. */
const longestSeconds = 90 * daySeconds;
/**
 * How long a session may lie unused. A phone in a truck is picked up again after weeks, and shows no prices of its own
 * accord; whoever can invite people and sign for the company signs in every day. Common practice, no source.
 */
export const idleSeconds = {
  crew: 30 * daySeconds,
  estimator: 7 * daySeconds,
  owner: daySeconds,
} as const satisfies Record<Role, number>;
/** The last use is written no more often than this. */
const noteUseAfterSeconds = 300;

const idleOfRole = `case m.role ${Object.entries(idleSeconds)
  .map(([role, seconds]) => `when '${role}' then interval '${seconds} seconds'`)
  .join(' ')} end`;

/** One statement on every request of a signed-in person; it runs before the company is known. */
const memberOfSession = `
  with found as (
    select s.id as "sessionId", m.user_id as "userId", m.company_id as "companyId", m.id as "memberId", m.name, m.role,
      json_build_object('crewSeesMoney', c.crew_sees_money, 'estimatorsEditCostBook', c.estimators_edit_cost_book) as switches
    from session s join member m on m.user_id = s.user_id and m.removed_at is null join company c on c.id = m.company_id
    where s.token_hash = $1 and s.expires_at > now() and s.last_used_at > now() - (${idleOfRole})
    order by m.created_at limit 1
  ), noted as (
    update session set last_used_at = now()
    where id = (select "sessionId" from found) and last_used_at < now() - interval '${noteUseAfterSeconds} seconds'
  )
  select * from found`;

/** The member behind a session's token, or null when the session has ended, lay unused too long, or the member was removed. */
export const memberOf = ({ peoplePool }: Database, token: string): Promise<SessionMember | null> =>
  orAway(async () => {
    const { rows } = await peoplePool.query<SessionMember>({
      name: 'member-of-session',
      text: memberOfSession,
      values: [hashSecret(token)],
    });
    return rows[0] ?? null;
  });

export async function beginSession(tx: Tx, userId: string, { userAgent, address }: SeenDevice = {}): Promise<SignedIn> {
  const token = newSecret();
  const now = new Date();
  const expiresAt = new Date(now.getTime() + longestSeconds * 1000);
  await tx.session.create({
    data: {
      id: newId(),
      tokenHash: hashSecret(token),
      userId,
      createdAt: now,
      lastUsedAt: now,
      expiresAt,
      userAgent: userAgent?.slice(0, 400) ?? null,
      ipAddress: address ? shortenAddress(address) : null,
    },
  });
  return { token, userId, expiresAt };
}

export const listSessions = (tx: Tx, userId: string): Promise<SessionRow[]> =>
  tx.session.findMany({ where: { userId, expiresAt: { gt: new Date() } }, orderBy: { lastUsedAt: 'desc' } });

/** How many ended. */
export const endSessions = async (
  tx: Tx,
  userId: string,
  which: { id: string } | { not: string } | 'all',
): Promise<number> => {
  const id = which === 'all' ? undefined : 'id' in which ? which.id : { not: which.not };
  return (await tx.session.deleteMany({ where: { userId, ...(id && { id }) } })).count;
};

/** An address without its last part: enough to know one's own town's network again, too little to follow somebody. */
export function shortenAddress(address: string): string {
  const plain = address.replace(/^::ffff:/, '');
  if (/^\d+(\.\d+){3}$/.test(plain)) return plain.replace(/\.\d+$/, '.x');
  return `${plain.split(':').slice(0, 3).join(':')}:x`;
}
