import { text } from '@underlath/rules';
import type { Clock } from '../../platform/clock.ts';
import type { Tx } from '../../platform/database/database.ts';
import { newId } from '../../platform/ids.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { hashSecret, newSecret } from '../../platform/secrets.ts';
import * as accounts from './accounts.repository.ts';

/** A sign-in that is begun: its token opens nothing but the second step. */
export interface Turn {
  token: string;
  expiresAt: Date;
}

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
/** Long enough to fetch a phone from the truck. Common practice, no source. */
const turnMs = 10 * minuteMs;
/** Then the password is asked again. */
const mostWrongInTurn = 5;
/** Then the account waits: with three of a million codes right at any moment, a guesser of the password needs years. */
const mostWrongAnHour = 20;

/** Sign-ins under way: whose they are, how long they wait, and how many wrong answers they take. */
export class SignInTurns {
  constructor(private readonly clock: Clock) {}

  /** @param asked whose sign-in it is, unless a passkey is to say so, and what the passkey was asked */
  async begin(
    tx: Tx,
    kind: accounts.TurnRow['kind'],
    { userId = null, challenge = null }: { userId?: string | null; challenge?: string | null },
  ): Promise<Turn> {
    const [token, now] = [newSecret(), this.clock.now()];
    const expiresAt = new Date(now.getTime() + turnMs);
    await accounts.clearTurns(tx, new Date(now.getTime() - hourMs));
    const turn = { id: newId(), tokenHash: hashSecret(token), kind, userId, challenge, createdAt: now, expiresAt };
    await accounts.insertTurn(tx, turn);
    return { token, expiresAt };
  }

  /** Holds the turn of a second step. @throws ProblemError `sign-in-again` */
  async take(tx: Tx, token: string | undefined): Promise<accounts.TurnRow & { userId: string }> {
    const turn = await this.find(tx, token, 'secondStep');
    if (!turn || turn.userId === null || turn.wrong >= mostWrongInTurn) throw signInAgain();
    return { ...turn, userId: turn.userId };
  }

  /** Ends the turn of a sign-in by passkey: a challenge is good for one answer, right or wrong. Null where there is none. */
  async takePasskey(tx: Tx, token: string | undefined): Promise<accounts.TurnRow | null> {
    const turn = await this.find(tx, token, 'passkeySignIn');
    if (turn) await this.end(tx, turn);
    return turn;
  }

  async end(tx: Tx, { id }: accounts.TurnRow): Promise<void> {
    await accounts.updateTurn(tx, id, { expiresAt: this.clock.now() });
  }

  /** How many wrong answers the turn still takes. */
  async countWrong(tx: Tx, { id }: accounts.TurnRow): Promise<number> {
    const { wrong } = await accounts.updateTurn(tx, id, { wrong: { increment: 1 } });
    return mostWrongInTurn - wrong;
  }

  /** @throws ProblemError `too-many-requests` */
  async assertPatience(tx: Tx, userId: string): Promise<void> {
    const since = new Date(this.clock.now().getTime() - hourMs);
    if ((await accounts.countWrong(tx, userId, since)) < mostWrongAnHour) return;
    throw new ProblemError(
      'too-many-requests',
      text(
        'Too many wrong codes were tried for this account. Wait an hour.',
        'Se probaron demasiados códigos equivocados en esta cuenta. Espere una hora.',
      ),
      {
        headers: { 'retry-after': '3600' },
      },
    );
  }

  private async find(tx: Tx, token: string | undefined, kind: accounts.TurnRow['kind']) {
    return token ? accounts.lockTurn(tx, { tokenHash: hashSecret(token) }, kind, this.clock.now()) : null;
  }
}

export const signInAgain = (): ProblemError =>
  new ProblemError(
    'sign-in-again',
    text(
      'This sign-in took too long, or too many wrong codes were tried. Begin again.',
      'Pasó demasiado tiempo, o se probaron demasiados códigos equivocados. Empiece otra vez.',
    ),
  );
