import type { AccountLinkKind, Prisma } from '../../generated/prisma/client.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { orAway } from '../../platform/database/database-errors.ts';

export type LinkKind = AccountLinkKind;
export type AccountLinkRow = Prisma.AccountLinkGetPayload<object>;
export type PasskeyRow = Prisma.PasskeyGetPayload<object>;
export type TurnRow = Prisma.SignInTurnGetPayload<object>;
export type UserRow = Prisma.UserGetPayload<object>;

/**
 * One transaction on the tables of people, which belong to no company and which the application role may not touch; a letter
 * or a note about it in the person's company stands or falls with it.
 */
export const inAccounts = <Result>({ people }: Database, work: (tx: Tx) => Promise<Result>): Promise<Result> =>
  orAway(() => people.$transaction(work, { timeout: 15_000, maxWait: 5_000 }));

export const findUser = (tx: Tx, id: string): Promise<UserRow> => tx.user.findUniqueOrThrow({ where: { id } });

export const findUserByEmail = (tx: Tx, email: string): Promise<UserRow | null> =>
  tx.user.findUnique({ where: { email } });

/** Holds the person's row until the transaction ends: one change of an account at a time. */
export const lockUser = (tx: Tx, id: string) => tx.$queryRaw`select 1 from app_user where id = ${id}::uuid for update`;

/** Where the person works. */
export const findMembership = (tx: Tx, userId: string) =>
  tx.member.findFirst({ where: { userId, removedAt: null }, orderBy: { createdAt: 'asc' } });

/** The person and their membership, which carries their name and address on everything they do. */
export async function updateUser(tx: Tx, id: string, data: { name?: string; email?: string; emailVerified?: boolean }) {
  const { emailVerified: _verified, ...shown } = data;
  await tx.user.update({ where: { id }, data });
  if (Object.keys(shown).length > 0)
    await tx.member.updateMany({
      where: { userId: id, removedAt: null },
      data: { ...shown, version: { increment: 1 } },
    });
}

export const insertLink = (tx: Tx, data: Prisma.AccountLinkUncheckedCreateInput) => tx.accountLink.create({ data });

export const countLinksSince = (tx: Tx, userId: string, kind: LinkKind, since: Date): Promise<number> =>
  tx.accountLink.count({ where: { userId, kind, createdAt: { gt: since } } });

/** The open link of a secret, if it is one of these kinds, for the one caller that takes it. */
export async function takeLink(
  tx: Tx,
  tokenHash: string,
  kinds: LinkKind[],
  now: Date,
): Promise<AccountLinkRow | null> {
  const taken = await tx.accountLink.updateMany({
    where: { tokenHash, kind: { in: kinds }, usedAt: null, expiresAt: { gt: now } },
    data: { usedAt: now },
  });
  return taken.count === 1 ? tx.accountLink.findUnique({ where: { tokenHash } }) : null;
}

/** Open links of a person, of some kinds or of all. */
export const endLinks = (tx: Tx, userId: string, now: Date, kinds?: LinkKind[]) =>
  tx.accountLink.updateMany({
    where: { userId, usedAt: null, ...(kinds && { kind: { in: kinds } }) },
    data: { usedAt: now },
  });

/** The newest open link to another address. */
export const findPendingEmail = (tx: Tx, userId: string, now: Date) =>
  tx.accountLink.findFirst({
    where: { userId, kind: 'changeEmail', usedAt: null, expiresAt: { gt: now } },
    orderBy: { createdAt: 'desc' },
  });

export const insertTurn = (tx: Tx, data: Prisma.SignInTurnUncheckedCreateInput) => tx.signInTurn.create({ data });

/** A turn that is still open, held until the transaction ends so that two tries at once are counted as two. */
export async function lockTurn(
  tx: Tx,
  where: { tokenHash: string } | { userId: string },
  kind: TurnRow['kind'],
  now: Date,
): Promise<TurnRow | null> {
  const newest = { where: { ...where, kind, expiresAt: { gt: now } }, orderBy: { createdAt: 'desc' } } as const;
  const found = await tx.signInTurn.findFirst(newest);
  if (!found) return null;
  await tx.$queryRaw`select 1 from sign_in_turn where id = ${found.id}::uuid for update`;
  return tx.signInTurn.findFirst({ where: { id: found.id, expiresAt: { gt: now } } });
}

