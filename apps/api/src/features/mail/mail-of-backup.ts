import type pg from 'pg';
import type { Database } from '../../platform/database/database.ts';

const WAITED = 'It waited when the backup was taken; whether it went out since then is not known here.';

/**
 * In the transaction of a restore: mails that waited may have gone out since, or be out of date. Nobody gets them twice
 * without being asked, so they stand as given up, in the to-do of their project.
 */
export const giveUpWaitingMail = (client: pg.ClientBase): Promise<unknown> =>
  client.query(`update mail set state = 'given-up', server_words = $1 where state = 'waiting'`, [WAITED]);

/** A line for each of them, for whoever restored. */
export async function tellUnsentMail({ owner }: Pick<Database, 'owner'>): Promise<string[]> {
  const rows = await owner.mail.findMany({
    where: { state: 'givenUp', serverWords: WAITED, replacedAt: null },
    orderBy: { createdAt: 'asc' },
  });
  if (rows.length === 0) return [];
  return [
    `${rows.length === 1 ? 'One mail' : `${rows.length} mails`} waited when the backup was taken and will not go out by itself; send it again where it still matters:`,
    ...rows.map(({ to, subject, createdAt }) => `  ${createdAt.toISOString().slice(0, 10)} to ${to}: ${subject}`),
  ];
}
