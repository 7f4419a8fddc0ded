import { opening } from '@underlath/contract';
import {
  ASSUMED_SCHEDULE,
  clip,
  type Existing,
  type FindingTakeOff,
  type Ground,
  type NailSchedule,
  onTicks,
  overlaps,
  type Rect,
  wholeGround,
} from '@underlath/rules';
import * as z from 'zod';
import { type Part, type PriceableFinding, takeOffFinding } from './finding-work.ts';

/** Opened around a defect for hands and tools, inches (common practice, no source). */
const reachIn = 12;

/** The sheet a finding is drawn on; null while its place has no sizes, and for a line of beams, which has no framing of its own. */
export function groundOf({ location }: PriceableFinding): Ground | null {
  const { kind, widthIn, heightIn, framingSpacingIn } = location;
  const openings = z.array(opening).parse(location.openings);
  if (kind !== 'wall' && kind !== 'floor' && kind !== 'roof') return null;
  return widthIn && heightIn ? { kind, widthIn, heightIn, framingSpacingIn, openings } : null;
}

/** The places of these findings that have sizes, by location id. */
export const groundsOf = (findings: readonly PriceableFinding[]): Map<string, Ground> =>
  new Map(
    findings.flatMap((finding) => {
      const ground = groundOf(finding);
      return ground ? [[finding.locationId, ground] as const] : [];
    }),
  );

/** What the base contract does already, by place. */
export const existingOf = (findings: readonly PriceableFinding[]): Map<string, Existing[]> =>
  new Map(findings.map(({ locationId, location }) => [locationId, location.existing as Existing[]]));

function scheduleOf({ location }: PriceableFinding): { schedule?: NailSchedule } {
  const { edgeNailSpacingIn, fieldNailSpacingIn } = location;
  if (edgeNailSpacingIn === null && fieldNailSpacingIn === null) return {};
  return {
    schedule: {
      edgeSpacingIn: edgeNailSpacingIn ?? ASSUMED_SCHEDULE.edgeSpacingIn,
      fieldSpacingIn: fieldNailSpacingIn ?? ASSUMED_SCHEDULE.fieldSpacingIn,
    },
  };
}

/** The work of a finding with its drawn extent, kept inside its place. */
export function drawnTakeOff(part: Part): FindingTakeOff {
  const { finding } = part;
  const ground = groundOf(finding);
  const extent = finding.extent as Rect | null;
  const drawn =
    ground && extent && overlaps(extent, wholeGround(ground)) ? [clip(onTicks(extent), wholeGround(ground))] : [];
  const lines = takeOffFinding(part);
  return { finding: finding.id, place: finding.locationId, lines, extents: drawn, reachIn, ...scheduleOf(finding) };
}
