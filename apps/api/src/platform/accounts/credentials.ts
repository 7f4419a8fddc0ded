import { text } from '@underlath/rules';
import type { Tx } from '../database/database.ts';
import { newId } from '../ids.ts';
import { invalidInput, ProblemError } from '../problem-error.ts';
import { passwordFault } from './password-faults.ts';
import { hashPassword, verifyNobodys, verifyPassword } from './passwords.ts';

export interface NewPerson {
  email: string;
  name: string;
  password: string;
  /** Its words do not make a password. */
  companyName?: string;
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
  if (!fault) return;
  const words = text(`The password ${fault.en}.`, `La contraseña ${fault.es}.`);
  throw invalidInput(pointer, words.en, words);
}

/** Whose password was compared, and the hash it was compared with. */
export interface RightPassword {
  userId: string;
  hashed: string;
}

/** Answers in words and in time alike for an unknown person and a wrong password. @throws ProblemError `wrong-credentials` */
export async function requirePassword(
  tx: Tx,
  who: { email: string } | { id: string },
  password: string,
): Promise<RightPassword> {
  const user = await tx.user.findFirst({
    where: who,
    select: { id: true, accounts: { where: { providerId: byPassword }, select: { password: true } } },
  });
  const hashed = user?.accounts[0]?.password;
  const isRight = hashed ? await verifyPassword(hashed, password) : await verifyNobodys(password);
  if (user && hashed && isRight) return { userId: user.id, hashed };
  throw 'id' in who
    ? new ProblemError(
        'wrong-credentials',
        text(
          'The password is not right. Type the one you sign in with now.',
          'La contraseña no es correcta. Escriba la que usa ahora para entrar.',
        ),
      )
    : wrongCredentials();
}

/**
 * Comparing takes a while. In the transaction that begins what the password opens, this holds the person and makes sure that
 * the password was not changed meanwhile; a change that comes after it ends what was begun. @throws ProblemError `wrong-credentials`
 */
export async function assertStillRight(tx: Tx, { userId, hashed }: RightPassword): Promise<void> {
  // Whoever changes a password holds the person's row for it.
  await tx.$queryRaw`select 1 from app_user where id = ${userId}::uuid for key share`;
  const account = await tx.account.findFirst({ where: { userId, providerId: byPassword }, select: { password: true } });
  if (account?.password !== hashed) throw wrongCredentials();
}

export const wrongCredentials = (): ProblemError =>
  new ProblemError(
    'wrong-credentials',
    text(
      'The e-mail address or the password is not right. Check both and try again.',
      'El correo o la contraseña no es correcto. Revise los dos e intente otra vez.',
    ),
  );

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

export const emailTaken = (): ProblemError =>
  new ProblemError(
    'already-exists',
    text(
      'Someone signs in with this e-mail address already. Sign in instead.',
      'Alguien entra ya con este correo. Mejor entre a su cuenta.',
    ),
    {
      errors: [{ pointer: '/email', detail: 'is in use already' }],
    },
  );
