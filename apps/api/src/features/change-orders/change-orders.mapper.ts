import type {
  ChangeOrder,
  ChangeOrderRow,
  ContentReview,
  DraftField,
  DraftMark,
  Mail,
  MissingSpanish,
  Question,
  SentVersion,
  Wording,
} from '@underlath/contract';
import type { DraftDocument, KeptDraft } from '@underlath/rules/offers';
import { toWord } from '../../shared/enum-words.ts';
import { readMarks, readSpanish, readWording } from '../../shared/stored/stored-columns.ts';
import type { ChangeOrderRecord, QuestionRow, VersionRecord } from './change-orders.repository.ts';
import { answerOf, toDecision } from './decisions.mapper.ts';
import { toDocument } from './sent-document.ts';

/** The findings in it, in their order. */
export const memberIds = ({ findings }: Pick<ChangeOrderRecord, 'findings'>): string[] =>
  findings.map(({ findingId }) => findingId);

export const keptDraftOf = ({ id, wording, days, typed, marks, spanish }: ChangeOrderRecord): KeptDraft => ({
  wording: readWording(id, wording),
  days,
  typed: typed as DraftField[],
  marks: readMarks(id, marks),
  spanish: readSpanish(id, spanish),
});

/** The version the client has or had before them, or null while it is a draft. */
export const currentVersion = (record: ChangeOrderRecord): VersionRecord | null =>
  record.versions.find((version) => version.version === record.sentVersion) ?? null;

/** What a draft would be sent with, and anything else was sent with. */
interface RowWords {
  wording: Wording;
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
    headline: wording.headline.en,
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

/** What was sent, or would be. */
export interface Shown {
  readonly draft: DraftDocument;
  readonly blocks: string[];
  readonly marks: DraftMark[];
  readonly missingSpanish: MissingSpanish[];
  readonly conflicts: string[];
  readonly review: ContentReview | null;
}

interface Views extends Shown {
  readonly names: Map<string, string>;
  readonly mails: Mail[];
  readonly now: Date;
}

export function toChangeOrder(record: ChangeOrderRecord, views: Views): ChangeOrder {
  const { draft, blocks, marks, missingSpanish, conflicts, review, names, mails, now } = views;
  const { wording, days } = draft;
  const kept = keptDraftOf(record);
  return {
    ...toRow(record, { wording, days, totalCents: draft.price.totalCents }),
    wording,
    findingIds: memberIds(record),
    typed: [...kept.typed],
    marks,
    spanish: kept.spanish,
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
