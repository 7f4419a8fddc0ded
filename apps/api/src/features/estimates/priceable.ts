import type { Existing, Ground } from '@underlath/rules';
import { findCheck } from '@underlath/rules/all-checks';
import type { PriceableFinding, WorkPlace } from '@underlath/rules/offers';
import { readEstimate, readExtent, readInputs, readOpenings, readOutcome } from '../../shared/stored/stored-columns.ts';
import type { EstimateFinding } from './estimates.repository.ts';

/** The columns that a price hangs on. */
export type PriceableRow = Pick<
  EstimateFinding,
  'id' | 'number' | 'checkId' | 'location' | 'judgments' | 'estimate' | 'extent'
>;

/** A stored finding in the words of the rules. */
export function toPriceable({
  id,
  number,
  checkId,
  location,
  judgments,
  estimate,
  extent,
}: PriceableRow): PriceableFinding {
  const [newest] = judgments;
  return {
    id,
    number,
    place: toPlace(location),
    extent: readExtent(id, extent),
    judged: newest
      ? { inputs: readInputs(newest.id, newest.inputs), outcome: readOutcome(newest.id, newest.outcome) }
      : null,
    repairs: findCheck(newest?.checkId ?? checkId)?.repairs ?? [],
    saved: readEstimate(id, estimate),
  };
}

function toPlace(location: PriceableRow['location']): WorkPlace {
  const { id, name, existing, edgeNailSpacingIn, fieldNailSpacingIn } = location;
  return {
    id,
    name,
    ground: groundOf(location),
    existing: existing as Existing[],
    nailing: { edgeSpacingIn: edgeNailSpacingIn, fieldSpacingIn: fieldNailSpacingIn },
  };
}

function groundOf({
  id,
  kind,
  widthIn,
  heightIn,
  framingSpacingIn,
  openings,
}: PriceableRow['location']): Ground | null {
  if (kind !== 'wall' && kind !== 'floor' && kind !== 'roof') return null;
  if (!widthIn || !heightIn) return null;
  return { kind, widthIn, heightIn, framingSpacingIn, openings: readOpenings(id, openings) };
}
