import { randomBytes } from 'node:crypto';
import type { Role } from '@underlath/contract';
import { betterAuth } from 'better-auth';
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { APIError } from 'better-auth/api';
import type { Database } from './database/database.ts';
import { orAway } from './database/database-errors.ts';
import { newId } from './ids.ts';
import { hashPassword, minPasswordLength, passwordFault, verifyPassword } from './passwords.ts';
import { invalidInput, ProblemError } from './problem-error.ts';

export interface SignedIn {
  /** Goes into the cookie; names the session in the database. */
  token: string;
  userId: string;
  expiresAt: Date;
}

/** Whom a session belongs to, and where they work. */
export interface SessionMember {
  userId: string;
  companyId: string;
  memberId: string;
  name: string;
  role: Role;
}

/** People who sign in, and their sessions. They belong to no company; members do. */
export interface Accounts {
  /** @throws ProblemError `wrong-credentials` */
  signIn(email: string, password: string): Promise<SignedIn>;
  /** Ends the session on the server. An unknown token is no error. */
  signOut(token: string): Promise<void>;
  /** The member behind a session's token, or null when the session has ended or the member was removed. */
  memberOf(token: string): Promise<SessionMember | null>;
  /** @throws ProblemError `invalid-input` for a weak password, `already-exists` for a known e-mail address */
  createUser(user: { email: string; name: string; password: string }): Promise<{ userId: string }>;
  /** For undoing a `createUser` whose company could not be made. */
  deleteUser(userId: string): Promise<void>;
  revokeSessionsOf(userId: string): Promise<void>;
}

const sessionSeconds = 30 * 86_400;

export function createAccounts(database: Database): Accounts {
  const auth = buildAuth(database);
  const { people: owner, peoplePool: ownerPool } = database;
  return {
    signIn: (email, password) =>
      orAway(async () => {
        const { token, user } = await auth.api.signInEmail({ body: { email, password } }).catch(explainSignIn);
        return { token, userId: user.id, expiresAt: new Date(Date.now() + sessionSeconds * 1000) };
      }),
    signOut: (token) => orAway(async () => void (await owner.session.deleteMany({ where: { token } }))),
    memberOf: (token) =>
      orAway(async () => {
        const { rows } = await ownerPool.query<SessionMember>({
          name: 'member-of-session',
          text: memberOfSession,
          values: [token],
        });
        return rows[0] ?? null;
      }),
    createUser: ({ email, name, password }) =>
      orAway(async () => {
        const fault = passwordFault(password);
        if (fault) throw invalidInput('/password', `The password ${fault}.`);
        const taken = await owner.user.findUnique({ where: { email: email.toLowerCase() }, select: { id: true } });
        if (taken) throw emailTaken();
        const { user } = await auth.api.signUpEmail({ body: { email, name, password } }).catch(explainSignUp);
        return { userId: user.id };
      }),
    deleteUser: (userId) => orAway(async () => void (await owner.user.deleteMany({ where: { id: userId } }))),
    revokeSessionsOf: (userId) => orAway(async () => void (await owner.session.deleteMany({ where: { userId } }))),
  };
}

/** One read on every request of a signed-in person; it runs before the company is known. */
const memberOfSession = `
  select m.user_id as "userId", m.company_id as "companyId", m.id as "memberId", m.name, m.role
  from session s join member m on m.user_id = s.user_id and m.removed_at is null
  where s.token = $1 and s.expires_at > now()
  order by m.created_at limit 1`;

function buildAuth({ people: owner }: Database) {
  return betterAuth({
    database: prismaAdapter(owner, { provider: 'postgresql' }),
    // The library's own cookies are not used: the session's token travels in ours, so this signs nothing that lasts.
    secret: randomBytes(32).toString('base64url'),
    baseURL: 'http://localhost',
    emailAndPassword: {
      enabled: true,
      autoSignIn: false,
      minPasswordLength,
      maxPasswordLength: 1000,
      password: { hash: hashPassword, verify: ({ hash, password }) => verifyPassword(hash, password) },
    },
    session: { expiresIn: sessionSeconds },
    advanced: { database: { generateId: () => newId() } },
    telemetry: { enabled: false },
    // Wrong passwords are an everyday thing, answered and limited by our own routes.
    logger: { disabled: true },
  });
}

function explainSignIn(error: unknown): never {
  if (!(error instanceof APIError)) throw error;
  throw new ProblemError(
    'wrong-credentials',
    'The e-mail address or the password is not right. Check both and try again.',
    { cause: error },
  );
}

function explainSignUp(error: unknown): never {
  if (error instanceof APIError && /EXISTS/.test(String(error.body?.code))) throw emailTaken();
  throw error;
}

const emailTaken = (): ProblemError =>
  new ProblemError('already-exists', 'Someone signs in with this e-mail address already. Sign in instead.', {
    errors: [{ pointer: '/email', detail: 'is in use already' }],
  });
