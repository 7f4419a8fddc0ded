import { addressDoors } from './address-doors.ts';
import type { Database, Tx } from './database/database.ts';
import { orAway } from './database/database-errors.ts';
import { newId } from './ids.ts';
import { passwordFault } from './password-faults.ts';
import { hashPassword, verifyNobodys, verifyPassword } from './passwords.ts';
import { invalidInput, ProblemError } from './problem-error.ts';
import { hashSecret } from './secrets.ts';
import { beginSession, endSessions, memberOf, type SeenDevice, type SessionMember, type SignedIn } from './sessions.ts';

export type { SeenDevice, SessionMember, SignedIn };

export interface NewPerson {
  email: string;
  name: string;
  password: string;
  /** Its words do not make a password. */
  companyName?: string;
}

/** People who sign in, and their sessions. They belong to no company; members do. */
export interface Accounts {
  /** Whose password it is; opens nothing. @throws ProblemError `wrong-credentials` */
  checkPassword(email: string, password: string): Promise<{ userId: string }>;
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
   * The person who has just proven to read this mailbox. An address that was never confirmed is theirs from now on: its
   * password may be set anew, and an account that works for a company meanwhile keeps its sessions but not the address.
   * @throws ProblemError `invalid-input` for a weak password, `wrong-credentials` for a confirmed account's wrong one
   */
  proven(person: NewPerson): Promise<{ userId: string; isNew: boolean }>;
}

export function createAccounts(database: Database): Accounts {
  const { people } = database;
  const checkPassword: Accounts['checkPassword'] = (email, password) =>
    orAway(async () => ({ userId: await requirePassword(people, { email: email.toLowerCase() }, password) }));
  return {
    ...addressDoors(people),
    checkPassword,
    signIn: async (email, password, device) => {
      const { userId } = await checkPassword(email, password);
      return orAway(async () => {
        if (await hasSecondStep(people, userId)) throw secondStepNeeded();
        return beginSession(people, userId, device);
      });
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

/** Where passwords stand among the ways to sign in. */
const byPassword = 'credential';

export async function createUser(
  tx: Tx,
  { email, name, password, companyName = '' }: NewPerson,
): Promise<{ userId: string }> {
  assertPassword(password, [name, email, companyName]);
  const taken = await tx.user.findUnique({ where: { email: email.toLowerCase() }, select: { id: true } });
  if (taken) throw emailTaken();
  const userId = newId();
  const hashed = await hashPassword(password);
  const account = { id: newId(), accountId: userId, providerId: byPassword, password: hashed };
  try {
    await tx.user.create({ data: { id: userId, email: email.toLowerCase(), name, accounts: { create: account } } });
  } catch (error) {
    // Somebody else was first with the same address meanwhile.
    if ((error as { code?: string }).code === 'P2002') throw emailTaken();
    throw error;
  }
  return { userId };
}

/** @throws ProblemError `invalid-input` at the pointer */
export function assertPassword(password: string, known: readonly string[], pointer = '/password'): void {
  const fault = passwordFault(password, known);
  if (fault) throw invalidInput(pointer, `The password ${fault}.`);
}

/** Answers in words and in time alike for an unknown person and a wrong password. @throws ProblemError `wrong-credentials` */
export async function requirePassword(
  tx: Tx,
  who: { email: string } | { id: string },
  password: string,
): Promise<string> {
  const user = await tx.user.findFirst({
    where: who,
    select: { id: true, accounts: { where: { providerId: byPassword }, select: { password: true } } },
  });
  const hashed = user?.accounts[0]?.password;
  const isRight = hashed ? await verifyPassword(hashed, password) : await verifyNobodys(password);
  if (user && isRight) return user.id;
  throw 'id' in who
    ? new ProblemError('wrong-credentials', 'The password is not right. Type the one you sign in with now.')
    : wrongCredentials();
}

export const wrongCredentials = (): ProblemError =>
  new ProblemError('wrong-credentials', 'The e-mail address or the password is not right. Check both and try again.');

/** @param hashed worked out before the transaction, which it would hold up */
export const setPassword = async (tx: Tx, userId: string, hashed: string): Promise<void> => {
  await tx.account.updateMany({ where: { userId, providerId: byPassword }, data: { password: hashed } });
};

/** Whether the password alone does not sign this person in. */
export async function hasSecondStep(tx: Tx, userId: string): Promise<boolean> {
  const [codes, passkeys] = await Promise.all([
    tx.oneTimeCodes.count({ where: { userId, confirmedAt: { not: null } } }),
    tx.passkey.count({ where: { userId } }),
  ]);
  return codes + passkeys > 0;
}

const secondStepNeeded = (): ProblemError =>
  new ProblemError('sign-in-again', 'This account asks for a second step. Sign in on the page for signing in.');

export const emailTaken = (): ProblemError =>
  new ProblemError('already-exists', 'Someone signs in with this e-mail address already. Sign in instead.', {
    errors: [{ pointer: '/email', detail: 'is in use already' }],
  });
