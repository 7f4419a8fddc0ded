import {
  changeOrderDocument,
  contractEffect,
  draftEdit,
  draftField,
  draftMark,
  missingSpanish,
  spanishNames,
  wording,
} from '@underlath/rules/documents';
import * as z from 'zod';
import {
  cents,
  changeOrderState,
  currency,
  day,
  id,
  instant,
  letterId,
  lines,
  locale,
  manyWords,
  personName,
  sha256,
  text,
} from './common.ts';
import { source } from './findings.ts';
import { mail } from './mails.ts';
import { office, route } from './route.ts';

const person = z.object({ id, name: z.string() });

export const decision = z.object({
  kind: z.enum(['approved', 'declined']),
  /** Those approved where some were left out; empty: all of them, or none. */
  findingIds: z.array(id),
  version: z.int(),
  signerName: z.string(),
  /** Whom the letter was for, where the signer confirmed that another name is right; else null. */
  letterFor: z.string().nullable(),
  reason: z.string(),
  sha256,
  /** Null for a refusal, which agrees to nothing. */
  consentText: z.string().nullable(),
  /** What a refusal of an unsafe or undecided place said to have understood; else null. */
  acknowledged: z.string().nullable(),
  /** The language the letter was read and answered in. */
  locale,
  decidedAt: instant,
  /** What it did to the contract, by the ledger at that moment; null for what was answered before this was kept. */
  contract: contractEffect.nullable(),
});
export const question = z.object({
  id,
  version: z.int(),
  name: z.string(),
  text: z.string(),
  askedAt: instant,
  answer: z.string().nullable(),
  answeredAt: instant.nullable(),
});
export const sentVersion = z.object({
  version: z.int(),
  sha256,
  sentAt: instant,
  sentBy: person,
  state: z.enum(['sent', 'approved', 'part-approved', 'declined', 'replaced', 'set-aside']),
  linkState: z.enum(['live', 'expired', 'revoked']),
  linkExpiresAt: instant.nullable(),
  decision: decision.nullable(),
});

export const changeOrderRow = z.object({
  id,
  version: z.int(),
  projectId: id,
  number: z.int(),
  state: changeOrderState,
  headline: z.string(),
  totalCents: cents,
  currency,
  days: z.int(),
  findingCount: z.int(),
  openQuestions: z.int(),
  sentVersion: z.int().nullable(),
  decidedAt: instant.nullable(),
  createdAt: instant,
});

/** Something that the list of the site's state, or care, asks of a change and this one does not carry. Any item is enough. */
export const contentGap = z.object({
  anyOf: z.array(z.string()),
  words: text,
  weight: z.enum(['law', 'care']),
  source,
});

/** A change order held against what was read of the state's rules. It never says that a document is valid. */
export const contentReview = z.object({
  /** Of the site, two letters; null: not said. */
  state: z.string().nullable(),
  /** Null where there is no list for the state: then it is what changes commonly carry. */
  stateName: z.string().nullable(),
  /** The day the list's sources were last looked at. */
  checkedOn: day.nullable(),
  missing: z.array(contentGap),
  cautions: z.array(text),
});

/** `draft` is what would be sent now; once sent or decided it is the frozen document of the newest version, as far as it was approved, with the contract as it stands while it waits, and as the answer made it. */
export const changeOrder = changeOrderRow.extend({
  wording,
  findingIds: z.array(id),
  /** What was typed by hand. */
  typed: z.array(draftField),
  /** Typed words that may still speak of a finding taken out, and typed days of other findings: it is not sent before each was changed or said to stand. */
  marks: z.array(draftMark),
  spanish: spanishNames,
  /** What of a draft has no Spanish yet; asked for before it is sent to a client who reads Spanish. */
  missingSpanish: z.array(missingSpanish),
  clientLocale: locale,
  draft: changeOrderDocument.omit({ sentAt: true, sentBy: true, expiresAt: true, record: true }),
  /** Why it can't be sent yet, in words; empty when it can. */
  blocks: z.array(z.string()),
  /** What to know before it is sent: declined findings that this work would cover over. */
  conflicts: z.array(z.string()),
  /** What it lacks for the state of the site if it is mailed to the client; null once it was sent. */
  contentReview: contentReview.nullable(),
  versions: z.array(sentVersion),
  questions: z.array(question),
  /** Every mail about it, newest first. */
  mails: z.array(mail),
});

