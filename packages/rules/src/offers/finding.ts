import { ENGINEER_REPAIR, type Outcome, type Text, text } from '../kernel/index.ts';
import type { Ground, Rect } from '../places/extents.ts';
import type { Existing } from '../repairs/existing.ts';
import type { EstimateContent, RepairChoice } from './document/estimate-content.ts';

/** Where work is done. */
export interface WorkPlace {
  readonly id: string;
  readonly name: string;
  /** The sheet its findings are drawn on; null while it has no sizes, and for a line of beams, which has no framing of its own. */
  readonly ground: Ground | null;
  readonly existing: readonly Existing[];
  /** The approved nailing of its panels, inches; null in what nobody typed. */
  readonly nailing: { readonly edgeSpacingIn: number | null; readonly fieldSpacingIn: number | null };
}

/** A finding as far as its work and its price go. */
export interface PriceableFinding {
  readonly id: string;
  readonly number: number;
  readonly place: WorkPlace;
  readonly extent: Rect | null;
  /** What was measured last, and what its check made of it; null before it was judged. */
  readonly judged: { readonly inputs: Readonly<Record<string, unknown>>; readonly outcome: Outcome } | null;
  /** Every repair that its check may propose. */
  readonly repairs: readonly string[];
  readonly saved: EstimateContent | null;
}

/** What a price is worked out from. */
export type PricedContent = Pick<EstimateContent, 'choices' | 'manualLines' | 'overrides'>;

/** A finding with the work that is priced for it. */
export interface FindingWork {
  readonly finding: PriceableFinding;
  readonly content: PricedContent;
}

const NOTHING: EstimateContent = { choices: [], manualLines: [], overrides: [], exclusions: [], alternates: [] };

/** What was saved; before that, nothing. */
export const savedWork = (finding: PriceableFinding): FindingWork => ({ finding, content: finding.saved ?? NOTHING });

/** What was saved; before that, the repairs that the check proposes. */
export const suggestedWork = (finding: PriceableFinding): FindingWork => ({ finding, content: contentOf(finding) });

export const contentOf = (finding: PriceableFinding): EstimateContent =>
  finding.saved ?? { ...NOTHING, choices: suggestChoices(finding) };

/** The preferred repair of the newest judgment, and the engineer where the check asks for one. The others stay to be chosen. */
export function suggestChoices({ judged }: PriceableFinding): RepairChoice[] {
  const offered = judged?.outcome.repairs ?? [];
  const [preferred] = offered.filter((id) => id !== ENGINEER_REPAIR);
  const ids = [...(preferred ? [preferred] : []), ...(offered.includes(ENGINEER_REPAIR) ? [ENGINEER_REPAIR] : [])];
  return ids.map((repairId) => ({ repairId, quantities: {} }));
}

/** Every repair that may be chosen for a finding, those of its newest judgment first. */
export function offeredRepairs({ judged, repairs }: PriceableFinding): string[] {
  const offered = new Set([...(judged?.outcome.repairs ?? []), ...repairs]);
  // What an engineer changes on approved drawings goes back to the building department.
  return [...offered, ...(offered.has(ENGINEER_REPAIR) ? ['permit-revision'] : [])];
}

/** A reason is typed in English alone: it is marked so where Spanish is read, and never stands inside a Spanish sentence. */
export const setByHand = (words: string): Text => text(words, '');
