import type { accountRoutes, BodyOut, Locale, Me, PasskeyAnswer, SecondStep } from '@underlath/contract';
import { text } from '@underlath/rules';
import type { Accounts, SeenDevice, SignedIn } from '../../platform/accounts/accounts.ts';
import { assertStillRight, hasSecondStep } from '../../platform/accounts/credentials.ts';
import { beginSession } from '../../platform/accounts/sessions.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import type { MembersService } from '../members/members.service.ts';
import { fromOf, type RefusedSignIns, type ServerLog } from '../people-log/refused-sign-ins.service.ts';
import type { AccountMail } from './account-mail.ts';
import * as accounts from './accounts.repository.ts';
import type { Passkeys } from './passkeys.ts';
import type { SecondSteps } from './second-steps.ts';
import { type SignInTurns, signInAgain, type Turn } from './sign-in-turns.ts';

export interface Session {
  me: Me;
  signedIn: SignedIn;
}

type Step = BodyOut<typeof accountRoutes.finishSignIn>;

interface Tools {
  turns: SignInTurns;
  steps: SecondSteps;
  passkeys: Passkeys;
  mail: AccountMail;
  refused: RefusedSignIns;
}

/** From a password, or a passkey, to a session. */
export class SignInService {
  constructor(
    private readonly database: Database,
    private readonly accounts: Accounts,
    private readonly clock: Clock,
    private readonly members: MembersService,
    private readonly tools: Tools,
  ) {}

  /** @throws ProblemError `wrong-credentials`, `not-allowed` for a person who works for no company */
  async signIn(
    { email, password }: BodyOut<typeof accountRoutes.signIn>,
    device: SeenDevice,
    log: ServerLog,
  ): Promise<Session | { needs: SecondStep[]; turn: Turn }> {
    const { refused, steps, turns } = this.tools;
    const right = await refused.watch(email, device, log, () => this.accounts.checkPassword(email, password));
    const { userId } = right;
    const begun = await accounts.inAccounts(this.database, async (tx) => {
      await assertStillRight(tx, right);
      await requireMembership(tx, userId);
      if (!(await hasSecondStep(tx, userId))) return this.begin(tx, userId, device, 'password');
      return { needs: await steps.ready(tx, userId), turn: await turns.begin(tx, 'secondStep', { userId }) };
    });
    return 'turn' in begun ? begun : this.session(begun);
  }

  /** What to ask a passkey as the second step. @throws ProblemError `sign-in-again` */
  async askForSecond(token: string | undefined): Promise<Record<string, unknown>> {
    return accounts.inAccounts(this.database, async (tx) => {
      const turn = await this.tools.turns.take(tx, token);
      const options = await this.tools.passkeys.ask(await accounts.listPasskeys(tx, turn.userId));
      await accounts.updateTurn(tx, turn.id, { challenge: options.challenge });
      return options;
    });
  }

  /** @throws ProblemError `sign-in-again`, `wrong-code`, `too-many-requests`, `not-allowed` */
  async finish(token: string | undefined, step: Step, device: SeenDevice, locale: Locale): Promise<Session> {
    const { turns, steps, mail } = this.tools;
    const outcome = await accounts.inAccounts(this.database, async (tx): Promise<SignedIn | { left: number }> => {
      const turn = await turns.take(tx, token);
      await turns.assertPatience(tx, turn.userId);
      if (await steps.take(tx, turn, step, locale)) {
        await requireMembership(tx, turn.userId);
        await turns.end(tx, turn);
        return this.begin(tx, turn.userId, device, 'second step');
      }
      // Counted even though the answer is a refusal, so nothing is thrown before the transaction ends.
      await mail.noteRefused(tx, turn.userId, { why: 'second step', ...fromOf(device) });
      return { left: await turns.countWrong(tx, turn) };
    });
    if ('left' in outcome) throw wrongCode(outcome.left);
    return this.session(outcome);
  }

  /** For signing in without a password. */
  async askPasskey(): Promise<{ options: Record<string, unknown>; turn: Turn }> {
    const options = await this.tools.passkeys.ask();
    const { challenge } = options;
    const turn = await accounts.inAccounts(this.database, (tx) =>
      this.tools.turns.begin(tx, 'passkeySignIn', { challenge }),
    );
    return { options, turn };
  }

  /** @throws ProblemError `sign-in-again`, `wrong-credentials`, `not-allowed` */
  async signInWithPasskey(token: string | undefined, answer: PasskeyAnswer, device: SeenDevice): Promise<Session> {
    const { turns, passkeys, mail } = this.tools;
    const signedIn = await accounts.inAccounts(this.database, async (tx) => {
      const turn = await turns.takePasskey(tx, token);
      if (!turn) return null;
      const passkey = await accounts.findPasskey(tx, answer.id);
      if (!passkey || turn.challenge === null) return 'refused';
      const used = await passkeys.check(answer, turn.challenge, passkey);
      if (!used?.isPersonVerified) {
        await mail.noteRefused(tx, passkey.userId, { why: 'passkey', ...fromOf(device) });
        return 'refused';
      }
      await requireMembership(tx, passkey.userId);
      await accounts.notePasskeyUse(tx, passkey.id, used.counter, this.clock.now());
      return this.begin(tx, passkey.userId, device, 'passkey');
    });
    if (signedIn === null) throw signInAgain();
    if (signedIn === 'refused') throw passkeyRefused();
    return this.session(signedIn);
  }

  private async begin(tx: Tx, userId: string, device: SeenDevice, how: string): Promise<SignedIn> {
    await this.tools.mail.note(tx, userId, 'sign-in.good', { how, ...fromOf(device) });
    return beginSession(tx, userId, device);
  }

  private async session(signedIn: SignedIn): Promise<Session> {
    const member = await accounts.findMembership(this.database.people, signedIn.userId);
    if (!member) throw noCompany();
    return { signedIn, me: await this.members.whoAmI(member.companyId, member.id) };
  }
}

async function requireMembership(tx: Tx, userId: string): Promise<void> {
  if (!(await accounts.findMembership(tx, userId))) throw noCompany();
}

const noCompany = (): ProblemError =>
  new ProblemError(
    'not-allowed',
    text(
      'You are in no company any more; ask its owner for an invitation.',
      'Usted ya no está en ninguna empresa; pida una invitación al dueño.',
    ),
  );

const passkeyRefused = (): ProblemError =>
  new ProblemError(
    'wrong-credentials',
    text(
      'This passkey is not known here, or the device did not check who you are. Sign in with your password.',
      'Aquí no se conoce esta llave de acceso, o el aparato no comprobó quién es usted. Entre con su contraseña.',
    ),
  );

function wrongCode(left: number): ProblemError {
  return new ProblemError(
    'wrong-code',
    left > 0
      ? text(
          `That is not right, or it was used already. Wait for the next code and try again; ${left} ${left === 1 ? 'try is' : 'tries are'} left. If no code is right, see that the phone sets its clock by itself.`,
          `No es correcto, o ya se usó. Espere el código siguiente e intente otra vez; ${left === 1 ? 'queda 1 intento' : `quedan ${left} intentos`}. Si ningún código sirve, vea que el teléfono ajuste la hora solo.`,
        )
      : text(
          'That is not right either. Begin again with your password.',
          'Tampoco es correcto. Empiece otra vez con su contraseña.',
        ),
  );
}
