import type { Prisma } from '../../generated/prisma/client.ts';
import type { Tx } from '../../platform/database/database.ts';
import { workStages } from '../../shared/work-stages.ts';

const withNoticeFacts = {
  location: { select: { name: true } },
  judgments: { orderBy: { seq: 'desc' }, take: 1 },
  notices: { orderBy: [{ sentOn: 'asc' }, { enteredAt: 'asc' }] },
  photos: {
    where: { photo: { OR: [{ deviceOffset: { not: null } }, { stage: { in: [...workStages] } }] } },
    select: { photo: { select: { stage: true, deviceTime: true, deviceOffset: true, receivedAt: true } } },
    orderBy: [{ addedAt: 'desc' }, { photoId: 'asc' }],
  },
} satisfies Prisma.FindingInclude;

/** A finding with what its notice hangs on: place, newest judgment, notices by day, photos that tell a zone or show work. */
export type NoticeFinding = Prisma.FindingGetPayload<{ include: typeof withNoticeFacts }>;
export type NoticeRow = NoticeFinding['notices'][number];

export const findFinding = (tx: Tx, companyId: string, id: string): Promise<NoticeFinding | null> =>
  tx.finding.findUnique({ where: { companyId_id: { companyId, id } }, include: withNoticeFacts });

/** Findings of a project that are not settled, gravest first. */
export const listUnsettled = (tx: Tx, companyId: string, projectId: string, take: number): Promise<NoticeFinding[]> =>
  tx.finding.findMany({
    where: { companyId, projectId, state: { notIn: ['approved', 'repaired', 'proven', 'withdrawn'] } },
    include: withNoticeFacts,
    orderBy: [{ severity: { sort: 'asc', nulls: 'last' } }, { createdAt: 'asc' }],
    take,
  });

export const findProject = (tx: Tx, companyId: string, id: string) =>
  tx.project.findUniqueOrThrow({ where: { companyId_id: { companyId, id } }, include: { terms: true } });
export type NoticeProject = Awaited<ReturnType<typeof findProject>>;

export const findCompany = (tx: Tx, companyId: string) => tx.company.findUniqueOrThrow({ where: { id: companyId } });

/** The zone that the newest photo of a project tells, `+HH:MM`, or null. */
export async function findPhotoOffset(tx: Tx, companyId: string, projectId: string): Promise<string | null> {
  const photo = await tx.photo.findFirst({
    where: { companyId, projectId, deviceOffset: { not: null } },
    select: { deviceOffset: true },
    orderBy: [{ receivedAt: 'desc' }, { id: 'asc' }],
  });
  return photo?.deviceOffset ?? null;
}

export const findNotice = (tx: Tx, companyId: string, id: string): Promise<NoticeRow | null> =>
  tx.notice.findUnique({ where: { companyId_id: { companyId, id } } });

export const insertNotice = (tx: Tx, data: Prisma.NoticeUncheckedCreateInput): Promise<NoticeRow> =>
  tx.notice.create({ data });

/** Mails of this finding's notices that no longer stand for it. */
export async function replaceMails(tx: Tx, companyId: string, findingId: string, at: Date): Promise<void> {
  const rows = await tx.notice.findMany({ where: { companyId, findingId }, select: { id: true } });
  const noticeIds = rows.map(({ id }) => id);
  await tx.mail.updateMany({
    where: { companyId, noticeId: { in: noticeIds }, replacedAt: null },
    data: { replacedAt: at },
  });
}

export type NoticeMailState = Prisma.MailGetPayload<object>['state'];

/** Where the mails of these notices stand, by the mail's id. */
export async function mailStates(
  tx: Tx,
  companyId: string,
  rows: readonly NoticeRow[],
): Promise<Map<string, NoticeMailState>> {
  const ids = rows.flatMap(({ mailId }) => mailId ?? []);
  if (ids.length === 0) return new Map();
  const mails = await tx.mail.findMany({ where: { companyId, id: { in: ids } }, select: { id: true, state: true } });
  return new Map(mails.map(({ id, state }) => [id, state]));
}
