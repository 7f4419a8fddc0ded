import type { Mail } from '@underlath/contract';
import { toWord } from '../../shared/enum-words.ts';
import type { MailRow } from './mail.repository.ts';

/** Kinds whose text carries a secret that opens something; it is taken out once a mail server has it. */
export const opensSomething = ({ kind }: Pick<MailRow, 'kind'>): boolean =>
  kind === null || kind === 'offer' || kind === 'linkRenewed' || kind === 'invitation' || kind === 'accountLink';

/** Gone from here, as far as it goes. */
export const isOut = (state: MailRow['state']): boolean => state === 'handedOver' || state === 'filed';

/** @param row of a change order: those have a kind and a version */
export const toMail = (row: MailRow): Mail => ({
  id: row.id,
  kind: toWord(row.kind ?? 'offer'),
  version: row.version ?? 0,
  to: row.to,
  subject: row.subject,
  state: toWord(row.state),
  postedAt: row.createdAt.toISOString(),
  triedAt: row.triedAt?.toISOString() ?? null,
  tries: row.tries,
  serverWords: row.serverWords,
  replacedAt: row.replacedAt?.toISOString() ?? null,
  renewsLink: isOut(row.state) && opensSomething(row),
});
