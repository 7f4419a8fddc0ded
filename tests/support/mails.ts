import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import type { MailRow } from '../../apps/api/src/features/mail/mail.repository.ts';
import type { MailKind } from '../../apps/api/src/generated/prisma/client.ts';
import type { TestApi } from './api.ts';

/** Waits until no mail of the company waits to go out, so that what follows is not disturbed by one. */
export async function mailsGone(api: TestApi, companyId: string): Promise<void> {
  const waiting = () =>
    api.platform.database.inCompany(companyId, (tx) => tx.mail.count({ where: { state: 'waiting' } }));
  await expect.poll(waiting, { timeout: 20_000 }).toBe(0);
}

/** Mails of one kind, oldest first. */
export const mailsOfKind = (api: TestApi, companyId: string, kind: MailKind): Promise<MailRow[]> =>
  api.platform.database.inCompany(companyId, (tx) =>
    tx.mail.findMany({ where: { kind }, orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] }),
  );

/** The bytes of the first attachment of a mail. */
export function attachmentOf(api: TestApi, id: string): Buffer {
  const raw = readFileSync(join(api.dataDir, 'mail', `${id}.eml`), 'latin1');
  const encoded = /Content-Disposition: attachment[\s\S]*?\n\n([A-Za-z0-9+/=\n]+)\n--/.exec(raw)?.[1] ?? '';
  return Buffer.from(encoded, 'base64');
}

/** The file that a mail was written to, its soft line breaks and encoded signs undone. */
export function mailFile(api: TestApi, id: string): string {
  const raw = readFileSync(join(api.dataDir, 'mail', `${id}.eml`), 'latin1');
  const bytes = raw
    .replace(/=\n/g, '')
    .replace(/=([0-9A-F]{2})/g, (_all, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
  return Buffer.from(bytes, 'latin1').toString('utf8');
}
