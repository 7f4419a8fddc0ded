import * as z from 'zod';
import type { MailKind } from '../generated/prisma/client.ts';
import type { Tx } from './database/database.ts';
import { newId } from './ids.ts';
import { defineJob, type JobSender } from './queue.ts';

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

export interface Outbox {
  /** Leaves a letter in the caller's transaction; it goes out exactly when that is committed. Answers the mail's id. */
  post(tx: Tx, companyId: string, letter: OutgoingLetter, about: MailAbout): Promise<string>;
}

export function createOutbox(queue: JobSender): Outbox {
  return {
    post: async (tx, companyId, { writerEmail, ...letter }, about) => {
      const company = await tx.company.findUniqueOrThrow({
        where: { id: companyId },
        select: { name: true, email: true },
      });
      const mailId = newId();
      const replyTo = company.email ?? writerEmail ?? null;
      await tx.mail.create({
        data: { companyId, id: mailId, fromName: company.name, replyTo, ...letter, ...about },
      });
      await queue.enqueue(tx, sendMailJob, { companyId, mailId });
      return mailId;
    },
  };
}
