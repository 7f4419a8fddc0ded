import * as z from 'zod';
import {
  cents,
  currency,
  day,
  id,
  instant,
  photoStage,
  rectangle,
  severity,
  sha256,
  source,
  text,
} from '../../schemas/values.ts';
import { alternateKind, exclusion } from './estimate-content.ts';
import { pricedScope } from './priced-scope.ts';

/** The words of the letter, in both languages; generated from the checks, then edited. */
export const wording = z.strictObject({ headline: text, found: text, why: text, ifNot: text, note: text });

export const documentPhoto = z.object({
  id,
  sha256,
  viewSha256: sha256,
  caption: z.string(),
  /** Spanish of the caption, where it was typed; so too for the names of places and findings. */
  captionEs: z.string().optional(),
  stage: photoStage,
});

/** The place as it is drawn beside the words. */
export const documentPlace = z.object({
  locationId: id,
  name: z.string(),
  nameEs: z.string().optional(),
  kind: z.string(),
  widthIn: z.number().nullable(),
  heightIn: z.number().nullable(),
  framingSpacingIn: z.number().nullable(),
  openings: z.array(z.looseObject({})),
});

/** Another way to do a finding's repair, and what it would change in the price of the whole letter; null while it lacks a rate. */
export const documentAlternate = z.object({
  kind: alternateKind,
  name: text,
  what: z.array(text),
  differenceCents: z.int().nullable(),
});

export const documentItem = z.object({
  findingId: id,
  number: z.int(),
  title: z.string(),
  titleEs: z.string().optional(),
  place: documentPlace,
  extent: rectangle.nullable(),
  severity,
  /** What the severity means for the owner; absent in format 1. */
  consequence: text.optional(),
  found: text,
  why: text,
  ifNot: text,
  repairs: z.array(text),
  cautions: z.array(text),
  sources: z.array(source),
  measured: z.array(z.object({ label: text, value: z.string() })),
  checkedBy: z.string(),
  /** When its measurements were judged. */
  checkedAt: instant,
  /** When it was first seen; absent in what was sent before this was kept. */
  seenAt: instant.optional(),
  rulesVersion: z.string(),
  photos: z.array(documentPhoto),
  /** Its share of the printed total; the shares add up to it. */
  shareCents: cents,
  /** What it would cost if it were the only one; absent in what was sent before this was kept. */
  aloneCents: cents.optional(),
  /** What the price does not cover; absent where nothing is left out. */
  exclusions: z.array(exclusion).optional(),
  /** Other ways to do it, in no sum; absent where there are none. */
  alternates: z.array(documentAlternate).optional(),
});

/** The contract before and after the change. */
export const contractEffect = z.object({
  currency,
  originalSumCents: cents,
  previousChangesCents: cents,
  /** Settled allowances, net; absent in what was sent before they were kept. */
  allowancesCents: cents.optional(),
  beforeCents: cents,
  thisChangeCents: cents,
  afterCents: cents,
  daysBefore: z.int(),
  daysAfter: z.int(),
  finishBefore: day.nullable(),
  finishAfter: day.nullable(),
  /** How days are counted; absent, as in what was sent before this was kept: working days. */
  dayKind: z.enum(['working', 'calendar']).optional(),
  /** What it adds to each payment still to come; absent where no payments are written down. */
  payments: z.array(z.object({ name: text, cents })).optional(),
});

/** What it comes to when only these findings are approved, the others left out. */
export const documentPart = z.object({
  findingIds: z.array(id),
  price: pricedScope,
  /** Of the findings in it; they add up to its total. */
  shares: z.array(z.object({ findingId: id, cents })),
  days: z.int(),
  contract: contractEffect,
  /** What leaving the others out means. */
  cautions: z.array(text),
});

/** One sentence or more of a section. */
export const letterLine = z.object({
  words: text,
  /** What it explains, or whom it is for. */
  term: text.optional(),
  /** Said once more above the signature. */
  atSigning: z.boolean().optional(),
  /** Said to who declines. */
  atDeclining: z.boolean().optional(),
  /** Only about this finding: not said where it is left out. */
  findingId: id.optional(),
});

/** Promises, cautions, unknowns, conditions and explanations, as page, PDF and mail show them. */
export const letterSection = z.object({
  id: z.enum(['make-safe', 'letter', 'price', 'parts', 'not-known', 'cautions', 'words']),
  title: text,
  lines: z.array(letterLine),
});

/** What was asked and answered before this version was sent. */
export const documentQuestion = z.object({
  name: z.string(),
  text: z.string(),
  askedAt: instant,
  answer: z.string().nullable(),
  answeredAt: instant.nullable(),
});

/**
 * Everything the client decides on; frozen as canonical JSON when sent. Format 2 holds every word that is shown beside the
 * figures; in format 1 the sections were words of the page alone, and are made anew for who reads it today.
 */
export const changeOrderDocument = z.object({
  format: z.enum(['underlath.change-order/1', 'underlath.change-order/2']),
  changeOrderId: id,
  number: z.int(),
  version: z.int(),
  company: z.object({
    name: z.string(),
    licenseNumber: z.string().nullable(),
    phone: z.string().nullable(),
    email: z.string().nullable(),
    address: z.string().nullable(),
  }),
  project: z.object({
    id,
    name: z.string(),
    siteAddress: z.string(),
    clientName: z.string(),
    /** Whose clock its days are told by; absent or null where it was not known when this was sent. */
    timeZone: z.string().nullable().optional(),
  }),
  wording,
  items: z.array(documentItem),
  price: pricedScope,
  days: z.int(),
  contract: contractEffect,
  /** Every choice of findings short of all of them; absent where only the whole can be approved. */
  parts: z.array(documentPart).optional(),
  cautions: z.array(text),
  sections: z.array(letterSection).optional(),
  /** Of earlier versions and of this one until it was sent; absent where nothing was asked. */
  questions: z.array(documentQuestion).optional(),
  consent: z.object({ id: z.string(), text }),
  sentAt: instant,
  sentBy: z.string(),
  expiresAt: instant,
  /** Where the project's record stood when this was sent. */
  record: z.object({ seq: z.int(), hash: sha256 }),
});

export type Wording = z.infer<typeof wording>;
export type ChangeOrderDocument = z.infer<typeof changeOrderDocument>;
export type DocumentAlternate = z.infer<typeof documentAlternate>;
export type DocumentItem = z.infer<typeof documentItem>;
export type LetterLine = z.infer<typeof letterLine>;
export type LetterSection = z.infer<typeof letterSection>;
export type DocumentPart = z.infer<typeof documentPart>;
export type ContractEffect = z.infer<typeof contractEffect>;
