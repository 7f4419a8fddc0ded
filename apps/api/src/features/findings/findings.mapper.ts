import type { Finding, FindingRow, Judgment, Photo } from '@underlath/contract';
import { type Locale, type Outcome, toAnswer } from '@underlath/rules';
import { findCheck } from '@underlath/rules/all-checks';
import {
  readContext,
  readExtent,
  readInputs,
  readJudgedContext,
  readOutcome,
} from '../../shared/stored/stored-columns.ts';
import type { FindingRowData, JudgmentRow } from './findings.repository.ts';

export function toFindingRow(row: FindingRowData): FindingRow {
  const { context: _context, createdById, createdByName, extent, seenAt, createdAt, ...rest } = row;
  return {
    ...rest,
    extent: readExtent(row.id, extent),
    seenAt: seenAt.toISOString(),
    createdAt: createdAt.toISOString(),
    createdBy: { id: createdById, name: createdByName },
  };
}

export function toFinding(row: FindingRowData, photos: Photo[], judgments: JudgmentRow[], locale: Locale): Finding {
  return {
    ...toFindingRow(row),
    context: readContext(row.id, row.context),
    photos,
    judgments: judgments.map((judgment) => toJudgment(judgment, locale)),
    client: clientWords(judgments.at(-1)),
  };
}

function answerOf(outcome: Outcome, locale: Locale): Judgment['answer'] {
  const restsOn = [...(outcome.restsOn ?? [])];
  return { ...toAnswer(outcome, locale), restsOn } as Judgment['answer'];
}

function toJudgment(row: JudgmentRow, locale: Locale): Judgment {
  const { id, seq, checkId, rulesVersion, edition, inputs, context, outcome, judgedAt, judgedById, judgedByName } = row;
  return {
    id,
    seq,
    checkId,
    rulesVersion,
    edition,
    inputs: readInputs(id, inputs),
    context: readJudgedContext(id, context),
    answer: answerOf(readOutcome(id, outcome), locale),
    judgedAt: judgedAt.toISOString(),
    judgedBy: { id: judgedById, name: judgedByName },
  };
}

/** Null when the rules have no such check any more, or read its inputs in another way: then nothing is put into the client's hands. */
export function clientWords(
  newest: Pick<JudgmentRow, 'id' | 'checkId' | 'inputs' | 'outcome'> | undefined,
): Finding['client'] {
  if (!newest) return null;
  const check = findCheck(newest.checkId);
  const read = check?.read(newest.inputs);
  if (!check || !read || read.issues.length > 0) return null;
  const { found, why, ifNot } = check.client;
  return { found: found(read.inputs, readOutcome(newest.id, newest.outcome)), why, ifNot };
}