const byProject = z.object({ projectId: id });
const byId = z.object({ changeOrderId: id });
const byVersion = byId.extend({ sentVersion: z.coerce.number().int().min(1).max(10_000) });

export const changeOrderRoutes = {
  listChangeOrders: route({
    name: 'listChangeOrders',
    method: 'GET',
    path: '/projects/:projectId/change-orders',
    permission: office,
    summary: 'Change orders of a project',
    params: byProject,
    answers: { 200: z.object({ items: z.array(changeOrderRow) }) },
  }),
  createChangeOrder: route({
    name: 'createChangeOrder',
    method: 'POST',
    path: '/projects/:projectId/change-orders',
    permission: office,
    summary: 'Group findings into a change order; the wording starts from the checks',
    idempotent: true,
    params: byProject,
    body: z.strictObject({
      id: id.optional(),
      findingIds: z.array(id).min(1).max(100),
      days: z.int().min(0).max(1000).optional(),
    }),
    answers: { 201: changeOrder },
  }),
  getChangeOrder: route({
    name: 'getChangeOrder',
    method: 'GET',
    path: '/change-orders/:changeOrderId',
    permission: office,
    summary: 'A change order with its price, versions, questions and decision',
    params: byId,
    answers: { 200: changeOrder },
  }),
  changeChangeOrder: route({
    name: 'changeChangeOrder',
    method: 'PATCH',
    path: '/change-orders/:changeOrderId',
    permission: office,
    summary: 'Edit wording, days or findings. If it was sent, it is a draft again and the old link dies at once',
    versioned: true,
    params: byId,
    body: draftEdit,
    answers: { 200: changeOrder },
  }),
  setAsideChangeOrder: route({
    name: 'setAsideChangeOrder',
    method: 'DELETE',
    path: '/change-orders/:changeOrderId',
    permission: office,
    summary:
      'Throw away a draft, or set aside what was sent and not answered: the link ends, its findings can be offered again, its number stays used',
    versioned: true,
    params: byId,
    answers: { 200: changeOrder },
  }),
  sendChangeOrder: route({
    name: 'sendChangeOrder',
    method: 'POST',
    path: '/change-orders/:changeOrderId/send',
    permission: office,
    summary: 'Freeze a version, hash it, make the client link (shown once) and mail it when there is an address',
    idempotent: true,
    versioned: true,
    params: byId,
    body: z.strictObject({
      /** Absent: the project's own address. Null: nothing is mailed, the link is handed over. */
      clientEmail: z.email().max(254).nullable().optional(),
      expiresInDays: z.int().min(1).max(90).default(14),
      /** Why it goes out although it lacks what a law asks for; needed then, and kept in the record. */
      missingReason: lines(1000).optional(),
      /** The client may leave single findings out; every choice is priced and in the document. Of 2 to 4 findings. */
      byPart: z.boolean().default(false),
      /** To a client who reads Spanish although names in it have no Spanish; they are marked as English then. */
      withEnglish: z.boolean().default(false),
    }),
    answers: { 200: z.object({ changeOrder, link: z.string(), sha256 }) },
  }),
  renewClientLink: route({
    name: 'renewClientLink',
    method: 'POST',
    path: '/change-orders/:changeOrderId/link',
    permission: office,
    summary: 'A new link for the version already sent, mailed where there is an address; earlier links die',
    params: byId,
    body: z.strictObject({
      expiresInDays: z.int().min(1).max(90).default(14),
      /** Absent: where the offer went. Null: nothing is mailed, the link is handed over. */
      clientEmail: z.email().max(254).nullable().optional(),
    }),
    answers: { 200: z.object({ link: z.string(), expiresAt: instant, mailedTo: z.string().nullable() }) },
  }),
  revokeClientLink: route({
    name: 'revokeClientLink',
    method: 'DELETE',
    path: '/change-orders/:changeOrderId/link',
    permission: office,
    summary: 'Revoke the client link',
    params: byId,
    answers: { 204: null },
  }),
  getSentDocument: route({
    name: 'getSentDocument',
    method: 'GET',
    path: '/change-orders/:changeOrderId/versions/:sentVersion',
    permission: office,
    summary: 'The exact canonical JSON that was sent; its SHA-256 is the ETag',
    params: byVersion,
    answers: { 200: changeOrderDocument },
  }),
  getSentPdf: route({
    name: 'getSentPdf',
    method: 'GET',
    path: '/change-orders/:changeOrderId/versions/:sentVersion/pdf',
    permission: office,
    summary: 'A PDF of exactly that version with photos, hash and, when there is one, the decision',
    params: byVersion,
    query: z.object({ locale: locale.optional() }),
    answers: { 200: 'application/pdf' },
  }),
  answerQuestion: route({
    name: 'answerQuestion',
    method: 'POST',
    path: '/change-orders/:changeOrderId/questions/:questionId/answer',
    permission: office,
    summary: "Answer a client's question",
    params: byId.extend({ questionId: id }),
    body: z.strictObject({ answer: manyWords(4000) }),
    answers: { 200: question },
  }),
} as const;

