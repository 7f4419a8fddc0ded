import {
  type ChangeOrder,
  type ChangeOrderDocument,
  type ChangeOrderRow,
  type ContentReview,
  type ContractEffect,
  type Decision,
  type DraftMark,
  documentOfAnswer,
  letterSections,
  type Mail,
  type MissingSpanish,
  type Question,
  type SentVersion,
  type Wording,
} from '@underlath/contract';
import { SEVERITY_CONSEQUENCE } from '@underlath/rules';
import { toWord } from '../../shared/enum-words.ts';
import type { ChangeOrderRecord, QuestionRow, VersionRecord } from './change-orders.repository.ts';
import { keptDraftOf } from './draft-words.ts';
import type { DraftDocument } from './offer-document.ts';

/** The findings in it, in their order. */
export const memberIds = ({ findings }: Pick<ChangeOrderRecord, 'findings'>): string[] =>
  findings.map(({ findingId }) => findingId);

/**
 * The frozen document of a version; its bytes were checked against the contract before they were stored. Format 1 froze no
 * sections: for its reader they are made as they would be today, while its bytes and hash stay what was sent.
 */
export function toDocument(version: Pick<VersionRecord, 'document'>): ChangeOrderDocument {
  const document = JSON.parse(version.document) as ChangeOrderDocument;
  if (document.format !== 'underlath.change-order/1') return document;
  const items = document.items.map((item) => ({ ...item, consequence: SEVERITY_CONSEQUENCE[item.severity] }));
  return { ...document, items, sections: letterSections({ ...document, items }) };
}

/** The document as it was answered: without the findings that the client left out, with the contract as the answer made it. */
export function approvedOf(version: Pick<VersionRecord, 'document' | 'decision'>): ChangeOrderDocument {
  return documentOfAnswer(toDocument(version), version.decision && toDecision(version.decision));
}

/** A decision on a part is an approval of its own kind. */
export const answerOf = ({ kind, findingIds }: NonNullable<VersionRecord['decision']>) =>
  findingIds.length > 0 ? 'part-approved' : kind;

/** The version the client has or had before them, or null while it is a draft. */
export const currentVersion = (record: ChangeOrderRecord): VersionRecord | null =>
  record.versions.find((version) => version.version === record.sentVersion) ?? null;

/** What a draft would be sent with, and anything else was sent with. */
interface RowWords {
  wording: unknown;
  days: number;
  totalCents: number;
}

export function toRow(record: ChangeOrderRecord, { wording, days, totalCents }: RowWords): ChangeOrderRow {
  const { id, version, projectId, number, sentVersion, decidedAt, createdAt, findings, questions } = record;
  return {
    id,
    version,
    projectId,
    number,
    state: toWord(record.state),
    headline: (wording as Wording).headline.en,
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
  marks: DraftMark[];
  missingSpanish: MissingSpanish[];
  conflicts: string[];
  review: ContentReview | null;
  names: Map<string, string>;
  mails: Mail[];
  now: Date;
}

export function toChangeOrder(record: ChangeOrderRecord, views: Views): ChangeOrder {
  const { draft, blocks, marks, missingSpanish, conflicts, review, names, mails, now } = views;
  const { wording, days } = draft;
  return {
    ...toRow(record, { wording, days, totalCents: draft.price.totalCents }),
    wording,
    findingIds: memberIds(record),
    typed: keptDraftOf(record).typed.slice(),
    marks,
    spanish: keptDraftOf(record).spanish,
    missingSpanish,
    clientLocale: record.project.clientLocale === 'es' ? 'es' : 'en',
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
  const waiting = record.state === 'setAside' ? 'set-aside' : 'sent';
  return {
    version: version.version,
    sha256: version.sha256,
    sentAt: version.sentAt.toISOString(),
    sentBy: { id: version.sentById, name: names.get(version.sentById) ?? toDocument(version).sentBy },
    state: version.decision ? answerOf(version.decision) : isCurrent ? waiting : 'replaced',
    linkState: !link || link.revokedAt ? 'revoked' : link.expiresAt <= now ? 'expired' : 'live',
    linkExpiresAt: link?.expiresAt.toISOString() ?? null,
    decision: version.decision && toDecision(version.decision),
  };
}

export function toDecision(row: NonNullable<VersionRecord['decision']>): Decision {
  const { kind, findingIds, version, signerName, letterFor, reason, sha256, consentText, acknowledged } = row;
  return {
    ...{ kind, findingIds, version, signerName, letterFor, reason, sha256, consentText, acknowledged },
    locale: row.locale === 'es' ? 'es' : 'en',
    decidedAt: row.decidedAt.toISOString(),
    contract: row.contract as ContractEffect | null,
  };
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
