import type { Finding, FindingRow, Judgment, Photo } from '@underlath/contract';
import { type Locale, type Outcome, toAnswer } from '@underlath/rules';
import { findCheck } from '@underlath/rules/all-checks';
import type { FindingRowData, JudgmentRow } from './findings.repository.ts';

export function toFindingRow(row: FindingRowData): FindingRow {
  const { context: _context, createdById, createdByName, extent, seenAt, createdAt, ...rest } = row;
  return {
    ...rest,
    extent: extent as FindingRow['extent'],
    seenAt: seenAt.toISOString(),
    createdAt: createdAt.toISOString(),
    createdBy: { id: createdById, name: createdByName },
  };
}

export function toFinding(row: FindingRowData, photos: Photo[], judgments: JudgmentRow[], locale: Locale): Finding {
  return {
    ...toFindingRow(row),
    context: row.context as Finding['context'],
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
    inputs: inputs as Judgment['inputs'],
    context: context as Judgment['context'],
    answer: answerOf(outcome as unknown as Outcome, locale),
    judgedAt: judgedAt.toISOString(),
    judgedBy: { id: judgedById, name: judgedByName },
  };
}

/** Null when the rules have no such check any more, or read its inputs in another way: then nothing is put into the client's hands. */
export function clientWords(
  newest: Pick<JudgmentRow, 'checkId' | 'inputs' | 'outcome'> | undefined,
): Finding['client'] {
  const check = newest && findCheck(newest.checkId);
  const read = check?.read(newest?.inputs);
  if (!check || !read || read.issues.length > 0) return null;
  const { found, why, ifNot } = check.client;
  return { found: found(read.inputs, newest?.outcome as unknown as Outcome), why, ifNot };
}
