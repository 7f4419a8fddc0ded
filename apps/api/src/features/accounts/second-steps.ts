import type { accountRoutes, BodyOut, Locale, SecondStep } from '@underlath/contract';
import { text } from '@underlath/rules';
import type { Sealing } from '../../platform/accounts/sealing.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Tx } from '../../platform/database/database.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import type { AccountMail } from './account-mail.ts';
import * as accounts from './accounts.repository.ts';
import { stepOfCode } from './one-time-codes.ts';
import type { Passkeys } from './passkeys.ts';
import { hashRecoveryCode } from './recovery-codes.ts';

type Step = BodyOut<typeof accountRoutes.finishSignIn>;
/** Whose sign-in it is, and what their passkey was asked. */
interface Asked {
  userId: string;
  challenge: string | null;
}

/** The second step itself: which there are, and whether one given is right. */
export class SecondSteps {
  constructor(
    private readonly clock: Clock,
    private readonly sealing: Sealing,
    private readonly passkeys: Passkeys,
    private readonly mail: AccountMail,
  ) {}

  /** What a person can go on with. */
  async ready(tx: Tx, userId: string): Promise<SecondStep[]> {
    const codes = await accounts.findCodes(tx, userId);
    const passkeys = await accounts.listPasskeys(tx, userId);
    const recovery = await accounts.countRecoveryCodes(tx, userId);
    return [
      ...(codes?.confirmedAt ? (['code'] as const) : []),
      ...(passkeys.length > 0 ? (['passkey'] as const) : []),
      ...(recovery > 0 ? (['recovery'] as const) : []),
    ];
  }

  /** True for a right one, which is used up by it. */
  async take(tx: Tx, turn: Asked, step: Step, locale: Locale): Promise<boolean> {
    if ('code' in step) return this.takeCode(tx, turn.userId, step.code);
    if ('passkey' in step) return this.takePasskey(tx, turn, step.passkey);
    return this.takeRecoveryCode(tx, turn.userId, step.recoveryCode, locale);
  }

  /** @param confirmedAt given for the first code of an app, which switches codes on */
  async takeCode(tx: Tx, userId: string, code: string, confirmedAt?: Date): Promise<boolean> {
    const codes = await accounts.findCodes(tx, userId);
    if (!codes || (codes.confirmedAt === null) !== (confirmedAt !== undefined)) return false;
    const step = stepOfCode(this.open(userId, codes.sealedSecret), code, this.clock.now());
    return step !== null && accounts.takeStep(tx, userId, step, confirmedAt);
  }

  /** @throws ProblemError `wrong-state` when the server has another sealing key now */
  private open(userId: string, sealed: string): string {
    try {
      return this.sealing.unseal(userId, sealed);
    } catch (cause) {
      throw new ProblemError(
        'wrong-state',
        text(
          'Codes of this account cannot be checked any more: the server lost the key they were kept with. Use a recovery code, and set up the app again.',
          'Los códigos de esta cuenta ya no se pueden comprobar: el servidor perdió la clave con que se guardaban. Use un código de recuperación y prepare otra vez la aplicación.',
        ),
        { cause },
      );
    }
  }

  private async takePasskey(
    tx: Tx,
    { userId, challenge }: Asked,
    answer: Extract<Step, { passkey: unknown }>['passkey'],
  ) {
    const passkey = await accounts.findPasskey(tx, answer.id);
    if (passkey?.userId !== userId || challenge === null) return false;
    const used = await this.passkeys.check(answer, challenge, passkey);
    if (used) await accounts.notePasskeyUse(tx, passkey.id, used.counter, this.clock.now());
    return used !== null;
  }

  private async takeRecoveryCode(tx: Tx, userId: string, typed: string, locale: Locale): Promise<boolean> {
    if (!(await accounts.takeRecoveryCode(tx, userId, hashRecoveryCode(typed), this.clock.now()))) return false;
    const { email } = await accounts.findUser(tx, userId);
    await this.mail.tell(tx, userId, email, 'recovery-code-used', locale);
    return true;
  }
}
