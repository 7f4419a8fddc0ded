import type { ContractEffect } from '@underlath/contract';
import { hashOf } from '../platform/hash.ts';

/** Kinds of events whose rows are checked against the record. */
export const eventTypes = {
  photoReceived: 'photo.received',
  findingJudged: 'finding.judged',
  changeOrderSent: 'change-order.sent',
  changeOrderDecided: 'change-order.decided',
} as const;

/** What the record keeps of a version that was sent; the subject is the change order. */
export interface SentData {
  version: number;
  /** SHA-256 of the exact document. */
  sha256: string;
}

/** What the record keeps of a client's answer; the subject is the change order. */
export interface DecidedData {
  version: number;
  kind: 'approved' | 'declined';
  sha256: string;
  signerName: string;
  /** Whom the letter was for, where another name was typed and confirmed; absent where they are alike. */
  letterFor?: string;
  /** Of an approval; a refusal agrees to nothing. */
  consentId?: string;
  /** SHA-256 of the consent's words as they were shown. */
  consentSha256?: string;
  /** What a refusal said to have understood; absent where nothing was asked. */
  acknowledged?: string;
  reason: string;
  /** RFC 3339, equal to the decision's own. */
  decidedAt: string;
  /** Those approved where some were left out; absent for all, or none. */
  findingIds?: string[];
  /** The language it was read in. */
  locale: string;
  /** SHA-256 of what the browser called itself. */
  userAgentSha256: string;
  /** What the answer did to the contract, equal to the decision's own; absent in what was answered before it was kept. */
  contract?: ContractEffect;
}

/** The parts of a judgment that its hash in the record covers. Picked one by one, so that a row with more columns hashes alike. */
export function judgmentHash(judgment: Readonly<Record<string, unknown>>): string {
  const { seq, checkId, rulesVersion, edition, inputs, context, outcome, verdict, severity } = judgment;
  return hashOf({ seq, checkId, rulesVersion, edition, inputs, context, outcome, verdict, severity });
}
