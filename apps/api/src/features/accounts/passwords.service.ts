import type { accountRoutes, BodyOut, Delivery, Locale } from '@underlath/contract';
import { text } from '@underlath/rules';
import { assertPassword, assertStillRight, requirePassword, setPassword } from '../../platform/accounts/credentials.ts';
import { hashPassword } from '../../platform/accounts/passwords.ts';
import { endSessions } from '../../platform/accounts/sessions.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { hashSecret } from '../../platform/secrets.ts';
import type { AccountMail } from './account-mail.ts';
import * as accounts from './accounts.repository.ts';

/** The signed-in person, and which of their sessions asks. */
export interface Own {
  userId: string;
  sessionId: string;
}

/** An address that is known is answered no later than one that is not: writing a link and a letter took 640 ms on a machine of two cores with fourteen at work. */
const sameForAllMs = 1_000;

/** Changing a password, and choosing a new one when it is forgotten. */
export class PasswordsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly mail: AccountMail,
  ) {}

  /** Every other session ends, open links too, and the person is told. @throws ProblemError `wrong-credentials`, `invalid-input` */
  async change(
    { userId, sessionId }: Own,
    { password, newPassword }: BodyOut<typeof accountRoutes.changePassword>,
    locale: Locale,
  ): Promise<void> {
    const right = await requirePassword(this.database.people, { id: userId }, password);
    assertPassword(newPassword, await this.knownWords(userId), '/newPassword');
    const hashed = await hashPassword(newPassword);
    await accounts.inAccounts(this.database, async (tx) => {
      await accounts.lockUser(tx, userId);
      await assertStillRight(tx, right);
      const user = await this.replace(tx, userId, hashed);
      await endSessions(tx, userId, { not: sessionId });
      await this.mail.tell(tx, userId, user.email, 'password-changed', locale);
    });
  }

  /** Answers the same, and after the same time, whether or not somebody signs in with the address. */
  async forgotten(email: string, locale: Locale): Promise<{ delivery: Delivery }> {
    const rest = new Promise((done) => setTimeout(done, sameForAllMs));
    await accounts.inAccounts(this.database, async (tx) => {
      const user = await accounts.findUserByEmail(tx, email.toLowerCase());
      if (!user) return;
      await accounts.lockUser(tx, user.id);
      await this.mail.link(tx, { userId: user.id, kind: 'resetPassword', email: user.email, locale });
    });
    await rest;
    return { delivery: this.mail.delivery };
  }

  /**
   * Ends every session. A second step stays: whoever reads the mail has one factor. The link also shows that mail reaches
   * the address; where that is shown for the first time, whoever set up a second step before may have been anybody, and it
   * goes. Answers the address that the person signs in with. @throws ProblemError `link-gone`, `invalid-input`
   */
  async reset({ token, password }: BodyOut<typeof accountRoutes.resetPassword>, locale: Locale): Promise<string> {
    const link = await this.database.people.accountLink.findUnique({ where: { tokenHash: hashSecret(token) } });
    if (link?.kind !== 'resetPassword') throw linkGone();
    assertPassword(password, await this.knownWords(link.userId));
    const hashed = await hashPassword(password);
    return accounts.inAccounts(this.database, async (tx) => {
      if (!(await accounts.takeLink(tx, hashSecret(token), ['resetPassword'], this.clock.now()))) throw linkGone();
      const user = await this.replace(tx, link.userId, hashed);
      await endSessions(tx, link.userId, 'all');
      if (user.email === link.email && !user.emailVerified) {
        await accounts.deleteSecondSteps(tx, link.userId);
        await accounts.updateUser(tx, link.userId, { emailVerified: true });
      }
      await this.mail.tell(tx, link.userId, user.email, 'password-reset', locale);
      return user.email;
    });
  }

  private async replace(tx: Tx, userId: string, hashed: string): Promise<accounts.UserRow> {
    await accounts.lockUser(tx, userId);
    await setPassword(tx, userId, hashed);
    await accounts.endTurns(tx, userId);
    // A move to another address that a thief asked for must not outlive the password they asked with.
    await accounts.endLinks(tx, userId, this.clock.now(), ['resetPassword', 'changeEmail']);
    return accounts.findUser(tx, userId);
  }

  /** What anyone knows of a person. */
  private async knownWords(userId: string): Promise<string[]> {
    const { people } = this.database;
    const { name, email } = await accounts.findUser(people, userId);
    const member = await accounts.findMembership(people, userId);
    const company = member && (await people.company.findUnique({ where: { id: member.companyId } }));
    return [name, email, company?.name ?? ''];
  }
}

export const linkGone = (): ProblemError =>
  new ProblemError(
    'link-gone',
    text(
      'This link was used or replaced by a newer one, or it has expired. Ask for a new one.',
      'Este enlace ya se usó, hay uno más nuevo, o venció. Pida otro.',
    ),
  );
