import type { Delivery, Locale, PeopleEventType, PeopleFacts } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import type { MailOutbox } from '../../platform/mail/outbox.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import { nobody, type PeopleLogService } from '../people-log/people-log.service.ts';
import {
  type AccountNews,
  confirmDays,
  confirmLetter,
  newsLetter,
  resetLetter,
  resetMinutes,
} from './account-letters.ts';
import * as accounts from './accounts.repository.ts';

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
/** Links to one person within an hour: enough for a slow mailbox, too few to fill one. Common practice, no source. */
const mostLinksAnHour = 5;

/** What the log of people says of the same. */
const logged: Readonly<Partial<Record<AccountNews, PeopleEventType>>> = {
  'password-changed': 'password.changed',
  'password-reset': 'password.reset',
  'email-changed': 'email.changed',
  'codes-on': 'second-factor.on',
  'codes-off': 'second-factor.off',
  'passkey-added': 'passkey.added',
  'passkey-removed': 'passkey.removed',
  'recovery-codes-made': 'recovery-codes.made',
  'recovery-code-used': 'recovery-code.used',
};

interface LinkWanted {
  userId: string;
  kind: accounts.LinkKind;
  /** Where it is mailed, and what opening it proves. */
  email: string;
  locale: Locale;
  /** False for an address that is somebody else's: all looks as if, and nobody ever holds the link. */
  isMailed?: boolean;
}

/** Letters to a person about their own account, and the notes of it. Each goes out through the outbox of the company they work for. */
export class AccountMail {
  constructor(
    private readonly outbox: MailOutbox,
    private readonly clock: Clock,
    private readonly peopleLog: PeopleLogService,
    private readonly publicUrl: string,
    /** How letters leave this server, which the screens say. */
    readonly delivery: Delivery,
  ) {}

  /**
   * Makes a link and mails it; earlier ones of the same kind end. Only its hash is kept. Kinds are counted apart: anybody may
   * ask for a forgotten password's, and must not use up the others.
   * @returns false when too many went out within the hour, or the person works for no company
   */
  async link(tx: Tx, { userId, kind, email, locale, isMailed = true }: LinkWanted): Promise<boolean> {
    const now = this.clock.now();
    const member = await accounts.findMembership(tx, userId);
    const lately = await accounts.countLinksSince(tx, userId, kind, new Date(now.getTime() - hourMs));
    if (!member || lately >= mostLinksAnHour) return false;
    const secret = newSecret();
    const lifeMs = kind === 'resetPassword' ? resetMinutes * minuteMs : confirmDays * 24 * hourMs;
    await accounts.endLinks(tx, userId, now, [kind]);
    await accounts.insertLink(tx, {
      id: newId(),
      userId,
      kind,
      email,
      tokenHash: hashSecret(secret),
      createdAt: now,
      expiresAt: new Date(now.getTime() + lifeMs),
    });
    if (!isMailed) return true;
    const letter =
      kind === 'resetPassword'
        ? resetLetter(`${this.publicUrl}/new-password#${secret}`, locale)
        : confirmLetter(`${this.publicUrl}/confirm-email#${secret}`, locale);
    await this.outbox.post(tx, member.companyId, { to: email, ...letter, locale }, { kind: 'accountLink' });
    return true;
  }

  /** Mails the person what happened, and notes it. */
  async tell(tx: Tx, userId: string, to: string, what: AccountNews, locale: Locale, more?: string): Promise<void> {
    const member = await accounts.findMembership(tx, userId);
    if (!member) return;
    const letter = newsLetter(what, locale, more);
    await this.outbox.post(tx, member.companyId, { to, ...letter, locale }, { kind: 'accountTold' });
    const type = logged[what];
    if (type) await this.note(tx, userId, type);
  }

  /** Somebody was not let in as this person. */
  async noteRefused(tx: Tx, userId: string, data: PeopleFacts): Promise<void> {
    const member = await accounts.findMembership(tx, userId);
    if (!member) return;
    const note = { type: 'sign-in.refused', actor: nobody, subjectId: member.id, data } as const;
    await this.peopleLog.note(tx, member.companyId, note);
  }

  /** What a person did to their own account, where they work. */
  async note(tx: Tx, userId: string, type: PeopleEventType, data: PeopleFacts = {}): Promise<void> {
    const member = await accounts.findMembership(tx, userId);
    if (!member) return;
    const { companyId, id, name } = member;
    await this.peopleLog.note(tx, companyId, { type, actor: { kind: 'member', id, name }, subjectId: id, data });
  }
}
