import { buffer } from 'node:stream/consumers';
import type { Clock } from '../../platform/clock.ts';
import type { Database } from '../../platform/database/database.ts';
import { sha256Of } from '../../platform/hash.ts';
import { type Attachment, type Mailer, MailRefusedError, type SentMail } from '../../platform/mail/mailer.ts';
import { sendMailJob } from '../../platform/mail/outbox.ts';
import { handleJob, type JobHandler } from '../../platform/queue.ts';
import { systemActor } from '../../shared/actor.ts';
import { toWord } from '../../shared/enum-words.ts';
import type { RecordsService } from '../records/records.service.ts';
import type { ReportsService } from '../reports/reports.service.ts';
import { isOut, opensSomething } from './mail.mapper.ts';
import type { MailRow } from './mail.repository.ts';
import * as mails from './mail.repository.ts';

/** Replies of a server are short (RFC 5321, 4.5.3.1.5: 512 octets a line); what an error says beyond is noise. */
const mostWords = 500;

/** Carries out what waits in the outbox, and keeps what became of it beside the mail and in the record. */
export class MailSender {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly mailer: Mailer,
    private readonly reports: Pick<ReportsService, 'sentPdf'>,
  ) {}

  /** A mail that was refused for good is done; one that may still get through throws, so that the queue tries again. */
  async send(companyId: string, id: string, isLastTry: boolean): Promise<void> {
    const mail = await this.database.inCompany(companyId, (tx) => mails.findMail(tx, companyId, id));
    if (mail?.state !== 'waiting') return;
    const tried = { triedAt: this.clock.now(), tries: mail.tries + 1 };
    let sent: SentMail;
    try {
      sent = await this.mailer.send({ ...mail, attachments: await this.attachments(mail) });
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      if (error instanceof MailRefusedError) return this.settle(mail, 'refused', why, tried);
      await this.settle(mail, isLastTry ? 'givenUp' : 'waiting', why, tried);
      throw error;
    }
    await this.settle(mail, sent.state, sent.words, tried);
  }

  /** The signer's copy carries the PDF, made from the stored document each time it is tried. */
  private async attachments({ companyId, kind, changeOrderId, version, locale }: MailRow): Promise<Attachment[]> {
    if (kind !== 'decisionCopy' || changeOrderId === null || version === null) return [];
    const pdf = await this.reports.sentPdf(companyId, changeOrderId, version, locale === 'es' ? 'es' : 'en');
    return [{ filename: pdf.fileName, contentType: 'application/pdf', content: await buffer(pdf.stream) }];
  }

  /** The row and its event in one transaction; a try that may be repeated leaves no event. */
  private async settle(
    mail: MailRow,
    state: MailRow['state'],
    said: string,
    tried: Pick<MailRow, 'triedAt' | 'tries'>,
  ) {
    const { companyId, id, kind, to, text, projectId, changeOrderId, noticeId } = mail;
    const serverWords = said.replace(/\p{Cc}+/gu, ' ').slice(0, mostWords);
    await this.database.inCompany(companyId, async (tx) => {
      if (projectId && state !== 'waiting') await this.records.lock(tx, companyId, projectId);
      const moved = await mails.moveMail(tx, companyId, id, {
        state,
        serverWords,
        ...tried,
        ...(isOut(state) && opensSomething(mail) && { text: withoutLinks(text) }),
      });
      if (!moved || !projectId || state === 'waiting') return;
      await this.records.append(tx, {
        companyId,
        projectId,
        actor: systemActor,
        type: `mail.${toWord(state)}`,
        subjectId: changeOrderId ?? noticeId ?? projectId,
        data: { mailId: id, kind: kind && toWord(kind), to, textSha256: sha256Of(text), serverWords },
      });
    });
  }
}

export const handleMail = (sender: MailSender): JobHandler =>
  handleJob(sendMailJob, ({ data, isLastTry }) => sender.send(data.companyId, data.mailId, isLastTry));

const withoutLinks = (text: string): string => text.replace(/https?:\/\/\S+/g, '[link removed after sending]');
