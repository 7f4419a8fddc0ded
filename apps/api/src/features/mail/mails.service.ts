import type { Mail } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import type { MailOutbox } from '../../platform/mail/outbox.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertEmailConfirmed } from '../../shared/confirmed-email.ts';
import type { SendingService } from '../change-orders/sending.service.ts';
import type { RecordsService } from '../records/records.service.ts';
import { isOut, opensSomething, toMail } from './mail.mapper.ts';
import type { MailRow } from './mail.repository.ts';
import * as mails from './mail.repository.ts';

const dayMs = 86_400_000;
/** As long as a link of the contract's default. */
const linkDays = 14;

/** Sends again what was mailed about a change order. */
export class MailsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly outbox: MailOutbox,
    private readonly sending: SendingService,
  ) {}

  /**
   * The same letter, to the same or another address. Where it brought a link whose secret is no longer kept, or that has
   * ended, a new one takes its place and the old one ends.
   * @throws ProblemError `not-found`, `wrong-state` while it waits, or when its offer no longer stands
   */
  async sendAgain(caller: Caller, changeOrderId: string, id: string, to: string | undefined): Promise<Mail> {
    const { companyId } = caller;
    return this.database.inCompany(companyId, async (tx) => {
      const found = await this.requireMail(tx, companyId, changeOrderId, id);
      await assertEmailConfirmed(tx, companyId, caller.memberId);
      if (found.projectId) await this.records.lock(tx, companyId, found.projectId);
      // Read again under the project's turn: a second press meanwhile has replaced it.
      const mail = await this.requireMail(tx, companyId, changeOrderId, id);
      if (mail.state === 'waiting') throw wrongState('This e-mail is still waiting; it goes out by itself.');
      if (mail.replacedAt) throw wrongState('Another e-mail has taken the place of this one; send that one again.');
      const address = to ?? mail.to;
      await this.records.append(tx, {
        companyId,
        projectId: mail.projectId ?? '',
        actor: caller.actor,
        type: 'mail.sent-again',
        subjectId: changeOrderId,
        data: { mailId: id, to: address },
      });
      return opensSomething(mail) ? this.linkAgain(tx, caller, mail, address) : this.postAgain(tx, mail, address);
    });
  }

  private async requireMail(tx: Tx, companyId: string, changeOrderId: string, id: string): Promise<MailRow> {
    const mail = await mails.findMail(tx, companyId, id);
    if (mail?.changeOrderId !== changeOrderId) throw notFound('mail');
    return mail;
  }

  private async postAgain(tx: Tx, mail: MailRow, to: string): Promise<Mail> {
    const { companyId, id, subject, text, locale, replyTo, kind, projectId, changeOrderId, version, questionId } = mail;
    await mails.replaceMails(tx, companyId, { id }, this.clock.now());
    const letter = { to, subject, text, locale: locale === 'es' ? ('es' as const) : ('en' as const) };
    const about = {
      kind: kind ?? 'offer',
      ...(projectId && { projectId }),
      ...(changeOrderId && { changeOrderId }),
      ...(version && { version }),
      ...(questionId && { questionId }),
    };
    const mailId = await this.outbox.post(tx, companyId, { ...letter, writerEmail: replyTo }, about);
    return toMail((await mails.findMail(tx, companyId, mailId)) as MailRow);
  }

  private async linkAgain(tx: Tx, caller: Caller, mail: MailRow, to: string): Promise<Mail> {
    const { companyId } = mail;
    const [changeOrderId, version] = [mail.changeOrderId ?? '', mail.version ?? 0];
    const now = this.clock.now();
    const link = await mails.findLink(tx, companyId, changeOrderId, version);
    const works = link !== null && !link.revokedAt && link.expiresAt > now;
    if (works && !isOut(mail.state)) return this.postAgain(tx, mail, to);
    const expiresAt = works ? link.expiresAt : new Date(now.getTime() + linkDays * dayMs);
    await this.sending.renew(tx, caller, changeOrderId, { version, expiresAt, mailTo: to });
    const newest = await mails.findLinkMail(tx, companyId, changeOrderId, version);
    return toMail(newest as MailRow);
  }
}

const wrongState = (words: string) => new ProblemError('wrong-state', words);
