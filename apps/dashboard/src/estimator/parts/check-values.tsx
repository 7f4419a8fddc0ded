import type { CheckAnswer } from '@underlath/contract';
import type { ReactNode } from 'react';
import { ShareBar } from '../../shared/drawing/scales.tsx';
import { Length } from '../../shared/measure/length.tsx';
import type { Fact } from '../../shared/ui/facts.tsx';

const suffixes: Record<string, string> = {
  lb: ' lb',
  plf: ' lb/ft',
  psi: ' psi',
  pct: '%',
  F: ' °F',
  sf: ' sq ft',
  in2: ' sq in',
  count: '',
  factor: '',
};

/** A value of an outcome as it is read: lengths as fractions, shares as percent, slopes as 1 in N. */
export function quantityWords(value: number | string | boolean, unit: string): ReactNode {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (unit === 'in') return <Length inches={value} denominator={32} />;
  if (unit === 'ft') return <Length inches={value * 12} denominator={16} />;
  if (unit === 'share') return `${Math.round(value * 100)}%`;
  if (unit === 'slope') return value === 0 ? 'level' : `1 in ${Math.round(1 / Math.abs(value))}`;
  const digits = Math.abs(value) >= 100 ? 0 : 2;
  return `${value.toLocaleString('en-US', { maximumFractionDigits: digits })}${suffixes[unit] ?? ` ${unit}`}`;
}

const unitEndings = /(In2|In|Ft|Lb|Psi|Plf|Pct|Sf|Share|Count|Cents|CentsPerUnit|CentsPerHour)$/;

/** What the checks call their values, in words. One that is new is shown by its own name, made readable. */
const knownNames: Record<string, string> = {
  nutMinIn: 'Nut, least thickness',
  engagedIn: 'Thread engaged',
  engagedShare: 'Share of the nut engaged',
  engagedThreads: 'Threads engaged',
  threadsBeyond: 'Threads past the nut',
  passesFlush: 'Meets flush',
  passesTwoPitches: 'Meets two pitches past',
  passesThreeThreads: 'Meets three threads past',
  passesHalfNut: 'Fills half the nut',
  passesThreeQuarterNut: 'Fills three quarters of the nut',
  cutShare: 'Share of the width cut',
  tieRequired: 'Tie needed over the cut',
  requiredNail: 'Nails of the tie',
  requiredNailDiameterIn: 'Nail diameter, at least',
  requiredNailsEachSide: 'Nails each side, at least',
  requiredPastOpeningIn: 'Tie past the cut, at least',
  requiredTieThicknessIn: 'Tie thickness, at least',
  requiredTieWidthIn: 'Tie width, at least',
  requiredIn: 'Bearing needed',
  requiredByCodeIn: 'Bearing the code asks',
  capacityLb: 'Can carry',
  bearingFactor: 'Bearing length factor',
  seatMarginIn: 'Seat left after movement',
  seatGapIn: 'Gap at the seat',
  endGapIn: 'Gap at the end',
  widthGapIn: 'Gap beside the member',
  tooTightForNails: 'Too tight to nail',
  headerShare: 'Nails in the header',
  headerToAdd: 'Nails to add, header',
  joistShare: 'Nails in the joist',
  joistToAdd: 'Nails to add, joist',
  goodNails: 'Good nails',
  goodShare: 'Share of good nails',
  nailsToAdd: 'Nails to add',
  overdrivenShare: 'Share driven too deep',
  differentialIn: 'Step between members',
  areaRatio: 'Section left',
  momentRatio: 'Bending strength left',
  stiffnessRatio: 'Stiffness left',
  bucklingRatio: 'Buckling strength left',
  geometricShare: 'Share by geometry',
  leftDepthIn: 'Depth left',
  leftWidthIn: 'Width left',
  exteriorSf: 'Outside area',
  largestRoomSf: 'Largest room area',
  treatAsOld: 'Treated as old',
};

/** `engagedShare` as words; the unit stands with the value. */
export function nameWords(name: string): string {
  const known = knownNames[name];
  if (known) return known;
  const bare = name.replace(unitEndings, '') || name;
  const words = bare
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll(/[._-]/g, ' ')
    .toLowerCase()
    .trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The ratio, what may still be counted, and the check's own values. */
export function valueFacts(answer: CheckAnswer): Fact[] {
  const facts: Fact[] = [];
  if (answer.remaining !== null) {
    const words = answer.remaining === 0 ? 'nothing' : `${Math.round(answer.remaining * 100)}%`;
    facts.push({
      name: 'May still be counted',
      value: (
        <>
          {words}
          <ShareBar share={answer.remaining} />
        </>
      ),
    });
  }
  for (const [name, { value, unit }] of Object.entries(answer.values)) {
    facts.push({ name: nameWords(name), value: quantityWords(value, unit) });
  }
  return facts;
}
