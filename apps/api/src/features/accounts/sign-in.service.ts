import type { accountRoutes, BodyOut, Locale, Me, PasskeyAnswer, SecondStep } from '@underlath/contract';
import type { Accounts, SeenDevice, SignedIn } from '../../platform/accounts/accounts.ts';
import { hasSecondStep } from '../../platform/accounts/credentials.ts';
import { beginSession } from '../../platform/accounts/sessions.ts';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import type { MembersService } from '../members/members.service.ts';
import type { PeopleLogService } from '../people-log/people-log.service.ts';
import type { AccountMail } from './account-mail.ts';
import * as accounts from './accounts.repository.ts';
import type { Passkeys } from './passkeys.ts';
import type { SecondSteps } from './second-steps.ts';

export interface Session {
  me: Me;
  signedIn: SignedIn;
}

/** A sign-in that is begun: its token opens nothing but the second step. */
export interface Turn {
  token: string;
  expiresAt: Date;
}

const minuteMs = 60_000;
/** Long enough to fetch a phone from the truck. Common practice, no source. */
const turnMs = 10 * minuteMs;
/** Then the password is asked again. */
const mostWrongInTurn = 5;
/** Then the account waits: with three of a million codes right at any moment, a guesser of the password needs years. */
const mostWrongAnHour = 20;
const hourMs = 60 * minuteMs;

type Step = BodyOut<typeof accountRoutes.finishSignIn>;

interface Tools {
  steps: SecondSteps;
  passkeys: Passkeys;
  mail: AccountMail;
  peopleLog: PeopleLogService;
}

