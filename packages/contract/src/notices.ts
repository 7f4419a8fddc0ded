import * as z from 'zod';
import { day, givenDay, id, instant, locale, manyWords, noticeMethod, text, words } from './common.ts';
import { mailState } from './mails.ts';
import { everyone, office, route } from './route.ts';

/** A heads-up notice of a hidden condition as it went out. It is never changed. */
export const notice = z.object({
  id,
  method: noticeMethod,
  sentOn: day,
  /** Null for whom the company does not show the client's e-mail address to. */
  sentTo: z.string().nullable(),
  /** The words that were sent; for one that went out another way what was noted of it, such as a tracking number. */
  text: z.string(),
  /** Where the mail stands that carries it; null for one that went out another way. */
  mail: mailState.nullable(),
  enteredAt: instant,
  enteredBy: z.object({ id, name: z.string() }),
});

/** Where the notice of one finding stands. Days are dates at the site. */
export const noticeClock = z.object({
  /** False for what needs nobody to be told: it meets, was withdrawn, or is agreed in writing already. */
  asked: z.boolean(),
  firstSeenOn: day,
  today: day,
  /** The last day; null where the contract names no number of days: then at once. */
  dueOn: day.nullable(),
  /** Calendar days to the last day, below 0 when it is past. */
  daysLeft: z.int().nullable(),
  state: z.enum(['open', 'overdue', 'sent', 'sent-late']),
  /** The first notice by a method that the contract names. */
  sentOn: day.nullable(),
  cautions: z.array(text),
  /** The clock at the site: its zone where the project says it, how far it is ahead of UTC now, `+HH:MM`, and how it is known. */
  timeZone: z.string().nullable(),
  utcOffset: z.string(),
  offsetFrom: z.enum(['project', 'photo', 'assumed']),
  terms: z.object({
    days: z.int().nullable(),
    dayKind: z.enum(['calendar', 'working']),
    methods: z.array(noticeMethod),
  }),
});

const letter = z.object({ subject: z.string(), text: z.string() });

/** Ready to send; there is no price in it. */
export const noticeDraft = z.object({
  to: z.string().nullable(),
  locale,
  letters: z.object({ en: letter, es: letter }),
});

const byFinding = z.object({ findingId: id });
const noticeText = manyWords(8000);

export const noticeRoutes = {
  getNotice: route({
    name: 'getNotice',
    method: 'GET',
    path: '/findings/:findingId/notice',
    permission: everyone,
    summary: 'The notice clock of a finding, what has been sent, and a heads-up notice ready to send',
    params: byFinding,
    answers: { 200: z.object({ clock: noticeClock, sent: z.array(notice), draft: noticeDraft }) },
  }),
  sendNotice: route({
    name: 'sendNotice',
    method: 'POST',
    path: '/findings/:findingId/notices',
    permission: office,
    summary: 'Mail a heads-up notice, or note one that went out another way; it cannot be changed afterwards',
    idempotent: true,
    params: byFinding,
    body: z.discriminatedUnion('how', [
      z.strictObject({ how: z.literal('mail'), id: id.optional(), to: z.email().max(254), locale, text: noticeText }),
      z.strictObject({
        how: z.literal('noted'),
        id: id.optional(),
        method: noticeMethod,
        sentOn: givenDay,
        to: words(200),
        text: noticeText,
      }),
    ]),
    answers: { 201: notice },
  }),
} as const;

export type Notice = z.infer<typeof notice>;
export type NoticeClock = z.infer<typeof noticeClock>;
export type NoticeDraft = z.infer<typeof noticeDraft>;
