import { text } from '@underlath/rules';
import type { Database } from '../database/database.ts';
import { orAway } from '../database/database-errors.ts';
import { ProblemError } from '../problem-error.ts';
import { hashSecret } from '../secrets.ts';
import { addressDoors } from './address-doors.ts';
import {
  assertStillRight,
  createUser,
  hasSecondStep,
  type NewPerson,
  type RightPassword,
  requirePassword,
} from './credentials.ts';
import { beginSession, endSessions, memberOf, type SeenDevice, type SessionMember, type SignedIn } from './sessions.ts';

export type { SeenDevice, SessionMember, SignedIn };

/** People who sign in, and their sessions. They belong to no company; members do. */
export interface Accounts {
  /** Whose password it is; opens nothing. @throws ProblemError `wrong-credentials` */
  checkPassword(email: string, password: string): Promise<RightPassword>;
  /** With the password alone. @throws ProblemError `wrong-credentials`, `sign-in-again` for who set up a second step */
  signIn(email: string, password: string, device?: SeenDevice): Promise<SignedIn>;
  /** Ends the session on the server. An unknown token is no error. */
  signOut(token: string): Promise<void>;
  /** The member behind a session's token, or null when the session has ended or the member was removed. */
  memberOf(token: string): Promise<SessionMember | null>;
  /** @throws ProblemError `invalid-input` for a weak password, `already-exists` for a known e-mail address */
  createUser(user: NewPerson): Promise<{ userId: string }>;
  /** For undoing a `createUser` whose company could not be made. */
  deleteUser(userId: string): Promise<void>;
  /** The person showed that mail to their address reaches them. */
  confirmEmail(userId: string): Promise<void>;
  revokeSessionsOf(userId: string): Promise<void>;
  /** A new person, or the known one who gives their password. @throws ProblemError `invalid-input`, `wrong-credentials` */
  createOrKnow(person: NewPerson): Promise<{ userId: string; isNew: boolean }>;
  /** Whose address and password these are; null for nobody's. */
  knows(email: string, password: string): Promise<string | null>;
  /**
   * The person who has just proven to read this mailbox. An address that was never confirmed is theirs from now on, with an
   * account of their own; the one that had it meanwhile goes on without the address.
   * @throws ProblemError `invalid-input` for a weak password, `wrong-credentials` for a confirmed account's wrong one
   */
  proven(person: NewPerson): Promise<{ userId: string; isNew: boolean }>;
}

export function createAccounts(database: Database): Accounts {
  const { people } = database;
  const checkPassword: Accounts['checkPassword'] = (email, password) =>
    orAway(() => requirePassword(people, { email: email.toLowerCase() }, password));
  return {
    ...addressDoors(people),
    checkPassword,
    signIn: async (email, password, device) => {
      const right = await checkPassword(email, password);
      return orAway(() =>
        people.$transaction(async (tx) => {
          await assertStillRight(tx, right);
          if (await hasSecondStep(tx, right.userId)) throw secondStepNeeded();
          return beginSession(tx, right.userId, device);
        }),
      );
    },
    signOut: (token) =>
      orAway(async () => void (await people.session.deleteMany({ where: { tokenHash: hashSecret(token) } }))),
    memberOf: (token) => memberOf(database, token),
    createUser: (user) => orAway(() => createUser(people, user)),
    deleteUser: (userId) => orAway(async () => void (await people.user.deleteMany({ where: { id: userId } }))),
    confirmEmail: (userId) =>
      orAway(async () => void (await people.user.update({ where: { id: userId }, data: { emailVerified: true } }))),
    revokeSessionsOf: (userId) => orAway(async () => void (await endSessions(people, userId, 'all'))),
  };
}

const secondStepNeeded = (): ProblemError =>
  new ProblemError(
    'sign-in-again',
    text(
      'This account asks for a second step. Sign in on the page for signing in.',
      'Esta cuenta pide un segundo paso. Entre desde la página para entrar.',
    ),
  );
