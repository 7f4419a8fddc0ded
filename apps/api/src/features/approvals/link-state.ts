import type { Tx } from '../../platform/database/database.ts';
import { type Contact, ProblemError } from '../../platform/problem-error.ts';
import * as approvals from './approvals.repository.ts';

/** What of a link says whether it works. */
export interface LinkStanding extends Pick<approvals.LinkRow, 'companyId' | 'version' | 'revokedAt' | 'expiresAt'> {
  readonly sent: { readonly decision: object | null; readonly changeOrder: { readonly sentVersion: number | null } };
}

/**
 * What was answered stays to be read for as long as the firm keeps it; before an answer a link must still be live.
 * @throws ProblemError as `assertLive`
 */
export async function assertReadable(tx: Tx, link: LinkStanding, now: Date): Promise<void> {
  if (!link.sent.decision) await assertLive(tx, link, now);
}

/**
 * A live link can be answered and asked by.
 * @throws ProblemError `link-replaced` when another version stands or comes, `link-revoked`, `link-expired`
 */
export async function assertLive(tx: Tx, link: LinkStanding, now: Date): Promise<void> {
  const { companyId, version, revokedAt, expiresAt, sent } = link;
  const isReplaced = sent.changeOrder.sentVersion !== version;
  if (!isReplaced && !revokedAt && expiresAt > now) return;
  const contact = await contactOf(tx, companyId);
  const ask = contactWords(contact);
  if (isReplaced) {
    const what =
      'The contractor changed this offer, so this version can no longer be answered; no answer was given to it.';
    throw new ProblemError('link-replaced', `${what} ${ask} for the new link.`, { contact });
  }
  const state = sent.decision ? 'The letter was answered and stays to be read.' : 'No answer was given to this letter.';
  const [type, why] = revokedAt
    ? (['link-revoked', 'This link was revoked.'] as const)
    : (['link-expired', 'This link has expired.'] as const);
  throw new ProblemError(type, `${why} ${state} ${ask} for a new link.`, { contact });
}

/** How to reach who sent the letter. */
export async function contactOf(tx: Tx, companyId: string): Promise<Contact> {
  const company = await approvals.findCompany(tx, companyId);
  return { name: company?.name ?? '', phone: company?.phone ?? null, email: company?.email ?? null };
}

export function contactWords({ name, phone, email }: Contact): string {
  const ways = [phone, email].filter(Boolean).join(' or ');
  return `Ask ${name || 'your contractor'}${ways ? ` (${ways})` : ''}`;
}
