import type { accountRoutes, BodyOut, Locale } from '@underlath/contract';
import { text } from '@underlath/rules';
import { hasSecondStep, requirePassword } from '../../platform/accounts/credentials.ts';
import type { Sealing } from '../../platform/accounts/sealing.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { notFound, ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import type { AccountNews } from './account-letters.ts';
import type { AccountMail } from './account-mail.ts';
import * as accounts from './accounts.repository.ts';
import { codeUri, newCodeSecret } from './one-time-codes.ts';
import type { Passkeys } from './passkeys.ts';
import { hashRecoveryCode, newRecoveryCodes } from './recovery-codes.ts';
import type { SecondSteps } from './second-steps.ts';

interface Tools {
  sealing: Sealing;
  steps: SecondSteps;
  passkeys: Passkeys;
}

/** How long a browser has to make a passkey. */
const askedMs = 5 * 60_000;

/** Setting up and ending the second step. Each asks for the password, so that a phone left open is not enough. */
export class SecondStepSettingsService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly mail: AccountMail,
    private readonly tools: Tools,
  ) {}

  /** The secret is shown here and never again. @throws ProblemError `wrong-credentials`, `wrong-state` */
  async beginCodes(userId: string, password: string): Promise<{ secret: string; uri: string }> {
    await requirePassword(this.database.people, { id: userId }, password);
    return accounts.inAccounts(this.database, async (tx) => {
      await accounts.lockUser(tx, userId);
      const { email } = await accounts.findUser(tx, userId);
      if ((await accounts.findCodes(tx, userId))?.confirmedAt)
        throw new ProblemError(
          'wrong-state',
          'Codes are asked for already. End them first, to begin with another app.',
        );
      const secret = newCodeSecret();
      await accounts.beginCodes(tx, userId, this.tools.sealing.seal(userId, secret), this.clock.now());
      return { secret, uri: codeUri(secret, email) };
    });
  }

  /** @throws ProblemError `wrong-code` */
  async confirmCodes(userId: string, code: string, locale: Locale): Promise<{ recoveryCodes: string[] | null }> {
    return accounts.inAccounts(this.database, async (tx) => {
      await accounts.lockUser(tx, userId);
      if (!(await this.tools.steps.takeCode(tx, userId, code, this.clock.now())))
        throw new ProblemError(
          'wrong-code',
          text(
            'That is not the code the app shows now. Wait for the next one and try again.',
            'Ese no es el código que la aplicación muestra ahora. Espere el siguiente e intente otra vez.',
          ),
        );
      return this.added(tx, userId, 'codes-on', locale);
    });
  }

  /** @throws ProblemError `wrong-credentials`, `not-found` */
  async endCodes(userId: string, password: string, locale: Locale): Promise<void> {
    await requirePassword(this.database.people, { id: userId }, password);
    await accounts.inAccounts(this.database, async (tx) => {
      const { count } = await accounts.deleteCodes(tx, userId);
      if (count === 0) throw notFound('authenticator app');
      await this.ended(tx, userId, 'codes-off', locale);
    });
  }

  /** @throws ProblemError `wrong-credentials`, `wrong-state` without a second step */
  async newRecoveryCodes(userId: string, password: string, locale: Locale): Promise<{ recoveryCodes: string[] }> {
    await requirePassword(this.database.people, { id: userId }, password);
    return accounts.inAccounts(this.database, async (tx) => {
      await accounts.lockUser(tx, userId);
      if (!(await hasSecondStep(tx, userId)))
        throw new ProblemError('wrong-state', 'Recovery codes stand in for a second step; set one up first.');
      const { email } = await accounts.findUser(tx, userId);
      await this.mail.tell(tx, userId, email, 'recovery-codes-made', locale);
      return { recoveryCodes: await this.makeRecoveryCodes(tx, userId) };
    });
  }

  /** @throws ProblemError `wrong-credentials` */
  async beginPasskey(userId: string, password: string): Promise<Record<string, unknown>> {
    await requirePassword(this.database.people, { id: userId }, password);
    return accounts.inAccounts(this.database, async (tx) => {
      const user = await accounts.findUser(tx, userId);
      const options = await this.tools.passkeys.askForNew(user, await accounts.listPasskeys(tx, userId));
      const now = this.clock.now();
      await accounts.insertTurn(tx, {
        id: newId(),
        userId,
        kind: 'passkeyAdd',
        // Found by its person; nobody is given the token.
        tokenHash: hashSecret(newSecret()),
        challenge: options.challenge,
        createdAt: now,
        expiresAt: new Date(now.getTime() + askedMs),
      });
      return options;
    });
  }

  /** @throws ProblemError `wrong-state` when nothing was asked, it took too long or the answer does not fit */
  async addPasskey(
    userId: string,
    { name, passkey }: BodyOut<typeof accountRoutes.addPasskey>,
    locale: Locale,
  ): Promise<{ recoveryCodes: string[] | null }> {
    return accounts.inAccounts(this.database, async (tx) => {
      await accounts.lockUser(tx, userId);
      const now = this.clock.now();
      const asked = await accounts.lockTurn(tx, { userId }, 'passkeyAdd', now);
      const made = asked?.challenge ? await this.tools.passkeys.checkNew(passkey, asked.challenge) : null;
      if (!asked || !made || (await accounts.findPasskey(tx, made.credentialId)))
        throw new ProblemError(
          'wrong-state',
          text(
            'The passkey could not be added, or it took too long. Begin again.',
            'No se pudo agregar la llave de acceso, o pasó demasiado tiempo. Empiece otra vez.',
          ),
        );
      await accounts.updateTurn(tx, asked.id, { expiresAt: now });
      await accounts.insertPasskey(tx, { id: newId(), userId, name, createdAt: now, ...made });
      return this.added(tx, userId, 'passkey-added', locale);
    });
  }

  /** @throws ProblemError `wrong-credentials`, `not-found` */
  async removePasskey(userId: string, id: string, password: string, locale: Locale): Promise<void> {
    await requirePassword(this.database.people, { id: userId }, password);
    await accounts.inAccounts(this.database, async (tx) => {
      const { count } = await accounts.deletePasskey(tx, userId, id);
      if (count === 0) throw notFound('passkey');
      await this.ended(tx, userId, 'passkey-removed', locale);
    });
  }

  /** The first second step brings the codes for the day it is lost. */
  private async added(tx: Tx, userId: string, news: AccountNews, locale: Locale) {
    const { email } = await accounts.findUser(tx, userId);
    await this.mail.tell(tx, userId, email, news, locale);
    const has = (await accounts.countRecoveryCodes(tx, userId)) > 0;
    return { recoveryCodes: has ? null : await this.makeRecoveryCodes(tx, userId) };
  }

  private async ended(tx: Tx, userId: string, news: AccountNews, locale: Locale): Promise<void> {
    const { email } = await accounts.findUser(tx, userId);
    await this.mail.tell(tx, userId, email, news, locale);
    if (!(await hasSecondStep(tx, userId))) await accounts.replaceRecoveryCodes(tx, userId, []);
  }

  private async makeRecoveryCodes(tx: Tx, userId: string): Promise<string[]> {
    const codes = newRecoveryCodes();
    await accounts.replaceRecoveryCodes(tx, userId, codes.map(hashRecoveryCode));
    return codes;
  }
}