/** The server's own log, as a request carries it. */
interface ServerLog {
  warn(facts: object, message: string): void;
  error(facts: object, message: string): void;
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
    const { userId } = await this.accounts.checkPassword(email, password).catch((error: unknown) => {
      this.noteRefused(email, device, log);
      throw error;
    });
    const begun = await accounts.inAccounts(this.database, async (tx) => {
      await requireMembership(tx, userId);
      if (!(await hasSecondStep(tx, userId))) return this.begin(tx, userId, device, 'password');
      return { needs: await this.tools.steps.ready(tx, userId), turn: await this.beginTurn(tx, 'secondStep', userId) };
    });
    return 'turn' in begun ? begun : this.session(begun);
  }

  /** What to ask a passkey as the second step. @throws ProblemError `sign-in-again` */
  async askForSecond(token: string | undefined): Promise<Record<string, unknown>> {
    return accounts.inAccounts(this.database, async (tx) => {
      const turn = await this.takeTurn(tx, token, 'secondStep');
      const options = await this.tools.passkeys.ask(await accounts.listPasskeys(tx, turn.userId));
      await accounts.updateTurn(tx, turn.id, { challenge: options.challenge });
      return options;
    });
  }

  /** @throws ProblemError `sign-in-again`, `wrong-code`, `too-many-requests`, `not-allowed` */
  async finish(token: string | undefined, step: Step, device: SeenDevice, locale: Locale): Promise<Session> {
    const outcome = await accounts.inAccounts(this.database, async (tx): Promise<SignedIn | { left: number }> => {
      const turn = await this.takeTurn(tx, token, 'secondStep');
      await this.assertPatience(tx, turn.userId);
      if (await this.tools.steps.take(tx, turn, step, locale)) {
        await requireMembership(tx, turn.userId);
        await accounts.updateTurn(tx, turn.id, { expiresAt: this.clock.now() });
        return this.begin(tx, turn.userId, device, 'second step');
      }
      // Counted even though the answer is a refusal, so nothing is thrown before the transaction ends.
      const { wrong } = await accounts.updateTurn(tx, turn.id, { wrong: { increment: 1 } });
      return { left: mostWrongInTurn - wrong };
    });
    if ('left' in outcome) throw wrongCode(outcome.left);
    return this.session(outcome);
  }

  /** For signing in without a password. */
  async askPasskey(): Promise<{ options: Record<string, unknown>; turn: Turn }> {
    const options = await this.tools.passkeys.ask();
    const turn = await accounts.inAccounts(this.database, (tx) =>
      this.beginTurn(tx, 'passkeySignIn', null, options.challenge),
    );
    return { options, turn };
  }

  /** @throws ProblemError `sign-in-again`, `wrong-credentials`, `not-allowed` */
  async signInWithPasskey(token: string | undefined, answer: PasskeyAnswer, device: SeenDevice): Promise<Session> {
    const signedIn = await accounts.inAccounts(this.database, async (tx) => {
      const turn =
        token && (await accounts.lockTurn(tx, { tokenHash: hashSecret(token) }, 'passkeySignIn', this.clock.now()));
      if (!turn) return null;
      // A challenge is good for one answer, right or wrong.
      const { challenge } = turn;
      await accounts.updateTurn(tx, turn.id, { expiresAt: this.clock.now() });
      const passkey = await accounts.findPasskey(tx, answer.id);
      const used = passkey && challenge ? await this.tools.passkeys.check(answer, challenge, passkey) : null;
      if (!passkey || !used?.isPersonVerified) return 'refused';
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

  /** Beside the answer and not before it, or the wait would tell which addresses are known. */
  private noteRefused(email: string, device: SeenDevice, log: ServerLog): void {
    const note = async () => {
      const user = await accounts.findUserByEmail(this.database.people, email.toLowerCase());
      const { from = '' } = fromOf(device);
      const attempt = { email, userId: user?.id ?? null, isGood: false, why: 'password', from };
      await this.tools.peopleLog.noteSignIn(attempt, log);
    };
    note().catch(({ message }: Error) => log.error({ message }, 'a refused sign-in could not be noted'));
  }

  private async session(signedIn: SignedIn): Promise<Session> {
    const member = await accounts.findMembership(this.database.people, signedIn.userId);
    if (!member) throw noCompany();
    return { signedIn, me: await this.members.whoAmI(member.companyId, member.id) };
  }

  private async beginTurn(
    tx: Tx,
    kind: accounts.TurnRow['kind'],
    userId: string | null,
    challenge: string | null = null,
  ): Promise<Turn> {
    const [token, now] = [newSecret(), this.clock.now()];
    const expiresAt = new Date(now.getTime() + turnMs);
    await accounts.clearTurns(tx, new Date(now.getTime() - hourMs));
    await accounts.insertTurn(tx, {
      id: newId(),
      tokenHash: hashSecret(token),
      kind,
      userId,
      challenge,
      createdAt: now,
      expiresAt,
    });
    return { token, expiresAt };
  }

  private async takeTurn(tx: Tx, token: string | undefined, kind: accounts.TurnRow['kind']) {
    const turn = token && (await accounts.lockTurn(tx, { tokenHash: hashSecret(token) }, kind, this.clock.now()));
    if (!turn || turn.userId === null || turn.wrong >= mostWrongInTurn) throw signInAgain();
    return { ...turn, userId: turn.userId };
  }

  private async assertPatience(tx: Tx, userId: string): Promise<void> {
    const since = new Date(this.clock.now().getTime() - hourMs);
    if ((await accounts.countWrong(tx, userId, since)) < mostWrongAnHour) return;
    throw new ProblemError('too-many-requests', 'Too many wrong codes were tried for this account. Wait an hour.', {
      headers: { 'retry-after': '3600' },
    });
  }
}

const fromOf = ({ address }: SeenDevice): { from?: string } => (address ? { from: address } : {});

async function requireMembership(tx: Tx, userId: string): Promise<void> {
  if (!(await accounts.findMembership(tx, userId))) throw noCompany();
}

const noCompany = (): ProblemError =>
  new ProblemError('not-allowed', 'You are in no company any more; ask its owner for an invitation.');

const signInAgain = (): ProblemError =>
  new ProblemError('sign-in-again', 'This sign-in took too long, or too many wrong codes were tried. Begin again.');

const passkeyRefused = (): ProblemError =>
  new ProblemError(
    'wrong-credentials',
    'This passkey is not known here, or the device did not check who you are. Sign in with your password.',
  );

function wrongCode(left: number): ProblemError {
  return new ProblemError(
    'wrong-code',
    left > 0
      ? `That is not right, or it was used already. Wait for the next code and try again; ${left} ${left === 1 ? 'try is' : 'tries are'} left.`
      : 'That is not right either. Begin again with your password.',
  );
}
