import { randomBytes } from 'node:crypto';
import type { CompanySwitches, Role } from '@underlath/contract';
import { betterAuth } from 'better-auth';
import { prismaAdapter } from 'better-auth/adapters/prisma';
import { APIError } from 'better-auth/api';
import type { PrismaClient } from '../generated/prisma/client.ts';
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
  /** What the company lets its people see and do. */
  switches: CompanySwitches;
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

export interface NewPerson {
  email: string;
  name: string;
  password: string;
}

const sessionSeconds = 30 * 86_400;

export function createAccounts(database: Database): Accounts {
  const auth = buildAuth(database);
  const { people: owner, peoplePool: ownerPool } = database;
  const createUser: Accounts['createUser'] = ({ email, name, password }) =>
    orAway(async () => {
      const fault = passwordFault(password);
      if (fault) throw invalidInput('/password', `The password ${fault}.`);
      const taken = await owner.user.findUnique({ where: { email: email.toLowerCase() }, select: { id: true } });
      if (taken) throw emailTaken();
      const { user } = await auth.api.signUpEmail({ body: { email, name, password } }).catch(explainSignUp);
      return { userId: user.id };
    });
  return {
    ...addressDoors(owner, createUser),
    createUser,
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
    deleteUser: (userId) => orAway(async () => void (await owner.user.deleteMany({ where: { id: userId } }))),
    revokeSessionsOf: (userId) => orAway(async () => void (await owner.session.deleteMany({ where: { userId } }))),
  };
}

/** One read on every request of a signed-in person; it runs before the company is known. */
const memberOfSession = `
  select m.user_id as "userId", m.company_id as "companyId", m.id as "memberId", m.name, m.role,
    json_build_object('crewSeesMoney', c.crew_sees_money, 'estimatorsEditCostBook', c.estimators_edit_cost_book) as switches
  from session s join member m on m.user_id = s.user_id and m.removed_at is null join company c on c.id = m.company_id
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

/** What an address and a password, or a link mailed to the address, prove about a person. */
function addressDoors(
  people: PrismaClient,
  createUser: Accounts['createUser'],
): Pick<Accounts, 'createOrKnow' | 'knows' | 'proven'> {
  const find = (email: string) =>
    people.user.findUnique({
      where: { email: email.toLowerCase() },
      include: { accounts: { where: { providerId: 'credential' } } },
    });
  type Found = NonNullable<Awaited<ReturnType<typeof find>>>;
  const isTheirs = async ({ accounts: [account] }: Found, password: string) =>
    account?.password ? verifyPassword(account.password, password) : false;
  const create = async (person: NewPerson) => ({ ...(await createUser(person)), isNew: true });
  const confirm = (id: string) => people.user.update({ where: { id }, data: { emailVerified: true } });

  async function handOver(known: Found, person: NewPerson) {
    const fault = passwordFault(person.password);
    if (fault) throw invalidInput('/password', `The password ${fault}.`);
    const works = await people.member.count({ where: { userId: known.id, removedAt: null } });
    if (works > 0) {
      await people.user.update({ where: { id: known.id }, data: { email: `${known.id}@unconfirmed.invalid` } });
      return create(person);
    }
    const password = await hashPassword(person.password);
    await people.$transaction([
      people.account.updateMany({ where: { userId: known.id, providerId: 'credential' }, data: { password } }),
      people.session.deleteMany({ where: { userId: known.id } }),
    ]);
    return { userId: known.id, isNew: false };
  }

  return {
    createOrKnow: (person) =>
      orAway(async () => {
        const known = await find(person.email);
        if (!known) return create(person);
        if (await isTheirs(known, person.password)) return { userId: known.id, isNew: false };
        throw wrongCredentials();
      }),
    knows: (email, password) =>
      orAway(async () => {
        const known = await find(email);
        return known && (await isTheirs(known, password)) ? known.id : null;
      }),
    proven: (person) =>
      orAway(async () => {
        const known = await find(person.email);
        const isKnown = known !== null && (await isTheirs(known, person.password));
        if (known?.emailVerified && !isKnown) throw wrongCredentials();
        const found = !known
          ? await create(person)
          : isKnown
            ? { userId: known.id, isNew: false }
            : await handOver(known, person);
        await confirm(found.userId);
        return found;
      }),
  };
}

function explainSignIn(error: unknown): never {
  if (!(error instanceof APIError)) throw error;
  throw wrongCredentials(error);
}

const wrongCredentials = (cause?: unknown): ProblemError =>
  new ProblemError('wrong-credentials', 'The e-mail address or the password is not right. Check both and try again.', {
    cause,
  });

function explainSignUp(error: unknown): never {
  // Two at once: the address was free when it was looked up, and the row of the other was there first.
  if (error instanceof APIError && /EXISTS|FAILED_TO_CREATE/.test(String(error.body?.code))) throw emailTaken();
  throw error;
}

const emailTaken = (): ProblemError =>
  new ProblemError('already-exists', 'Someone signs in with this e-mail address already. Sign in instead.', {
    errors: [{ pointer: '/email', detail: 'is in use already' }],
  });
