import type { AccountView, accountRoutes, BodyOut, Delivery, Locale } from '@underlath/contract';
import { text } from '@underlath/rules';
import { emailTaken, requirePassword } from '../../platform/accounts/credentials.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { hashSecret } from '../../platform/secrets.ts';
import type { AccountMail } from './account-mail.ts';
import * as accounts from './accounts.repository.ts';
import { linkGone } from './passwords.service.ts';

/** Who a person is here: their name, and an address that is known to reach them. */
export class ProfileService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly mail: AccountMail,
  ) {}

  view(userId: string): Promise<AccountView> {
    return accounts.inAccounts(this.database, (tx) => this.viewIn(tx, userId));
  }

  async rename(userId: string, name: string): Promise<AccountView> {
    return accounts.inAccounts(this.database, async (tx) => {
      await accounts.updateUser(tx, userId, { name });
      await this.mail.note(tx, userId, 'name.changed');
      return this.viewIn(tx, userId);
    });
  }

  /** @throws ProblemError `wrong-state` when it is confirmed, `too-many-requests` */
  async sendConfirmation(userId: string, locale: Locale): Promise<{ delivery: Delivery }> {
    await accounts.inAccounts(this.database, async (tx) => {
      await accounts.lockUser(tx, userId);
      const { email, emailVerified } = await accounts.findUser(tx, userId);
      if (emailVerified) throw new ProblemError('wrong-state', `${email} is confirmed already.`);
      if (!(await this.mail.link(tx, { userId, kind: 'confirmEmail', email, locale }))) throw tooManyLinks();
    });
    return { delivery: this.mail.delivery };
  }

  /** Mails whoever opened a company the link that confirms their address, unless it is confirmed already. */
  async welcome(userId: string, locale: Locale): Promise<void> {
    await accounts.inAccounts(this.database, async (tx) => {
      const { email, emailVerified } = await accounts.findUser(tx, userId);
      if (!emailVerified) await this.mail.link(tx, { userId, kind: 'confirmEmail', email, locale });
    });
  }

  /**
   * The new address counts once its link was opened; the one until now is told at once. An address that somebody else signs
   * in with is answered alike and mailed nothing. @throws ProblemError `wrong-credentials`, `wrong-state`, `too-many-requests`
   */
  async changeEmail(
    userId: string,
    body: BodyOut<typeof accountRoutes.changeEmail>,
    locale: Locale,
  ): Promise<{ delivery: Delivery }> {
    await requirePassword(this.database.people, { id: userId }, body.password);
    const email = body.email.toLowerCase();
    await accounts.inAccounts(this.database, async (tx) => {
      await accounts.lockUser(tx, userId);
      const user = await accounts.findUser(tx, userId);
      if (user.email === email) throw new ProblemError('wrong-state', 'You sign in with this address already.');
      await this.mail.tell(tx, userId, user.email, 'email-asked', locale, email);
      const isMailed = (await accounts.findUserByEmail(tx, email)) === null;
      const isLinked = await this.mail.link(tx, { userId, kind: 'changeEmail', email, locale, isMailed });
      if (!isLinked) throw tooManyLinks();
    });
    return { delivery: this.mail.delivery };
  }

  /** Works without being signed in: the letter may be read on another device. @throws ProblemError `link-gone`, `already-exists` */
  async confirm(token: string, locale: Locale): Promise<{ email: string }> {
    const now = this.clock.now();
    return accounts.inAccounts(this.database, async (tx) => {
      const link = await accounts.takeLink(tx, hashSecret(token), ['confirmEmail', 'changeEmail'], now);
      if (!link) throw linkGone();
      const { userId, email } = link;
      await accounts.lockUser(tx, userId);
      const before = await accounts.findUser(tx, userId);
      if (link.kind === 'changeEmail') await this.move(tx, before, email, locale);
      else if (before.email !== email) throw linkGone();
      await accounts.updateUser(tx, userId, { emailVerified: true });
      await this.mail.note(tx, userId, 'email.confirmed');
      return { email };
    });
  }

  private async move(tx: Tx, before: accounts.UserRow, email: string, locale: Locale): Promise<void> {
    if (await accounts.findUserByEmail(tx, email)) throw emailTaken();
    await accounts.updateUser(tx, before.id, { email }).catch((error: { code?: string }) => {
      // Somebody else got it in the same moment.
      throw error.code === 'P2002' ? emailTaken() : error;
    });
    // Links that were mailed to the address until now prove nothing any more.
    await accounts.endLinks(tx, before.id, this.clock.now());
    await this.mail.tell(tx, before.id, before.email, 'email-changed', locale, email);
  }

  private async viewIn(tx: Tx, userId: string): Promise<AccountView> {
    const { name, email, emailVerified } = await accounts.findUser(tx, userId);
    const pending = await accounts.findPendingEmail(tx, userId, this.clock.now());
    const codes = await accounts.findCodes(tx, userId);
    const passkeys = await accounts.listPasskeys(tx, userId);
    return {
      name,
      email,
      emailConfirmed: emailVerified,
      pendingEmail: pending?.email ?? null,
      codesOn: Boolean(codes?.confirmedAt),
      passkeys: passkeys.map(({ id, name: called, createdAt, lastUsedAt }) => ({
        id,
        name: called,
        createdAt: createdAt.toISOString(),
        lastUsedAt: lastUsedAt?.toISOString() ?? null,
      })),
      recoveryCodesLeft: await accounts.countRecoveryCodes(tx, userId),
      delivery: this.mail.delivery,
    };
  }
}

const tooManyLinks = (): ProblemError =>
  new ProblemError(
    'too-many-requests',
    text(
      'Several letters went out within the hour. Look for the newest, or wait an hour.',
      'Salieron varias cartas en la última hora. Busque la más nueva, o espere una hora.',
    ),
    {
      headers: { 'retry-after': '3600' },
    },
  );
