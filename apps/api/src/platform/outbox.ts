import * as z from 'zod';
import type { Database, Tx } from './database/database.ts';
import { newId } from './ids.ts';
import type { Letter, Mailer } from './mailer.ts';
import { defineJob, handleJob, type JobHandler, type JobSender } from './queue.ts';

export const sendMailJob = defineJob({
  name: 'mail.send',
  data: z.object({ companyId: z.uuid(), mailId: z.uuid() }),
  // Doubling from 30 s, eight tries reach a little over two hours.
  retryLimit: 8,
  retryDelaySeconds: 30,
  expireInSeconds: 120,
});

export interface Outbox {
  /** Leaves a letter in the caller's transaction; it goes out exactly when that is committed. Answers the mail's id. */
  post(tx: Tx, companyId: string, letter: Omit<Letter, 'id'>): Promise<string>;
}

export function createOutbox(queue: JobSender): Outbox {
  return {
    post: async (tx, companyId, letter) => {
      const mailId = newId();
      await tx.mail.create({ data: { companyId, id: mailId, ...letter } });
      await queue.enqueue(tx, sendMailJob, { companyId, mailId });
      return mailId;
    },
  };
}

/** Sends what waits, once; afterwards the row keeps whom and what about, but no link that opens anything. */
export function handleMail(database: Database, mailer: Mailer): JobHandler {
  return handleJob(sendMailJob, async ({ data: { companyId, mailId }, isLastTry }) => {
    const where = { companyId_id: { companyId, id: mailId } };
    const mail = await database.inCompany(companyId, (tx) => tx.mail.findUniqueOrThrow({ where }));
    if (mail.state === 'sent') return;
    try {
      await mailer.send(mail);
    } catch (error) {
      const failure = error instanceof Error ? error.message : String(error);
      const state = isLastTry ? 'failed' : 'waiting';
      await database.inCompany(companyId, (tx) => tx.mail.update({ where, data: { state, failure } }));
      throw error;
    }
    await database.inCompany(companyId, (tx) =>
      tx.mail.update({
        where,
        data: { state: 'sent', sentAt: new Date(), failure: null, text: withoutLinks(mail.text) },
      }),
    );
  });
}

const withoutLinks = (text: string): string => text.replace(/https?:\/\/\S+/g, '[link removed after sending]');
