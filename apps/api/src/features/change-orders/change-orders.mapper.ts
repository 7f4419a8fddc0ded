import {
  type ChangeOrder,
  type ChangeOrderDocument,
  type ChangeOrderRow,
  type ContentReview,
  type Decision,
  documentOfPart,
  type Mail,
  partOf,
  type Question,
  type SentVersion,
  type Wording,
} from '@underlath/contract';
import { toWord } from '../enum-words.ts';
import type { ChangeOrderRecord, QuestionRow, VersionRecord } from './change-orders.repository.ts';
import type { DraftDocument } from './offer-document.ts';

export const toWording = (record: Pick<ChangeOrderRecord, 'wording'>): Wording => record.wording as unknown as Wording;

/** The frozen document of a version; its bytes were checked against the contract before they were stored. */
export const toDocument = (version: Pick<VersionRecord, 'document'>): ChangeOrderDocument =>
  JSON.parse(version.document) as ChangeOrderDocument;

/** The document as far as it was approved: without the findings that the client left out. */
export function approvedOf(version: Pick<VersionRecord, 'document' | 'decision'>): ChangeOrderDocument {
  const document = toDocument(version);
  return documentOfPart(document, partOf(document, version.decision?.findingIds ?? []));
}

/** A decision on a part is an approval of its own kind. */
export const answerOf = ({ kind, findingIds }: NonNullable<VersionRecord['decision']>) =>
  findingIds.length > 0 ? 'part-approved' : kind;

/** The version the client has or had before them, or null while it is a draft. */
export const currentVersion = (record: ChangeOrderRecord): VersionRecord | null =>
  record.versions.find((version) => version.version === record.sentVersion) ?? null;

export function toRow(record: ChangeOrderRecord, totalCents: number): ChangeOrderRow {
  const { id, version, projectId, number, days, sentVersion, decidedAt, createdAt, findings, questions } = record;
  return {
    id,
    version,
    projectId,
    number,
    state: toWord(record.state),
    headline: toWording(record).headline.en,
    totalCents,
    currency: 'USD',
    days,
    findingCount: findings.length,
    openQuestions: questions.filter((question) => question.answeredAt === null).length,
    sentVersion,
    decidedAt: decidedAt?.toISOString() ?? null,
    createdAt: createdAt.toISOString(),
  };
}

interface Views {
  draft: DraftDocument;
  blocks: string[];
  conflicts: string[];
  review: ContentReview | null;
  names: Map<string, string>;
  mails: Mail[];
  now: Date;
}

export function toChangeOrder(record: ChangeOrderRecord, views: Views): ChangeOrder {
  const { draft, blocks, conflicts, review, names, mails, now } = views;
  return {
    ...toRow(record, draft.price.totalCents),
    wording: toWording(record),
    findingIds: record.findings.map(({ findingId }) => findingId),
    draft,
    blocks,
    conflicts,
    contentReview: review,
    versions: record.versions.map((version) => toSentVersion(record, version, names, now)),
    questions: record.questions.map(toQuestion),
    mails,
  };
}

function toSentVersion(
  record: ChangeOrderRecord,
  version: VersionRecord,
  names: Map<string, string>,
  now: Date,
): SentVersion {
  const link = version.links.at(-1);
  const isCurrent = version.version === record.sentVersion;
  return {
    version: version.version,
    sha256: version.sha256,
    sentAt: version.sentAt.toISOString(),
    sentBy: { id: version.sentById, name: names.get(version.sentById) ?? toDocument(version).sentBy },
    state: version.decision ? answerOf(version.decision) : isCurrent ? 'sent' : 'replaced',
    linkState: !link || link.revokedAt ? 'revoked' : link.expiresAt <= now ? 'expired' : 'live',
    linkExpiresAt: link?.expiresAt.toISOString() ?? null,
    decision: version.decision && toDecision(version.decision),
  };
}

export function toDecision(row: NonNullable<VersionRecord['decision']>): Decision {
  const { kind, findingIds, version, signerName, reason, sha256, consentText, decidedAt } = row;
  return { kind, findingIds, version, signerName, reason, sha256, consentText, decidedAt: decidedAt.toISOString() };
}

export function toQuestion({ id, version, name, text, askedAt, answer, answeredAt }: QuestionRow): Question {
  return {
    id,
    version,
    name,
    text,
    askedAt: askedAt.toISOString(),
    answer,
    answeredAt: answeredAt?.toISOString() ?? null,
  };
}
