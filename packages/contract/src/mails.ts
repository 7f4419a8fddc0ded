import * as z from 'zod';
import { id, instant } from './common.ts';
import { office, route } from './route.ts';

export const mailKind = z.enum([
  'offer',
  'link-renewed',
  'question-asked',
  'question-answered',
  'decision-told',
  'decision-copy',
  'notice',
  'invitation',
  'account-link',
  'account-told',
]);

/**
 * Handed over: a mail server took it, which is all that can be known. Filed: no mail server is set up, nobody was mailed.
 * Refused: the server never will take it. Given up: no try got through.
 */
export const mailState = z.enum(['waiting', 'handed-over', 'filed', 'refused', 'given-up']);

/** One mail about a change order, and what became of it. */
export const mail = z.object({
  id,
  kind: mailKind,
  /** The version of the change order it is about. */
  version: z.int(),
  to: z.string(),
  subject: z.string(),
  state: mailState,
  postedAt: instant,
  /** The last try; null while there was none. */
  triedAt: instant.nullable(),
  tries: z.int(),
  /** What the mail server said last; null while nobody was asked. */
  serverWords: z.string().nullable(),
  /** When another mail took its place; null while it is the one that counts. */
  replacedAt: instant.nullable(),
  /** True where sending again needs a new link, because the secret of this one is no longer kept; the old link ends. */
  renewsLink: z.boolean(),
});

export const mailRoutes = {
  sendMailAgain: route({
    name: 'sendMailAgain',
    method: 'POST',
    path: '/change-orders/:changeOrderId/mails/:mailId/again',
    permission: office,
    summary:
      'Send a mail again, to the same or another address; where its link is no longer kept, a new one ends the old',
    idempotent: true,
    params: z.object({ changeOrderId: id, mailId: id }),
    body: z.strictObject({ to: z.email().max(254).optional() }),
    answers: { 201: mail },
  }),
} as const;

export type Mail = z.infer<typeof mail>;
export type MailKind = z.infer<typeof mailKind>;
export type MailState = z.infer<typeof mailState>;