/** Where a contract stands; the finish is null without a start. */
export const contractStanding = z.object({ sumCents: z.int(), days: z.int(), finishOn: day.nullable() });

/** What one answer would do to the contract as it stands now, and where it would be if all that wait were approved too. */
const answerEffect = z.object({ contract: contractEffect, withWaiting: contractStanding });

/** The contract as it stands when it is asked for; the document holds what it was when the letter was sent. */
export const contractToday = z.object({
  /** Names all that makes the sum, the days and the finish; an approval has to name the same. */
  ledger: z.string(),
  /** Of the whole letter. */
  whole: answerEffect,
  /** Of each choice that the letter offers, in the document's order. */
  parts: z.array(answerEffect.extend({ findingIds: z.array(id) })),
  /** Where it stood when the letter was sent. */
  told: contractStanding,
  /** Whether sum, days or finish are others now. */
  hasMoved: z.boolean(),
  /** What moved them since, in order. */
  moves: z.array(
    z.object({
      kind: z.enum(['change', 'allowance', 'allowance-taken-back']),
      /** Of a change order. */
      number: z.int().nullable(),
      name: z.string(),
      on: day,
      cents: z.int(),
      days: z.int(),
    }),
  ),
  /** Something else moved them too: the start, or how days are counted. */
  isTimeCountedAnew: z.boolean(),
  /** Other change orders of the project that were sent and not answered. */
  waiting: z.array(z.object({ number: z.int(), cents, days: z.int() })),
});

/** What the holder of a link sees. */
export const clientLetter = z.object({
  letterId,
  document: changeOrderDocument,
  sha256,
  state: z.enum(['open', 'approved', 'part-approved', 'declined']),
  decision: decision.nullable(),
  /** The decision was made in this very session: only then "you" is who answered. */
  answeredHere: z.boolean(),
  questions: z.array(question),
  locale,
  /** Of the site, an IANA name; null where the project does not know it. */
  timeZone: z.string().nullable(),
  contract: contractToday,
  /** Until when the link can be answered by: of the newest one, whatever the frozen document says. */
  answerBy: instant,
});

const byLetter = z.object({ letterId });
/** Of the letter on the screen; another one is refused, and nothing of it is shown. */
const seenVersion = z.int().min(1).max(10_000);
const token = z.string().max(200);