export const updateTurn = (tx: Tx, id: string, data: Prisma.SignInTurnUncheckedUpdateInput) =>
  tx.signInTurn.update({ where: { id }, data });

export const endTurns = (tx: Tx, userId: string) => tx.signInTurn.deleteMany({ where: { userId } });

/** Those that ran out and no longer count for anything. */
export const clearTurns = (tx: Tx, before: Date) => tx.signInTurn.deleteMany({ where: { createdAt: { lt: before } } });

/** Wrong codes of a person in all their turns since then. */
export async function countWrong(tx: Tx, userId: string, since: Date): Promise<number> {
  const { _sum } = await tx.signInTurn.aggregate({
    where: { userId, kind: 'secondStep', createdAt: { gt: since } },
    _sum: { wrong: true },
  });
  return _sum.wrong ?? 0;
}

export const findCodes = (tx: Tx, userId: string) => tx.oneTimeCodes.findUnique({ where: { userId } });

/** A secret that no code has confirmed yet. */
export const beginCodes = (tx: Tx, userId: string, sealedSecret: string, now: Date) =>
  tx.oneTimeCodes.upsert({
    where: { userId },
    create: { userId, sealedSecret, createdAt: now },
    update: { sealedSecret, createdAt: now, confirmedAt: null, lastStep: 0 },
  });

/** False when a code of this step or a later one was taken before. */
export async function takeStep(tx: Tx, userId: string, step: number, confirmedAt?: Date): Promise<boolean> {
  const { count } = await tx.oneTimeCodes.updateMany({
    where: { userId, lastStep: { lt: step } },
    data: { lastStep: step, ...(confirmedAt && { confirmedAt }) },
  });
  return count === 1;
}

/** Everything that could be a second step of this person. */
export async function deleteSecondSteps(tx: Tx, userId: string): Promise<void> {
  await deleteCodes(tx, userId);
  await tx.passkey.deleteMany({ where: { userId } });
  await replaceRecoveryCodes(tx, userId, []);
}

export const deleteCodes = (tx: Tx, userId: string) => tx.oneTimeCodes.deleteMany({ where: { userId } });

export const countRecoveryCodes = (tx: Tx, userId: string): Promise<number> =>
  tx.recoveryCode.count({ where: { userId, usedAt: null } });

export async function replaceRecoveryCodes(tx: Tx, userId: string, hashes: string[]): Promise<void> {
  await tx.recoveryCode.deleteMany({ where: { userId } });
  await tx.recoveryCode.createMany({ data: hashes.map((codeHash) => ({ userId, codeHash })) });
}

export async function takeRecoveryCode(tx: Tx, userId: string, codeHash: string, now: Date): Promise<boolean> {
  const taken = await tx.recoveryCode.updateMany({ where: { userId, codeHash, usedAt: null }, data: { usedAt: now } });
  return taken.count === 1;
}

export const listPasskeys = (tx: Tx, userId: string): Promise<PasskeyRow[]> =>
  tx.passkey.findMany({ where: { userId }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] });

export const findPasskey = (tx: Tx, credentialId: string): Promise<PasskeyRow | null> =>
  tx.passkey.findUnique({ where: { credentialId } });

export const insertPasskey = (tx: Tx, data: Prisma.PasskeyUncheckedCreateInput) => tx.passkey.create({ data });

export const notePasskeyUse = (tx: Tx, id: string, counter: number, now: Date) =>
  tx.passkey.update({ where: { id }, data: { counter: BigInt(counter), lastUsedAt: now } });

export const deletePasskey = (tx: Tx, userId: string, id: string) => tx.passkey.deleteMany({ where: { userId, id } });
