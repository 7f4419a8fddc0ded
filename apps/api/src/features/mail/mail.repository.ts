import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';

export type MailRow = Prisma.MailGetPayload<object>;

export const findMail = (tx: Tx, companyId: string, id: string): Promise<MailRow | null> =>
  tx.mail.findUnique({ where: { companyId_id: { companyId, id } } });

/** Moves a mail on that still waits; false when somebody else did. */
export async function moveMail(tx: Tx, companyId: string, id: string, data: Prisma.MailUpdateManyMutationInput) {
  const { count } = await tx.mail.updateMany({ where: { companyId, id, state: 'waiting' }, data });
  return count === 1;
}

/** Mails about a change order, newest first. */
export const listMails = (tx: Tx, companyId: string, changeOrderId: string): Promise<MailRow[]> =>
  tx.mail.findMany({ where: { companyId, changeOrderId }, orderBy: [{ createdAt: 'desc' }, { id: 'desc' }] });

/** From now on other mails stand for these. */
export const replaceMails = (tx: Tx, companyId: string, which: Prisma.MailWhereInput, at: Date): Promise<unknown> =>
  tx.mail.updateMany({ where: { ...which, companyId, replacedAt: null }, data: { replacedAt: at } });

const withSubject = {
  changeOrder: { select: { number: true, state: true, sentVersion: true } },
  question: { select: { answeredAt: true } },
} satisfies Prisma.MailInclude;

export type UndeliveredMail = Prisma.MailGetPayload<{ include: typeof withSubject }>;

/** Mails of a project that did not arrive, or still wait since before `waitingSince`; newest first. */
export const listUndelivered = (
  tx: Tx,
  companyId: string,
  projectId: string,
  { waitingSince, take }: { waitingSince: Date; take: number },
): Promise<UndeliveredMail[]> =>
  tx.mail.findMany({
    where: {
      companyId,
      projectId,
      replacedAt: null,
      OR: [{ state: { in: ['refused', 'givenUp'] } }, { state: 'waiting', createdAt: { lt: waitingSince } }],
    },
    include: withSubject,
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take,
  });

/** The finding of each notice. */
export const listNoticeFindings = (tx: Tx, companyId: string, ids: string[]) =>
  tx.notice.findMany({ where: { companyId, id: { in: ids } }, select: { id: true, findingId: true } });

/** Who writes for a company, and who reads for it. */
export interface Office {
  readonly company: { readonly name: string; readonly email: string | null };
  /** Null for somebody who left, and for an API key. */
  readonly writerEmail: string | null;
  /** The member who sent it, else the company's own address. */
  readonly reads: string | null;
}

export async function findOffice(tx: Tx, companyId: string, memberId: string): Promise<Office> {
  const [row] = await tx.$queryRaw<{ name: string; email: string | null; writerEmail: string | null }[]>`
    select c.name, c.email, m.email as "writerEmail" from company c
    left join member m on m.company_id = c.id and m.id = ${memberId}::uuid and m.removed_at is null
    where c.id = ${companyId}::uuid`;
  if (!row) throw new Error(`Company ${companyId} is gone.`);
  const { writerEmail, ...company } = row;
  return { company, writerEmail, reads: writerEmail ?? company.email };
}

/** The newest mail that brought a client the link to a version. */
export const findLinkMail = (tx: Tx, companyId: string, changeOrderId: string, version: number) =>
  tx.mail.findFirst({
    where: { companyId, changeOrderId, version, kind: { in: ['offer', 'linkRenewed'] } },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  });

/** The newest link to a version. */
export const findLink = (tx: Tx, companyId: string, changeOrderId: string, version: number) =>
  tx.clientLink.findFirst({
    where: { companyId, changeOrderId, version },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  });
