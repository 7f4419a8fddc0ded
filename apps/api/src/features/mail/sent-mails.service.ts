import type { Mail } from '@underlath/contract';
import type { Tx } from '../../platform/database/database.ts';
import { toMail } from './mail.mapper.ts';
import * as mails from './mail.repository.ts';

/** A mail that somebody has to look after. */
export interface Undelivered {
  readonly state: 'refused' | 'givenUp' | 'waiting';
  readonly to: string;
  readonly serverWords: string | null;
  /** Null for a notice. */
  readonly changeOrder: { readonly id: string; readonly number: number } | null;
  readonly findingId: string | null;
  readonly postedAt: Date;
}

/** What still waits after this long is told: the pauses between tries are minutes until then. */
const waitingIsLongMs = 3_600_000;

/** Mails of a project that did not arrive, or wait for long, and still matter. The rows bear the database's own clock. */
export async function undeliveredMails(
  tx: Tx,
  companyId: string,
  projectId: string,
  take: number,
): Promise<Undelivered[]> {
  const waitingSince = new Date(Date.now() - waitingIsLongMs);
  const rows = (await mails.listUndelivered(tx, companyId, projectId, { waitingSince, take })).filter(stillMatters);
  const noticeIds = rows.flatMap(({ noticeId }) => noticeId ?? []);
  const notices = noticeIds.length > 0 ? await mails.listNoticeFindings(tx, companyId, noticeIds) : [];
  return rows.map(({ state, to, serverWords, changeOrderId, changeOrder, noticeId, createdAt }) => ({
    state: state as Undelivered['state'],
    to,
    serverWords,
    changeOrder: changeOrderId && changeOrder ? { id: changeOrderId, number: changeOrder.number } : null,
    findingId: notices.find(({ id }) => id === noticeId)?.findingId ?? null,
    postedAt: createdAt,
  }));
}

/** A link to an offer that was answered or taken back leads nowhere any more; a question that was answered needs no mail. */
function stillMatters({ kind, version, changeOrder, question }: mails.UndeliveredMail): boolean {
  if (kind === 'offer' || kind === 'linkRenewed')
    return changeOrder?.state === 'sent' && changeOrder.sentVersion === version;
  return kind !== 'questionAsked' || question?.answeredAt === null;
}

/** Every mail about a change order, newest first; the caller holds the transaction. */
export const mailsOf = async (tx: Tx, companyId: string, changeOrderId: string): Promise<Mail[]> =>
  (await mails.listMails(tx, companyId, changeOrderId)).map(toMail);
