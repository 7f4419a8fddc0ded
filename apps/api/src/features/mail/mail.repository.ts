import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import { findMemberEmail } from '../../shared/members.ts';

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

export const findProject = (tx: Tx, companyId: string, id: string) =>
  tx.project.findUniqueOrThrow({ where: { companyId_id: { companyId, id } } });

/** Where the office reads: the member who sent it, else the company's own address. */
export async function findOfficeEmail(tx: Tx, companyId: string, memberId: string): Promise<string | null> {
  const member = await findMemberEmail(tx, companyId, memberId);
  return member ?? (await tx.company.findUniqueOrThrow({ where: { id: companyId } })).email;
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
