import type {
  BodyOut,
  FieldProblem,
  KeptSegment,
  LoadPathAnswer,
  loadPathRoutes,
  StoredLoadPath,
} from '@underlath/contract';
import {
  evaluateLoadPath,
  type LineAbove,
  type LoadPath,
  LoadPathError,
  type Locale,
  momentsFromAbove,
  type Outcome,
  say,
  toLoadPathAnswer,
} from '@underlath/rules';
import { toJson } from '../../platform/database/json.ts';
import { ProblemError } from '../../platform/problem-error.ts';
import { toEnum, toWord } from '../../shared/enum-words.ts';
import { refusedInputs } from '../../shared/refused-inputs.ts';
import { readOutcome, readSegments } from '../../shared/stored/stored-columns.ts';
import { samplingOf } from './from-checks.ts';
import { type LinkFinding, pathNow } from './kept-load-path.ts';
import type { HangingFinding, LoadPathRow, PlaceRow } from './load-paths.repository.ts';

/** A load path as it is kept, without its id. */
export type KeptLoadPath = Omit<BodyOut<typeof loadPathRoutes.createLoadPath>, 'id'>;

/** What the worth of a kept load path is worked out from. */
export interface Around {
  readonly place: PlaceRow;
  readonly findings: ReadonlyMap<string, LinkFinding>;
  /** The line that stands on it, with those that stand on that one. */
  readonly above: LineAbove | undefined;
}

/** @throws ProblemError `invalid-input` when there is anything wrong */
export function refuseFields(errors: FieldProblem[]): void {
  if (errors.length > 0)
    throw new ProblemError('invalid-input', errors.map(({ detail }) => detail).join(' '), { errors });
}

/** @throws ProblemError `invalid-input` with a pointer for each thing that cannot be */
export function worthOf(path: LoadPath, locale: Locale): LoadPathAnswer {
  try {
    return toLoadPathAnswer(evaluateLoadPath(path), locale) as LoadPathAnswer;
  } catch (error) {
    if (!(error instanceof LoadPathError)) throw error;
    throw refusedInputs(error.issues, [], locale);
  }
}

export const outcomeOf = ({ judgments: [newest] }: HangingFinding): Outcome | undefined =>
  newest && readOutcome(newest.id, newest.outcome);

export const segmentsOf = (row: LoadPathRow): KeptSegment[] => readSegments(row.id, row.segments);

export function keptOf(row: LoadPathRow): KeptLoadPath & Pick<StoredLoadPath, 'lineAbove'> {
  const { name, storiesAbove, storyShare, shored, demandLb, capacitiesFrom, lineAboveId, floorDepthIn } = row;
  return {
    name,
    kind: toWord(row.kind),
    storiesAbove,
    storyShare,
    shored,
    demandLb,
    lineAbove: lineAboveId === null ? null : { loadPathId: lineAboveId, floorDepthIn: floorDepthIn ?? 0 },
    capacitiesFrom,
    segments: segmentsOf(row),
  };
}

export const toColumns = ({ kind, segments, lineAbove, ...kept }: KeptLoadPath) => ({
  ...kept,
  kind: toEnum(kind),
  lineAboveId: lineAbove?.loadPathId ?? null,
  floorDepthIn: lineAbove?.floorDepthIn ?? null,
  segments: toJson(segments),
});

/** What the load path leaves open, the place says. Where a line stands on it there is a story above, whatever the place says. */
export const loadPathOf = (kept: KeptLoadPath, place: PlaceRow) => {
  const { kind, storyShare, shored, demandLb, segments, lineAbove } = kept;
  const stories = kept.storiesAbove ?? place.storiesAbove;
  return {
    kind,
    storiesAbove: lineAbove ? Math.max(1, stories) : stories,
    storyShare: storyShare ?? undefined,
    shored,
    demandLb: demandLb ?? undefined,
    segments,
  };
};

/** The kept load path in the words of the rules, with its findings and what stands on it as they are now. */
export function nowOf(kept: KeptLoadPath, { place, findings, above }: Around, repaired: readonly string[] = []) {
  const path = loadPathOf(kept, place);
  const fromAbove = above && momentsFromAbove(path.segments, above);
  return { fromAbove, path: pathNow(path, { findings, repaired, momentsFtLb: fromAbove?.momentsFtLb ?? [] }) };
}

export function toStored(
  row: LoadPathRow,
  around: Around,
  locale: Locale,
  repaired: readonly string[] = [],
): StoredLoadPath {
  const kept = keptOf(row);
  const { path, fromAbove } = nowOf(kept, around, repaired);
  const answer = worthOf(path, locale);
  const { id, version, projectId, locationId, changedAt } = row;
  return {
    id,
    version,
    projectId,
    locationId,
    ...kept,
    repaired: [...repaired],
    answer,
    fromAbove:
      kept.lineAbove && fromAbove
        ? {
            loadPathId: kept.lineAbove.loadPathId,
            name: around.above?.name ?? '',
            momentsFtLb: [...fromAbove.momentsFtLb],
            words: fromAbove.words.map((words) => say(words, locale)),
          }
        : null,
    sampling: samplingOf(kept.segments, answer, locale),
    changedAt: changedAt.toISOString(),
  };
}
