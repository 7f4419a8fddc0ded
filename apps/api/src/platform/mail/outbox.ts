import * as z from 'zod';
import type { MailKind } from '../../generated/prisma/client.ts';
import type { Tx } from '../database/database.ts';
import { newId } from '../ids.ts';
import { ProblemError } from '../problem-error.ts';
import { defineJob, type JobSender } from '../queue.ts';

export const sendMailJob = defineJob({
  name: 'mail.send',
  data: z.object({ companyId: z.uuid(), mailId: z.uuid() }),
  // Doubling from 30 s, each pause up to twice as long: ten tries after the first reach over a night, 9 to 17 hours.
  retryLimit: 10,
  retryDelaySeconds: 30,
  expireInSeconds: 120,
});

export interface OutgoingLetter {
  to: string;
  subject: string;
  text: string;
  locale: 'en' | 'es';
  /** Where an answer goes when the company has no address of its own: to the person who had it sent. */
  writerEmail?: string | null;
}

/** What a letter tells of; absent parts it has nothing to do with. */
export interface MailAbout {
  kind: MailKind;
  projectId?: string;
  changeOrderId?: string;
  /** Of the change order. */
  version?: number;
  questionId?: string;
  noticeId?: string;
}

/** In whose name letters go out; an answer to them goes to its address. */
export interface Sender {
  readonly name: string;
  readonly email: string | null;
}

export interface MailOutbox {
  /**
   * Leaves a letter in the caller's transaction; it goes out exactly when that is committed. Answers the mail's id.
   * @throws ProblemError `too-many-requests` past what a company may send in an hour
   */
  post(tx: Tx, companyId: string, letter: OutgoingLetter, about: MailAbout): Promise<string>;
  /** The same for several letters at once, whose sender is known. @throws ProblemError `too-many-requests` */
  postAll(
    tx: Tx,
    companyId: string,
    letters: readonly { readonly letter: OutgoingLetter; readonly about: MailAbout }[],
    sender: Sender,
  ): Promise<string[]>;
}

export function createOutbox(queue: JobSender, mailPerHour: number): MailOutbox {
  const postAll: MailOutbox['postAll'] = async (tx, companyId, letters, sender) => {
    if (letters.length === 0) return [];
    if (letters.some(({ about }) => !neverRefused.has(about.kind))) await assertRoom(tx, companyId, mailPerHour);
    const rows = letters.map(({ letter: { writerEmail, ...letter }, about }) => ({
      companyId,
      id: newId(),
      fromName: sender.name,
      replyTo: sender.email ?? writerEmail ?? null,
      ...letter,
      ...about,
    }));
    await tx.mail.createMany({ data: rows });
    for (const { id } of rows) await queue.enqueue(tx, sendMailJob, { companyId, mailId: id });
    return rows.map(({ id }) => id);
  };
  return {
    postAll,
    post: async (tx, companyId, letter, about) => {
      const sender = await tx.company.findUniqueOrThrow({
        where: { id: companyId },
        select: { name: true, email: true },
      });
      const [mailId = ''] = await postAll(tx, companyId, [{ letter, about }], sender);
      return mailId;
    },
  };
}

/**
 * What a client does, and what a person hears about their own account, is never refused for the letters that the company
 * sent; they are counted all the same. Letters about accounts have a limit of their own, and a refusal would tell a stranger
 * which addresses are known.
 */
const neverRefused: ReadonlySet<MailKind> = new Set([
  'questionAsked',
  'decisionTold',
  'decisionCopy',
  'accountLink',
  'accountTold',
]);
const hourMs = 3_600_000;

/** One letter of a company after another, until the transaction ends: each counts those before it. Every row that the work holds is held before. */
async function assertRoom(tx: Tx, companyId: string, mailPerHour: number): Promise<void> {
  await tx.$executeRaw`select pg_advisory_xact_lock(hashtextextended(${`letters of ${companyId}`}, 0))`;
  const now = Date.now();
  const first = await tx.mail.findFirst({
    where: { companyId, createdAt: { gt: new Date(now - hourMs) } },
    orderBy: { createdAt: 'desc' },
    skip: mailPerHour - 1,
    select: { createdAt: true },
  });
  if (!first) return;
  const seconds = Math.max(1, Math.ceil((first.createdAt.getTime() + hourMs - now) / 1000));
  throw new ProblemError(
    'too-many-requests',
    `Your company sent ${mailPerHour} letters within an hour, the most this server sends for one. Nothing was sent or changed now; try again in ${Math.ceil(seconds / 60)} min.`,
    { headers: { 'retry-after': String(seconds) } },
  );
}
