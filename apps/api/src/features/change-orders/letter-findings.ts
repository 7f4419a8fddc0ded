import { findCheck } from '@underlath/rules/all-checks';
import type { LetterFinding } from '@underlath/rules/offers';
import { toWord } from '../../shared/enum-words.ts';
import { readOpenings } from '../../shared/stored/stored-columns.ts';
import { isWork } from '../../shared/work-stages.ts';
import { toPriceable } from '../estimates/priceable.ts';
import type { FindingRecord } from './change-orders.repository.ts';

/** Who judged a finding, or recorded it while nobody did. */
export const judgeOf = ({ judgments: [newest], createdById }: FindingRecord): string =>
  newest?.judgedById ?? createdById;

/** A stored finding with all that a letter tells of it. */
export function toLetterFinding(row: FindingRecord, checkedBy: string): LetterFinding {
  const { title, state, severity, checkId, judgments, photos, createdAt, seenAt } = row;
  const [newest] = judgments;
  return {
    ...toPriceable(row),
    title,
    state,
    severity: severity && toWord(severity),
    check: findCheck(newest?.checkId ?? checkId),
    ownTitle: findCheck(checkId)?.title,
    drawnPlace: toPlace(row),
    checkedBy,
    checkedAt: (newest?.judgedAt ?? createdAt).toISOString(),
    seenAt: seenAt.toISOString(),
    rulesVersion: newest?.rulesVersion ?? '',
    photos: photos.flatMap(({ photo }) => {
      const { id, sha256, viewSha256, caption, stage } = photo;
      return viewSha256 ? [{ id, sha256, viewSha256, caption, stage: toWord(stage) }] : [];
    }),
    waitingPhotos: photos.filter(({ photo }) => photo.derivativeState === 'waiting').length,
    hasBegun: state === 'repaired' || state === 'proven' || photos.some(({ photo }) => isWork(photo.stage)),
  };
}

function toPlace({ location }: FindingRecord): LetterFinding['drawnPlace'] {
  const { id, name, kind, widthIn, heightIn, memberDepthIn, framingSpacingIn, openings } = location;
  return {
    locationId: id,
    name,
    kind: toWord(kind),
    widthIn,
    // A beam is drawn as high as it is deep.
    heightIn: heightIn ?? (kind === 'beamLine' ? memberDepthIn : null),
    framingSpacingIn,
    openings: readOpenings(id, openings),
  };
}