export const clientRoutes = {
  openClientLink: route({
    name: 'openClientLink',
    method: 'POST',
    path: '/client/letters/:letterId/session',
    permission: 'public',
    summary:
      "Exchange the token of a link for a session of its letter, a cookie of that letter's own; changes nothing else",
    params: byLetter,
    body: z.strictObject({ token }),
    answers: { 200: byLetter },
  }),
  openUnnamedLink: route({
    name: 'openUnnamedLink',
    method: 'POST',
    path: '/client/session',
    permission: 'public',
    summary: 'The same for links mailed before letters had ids; tells the id',
    body: z.strictObject({ token }),
    answers: { 200: byLetter },
  }),
  closeClientLink: route({
    name: 'closeClientLink',
    method: 'DELETE',
    path: '/client/letters/:letterId/session',
    permission: 'public',
    summary: 'Forget the letter on this device; the session ends on the server',
    params: byLetter,
    answers: { 204: null },
  }),
  getClientLetter: route({
    name: 'getClientLetter',
    method: 'GET',
    path: '/client/letters/:letterId',
    permission: 'client-link',
    summary: 'The change order behind the link; once answered it stays readable after the link has ended',
    params: byLetter,
    answers: { 200: clientLetter },
  }),
  decide: route({
    name: 'decide',
    method: 'POST',
    path: '/client/letters/:letterId/decision',
    permission: 'client-link',
    summary: 'Approve exactly the version seen with a typed name and consent, or decline it with a name',
    idempotent: true,
    params: byLetter,
    body: z.strictObject({
      kind: z.enum(['approved', 'declined']),
      version: seenVersion,
      /** Left out, all of them; only a part that the document offers can be approved. */
      findingIds: z.array(id).min(1).max(200).optional(),
      sha256,
      /** `contract.ledger` of the letter as it was shown; an approval of a contract that moved since is refused. */
      ledger: z.string().max(64),
      signerName: personName,
      /** The signer was asked about a name that is not the one the letter is for, and said that it is right. */
      nameConfirmed: z.boolean().default(false),
      /** Of an approval, which needs it; a refusal comes without. */
      consent: z.literal(true, { error: 'must be ticked' }).optional(),
      consentId: z.string().max(60).optional(),
      /** Of a refusal of a letter that has something to acknowledge (`understoodAtDeclining`). */
      acknowledged: z.boolean().default(false),
      reason: lines(2000).default(''),
      locale: locale.default('en'),
    }),
    answers: { 200: clientLetter },
  }),
  ask: route({
    name: 'ask',
    method: 'POST',
    path: '/client/letters/:letterId/questions',
    permission: 'client-link',
    summary: 'Ask the contractor; nothing is decided. At most ten questions of a letter wait for an answer',
    idempotent: true,
    params: byLetter,
    body: z.strictObject({ version: seenVersion, name: personName, text: manyWords(2000) }),
    answers: { 201: question },
  }),
  clientPdf: route({
    name: 'clientPdf',
    method: 'GET',
    path: '/client/letters/:letterId/pdf',
    permission: 'client-link',
    summary: 'The same version as a PDF to keep',
    params: byLetter,
    query: z.object({ locale: locale.optional() }),
    answers: { 200: 'application/pdf' },
  }),
  clientPhoto: route({
    name: 'clientPhoto',
    method: 'GET',
    path: '/client/letters/:letterId/photos/:photoId',
    permission: 'client-link',
    summary: 'A photo of the letter, without metadata',
    params: byLetter.extend({ photoId: id }),
    query: z.object({ size: z.enum(['view', 'thumb']).default('view') }),
    answers: { 200: 'image/jpeg' },
  }),
} as const;

export type ContentReview = z.infer<typeof contentReview>;
export type ChangeOrder = z.infer<typeof changeOrder>;
export type ChangeOrderRow = z.infer<typeof changeOrderRow>;
export type SentVersion = z.infer<typeof sentVersion>;
export type Decision = z.infer<typeof decision>;
export type Question = z.infer<typeof question>;
export type ClientLetter = z.infer<typeof clientLetter>;
export type ContractToday = z.infer<typeof contractToday>;
export type ContractStanding = z.infer<typeof contractStanding>;
