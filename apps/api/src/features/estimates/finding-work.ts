import type { EstimateContent, RepairChoice } from '@underlath/contract';
import { type Outcome, type RepairFacts, type TakeOffLine, type Text, takeOff, text } from '@underlath/rules';
import { findCheck } from '@underlath/rules/all-checks';
import type { EstimateFinding } from './estimates.repository.ts';

/** What is kept in `finding.estimate`. */
export interface SavedEstimate extends EstimateContent {
  costBookVersion: number;
  /** Sum of its printed lines alone; null when the cost book lacked a rate. */
  linesCents: number | null;
}

export type PriceableFinding = Pick<
  EstimateFinding,
  'id' | 'number' | 'projectId' | 'checkId' | 'locationId' | 'location' | 'judgments' | 'estimate' | 'extent'
>;

const NOTHING: EstimateContent = { choices: [], manualLines: [], overrides: [], exclusions: [], alternates: [] };

/** What was saved, also before all of it was kept. */
export function savedOf({ estimate }: Pick<EstimateFinding, 'estimate'>): SavedEstimate | null {
  return estimate === null ? null : { ...NOTHING, ...(estimate as unknown as SavedEstimate) };
}

/** What a price is worked out from. */
export type PricedContent = Pick<EstimateContent, 'choices' | 'manualLines' | 'overrides'>;

/** A finding with what is priced for it. */
export interface Part {
  readonly finding: PriceableFinding;
  readonly content: PricedContent;
}

/** What was saved; before that, nothing. */
export const savedPart = (finding: PriceableFinding): Part => ({ finding, content: savedOf(finding) ?? NOTHING });

/** What was saved; before that, the repairs the check proposes. */
export const suggestedPart = (finding: PriceableFinding): Part => ({ finding, content: contentOf(finding) });

export const contentOf = (finding: PriceableFinding): EstimateContent =>
  savedOf(finding) ?? { ...NOTHING, choices: suggestChoices(finding) };

export const outcomeOf = (finding: Pick<EstimateFinding, 'judgments'>): Outcome | undefined =>
  finding.judgments[0]?.outcome as unknown as Outcome | undefined;

const engineer = 'engineer-letter';

/** The preferred repair of the newest judgment, and the engineer where the check asks for one. The others stay to be chosen. */
export function suggestChoices(finding: PriceableFinding): RepairChoice[] {
  const offered = outcomeOf(finding)?.repairs ?? [];
  const [preferred] = offered.filter((id) => id !== engineer);
  const ids = [...(preferred ? [preferred] : []), ...(offered.includes(engineer) ? [engineer] : [])];
  return ids.map((repairId) => ({ repairId, quantities: {} }));
}

/** Every repair that the check of this finding may propose, those of its newest judgment first. */
export function offeredRepairs(finding: PriceableFinding): string[] {
  const check = findCheck(finding.judgments[0]?.checkId ?? finding.checkId);
  const offered = new Set([...(outcomeOf(finding)?.repairs ?? []), ...(check?.repairs ?? [])]);
  // What an engineer changes on approved drawings goes back to the building department.
  return [...offered, ...(offered.has(engineer) ? ['permit-revision'] : [])];
}

/** A reason is typed in English alone: it is marked so where Spanish is read, and never stands inside a Spanish sentence. */
export const setByHand = (words: string): Text => text(words, '');

/** The work that the chosen repairs take. Work that two repairs of one finding share is counted once, with the larger amount. */
export function takeOffFinding({ finding, content: { choices, overrides } }: Part): TakeOffLine[] {
  const facts: RepairFacts = {
    inputs: (finding.judgments[0]?.inputs ?? {}) as RepairFacts['inputs'],
    outcome: outcomeOf(finding) ?? { values: {} },
  };
  const overLines = overrides.flatMap(({ operation, quantity, why }) =>
    quantity === undefined ? [] : [[operation, { value: quantity, why }] as const],
  );
  return choices.flatMap(({ repairId, quantities }) => {
    const set = { ...quantities, ...Object.fromEntries(overLines) };
    const values = Object.fromEntries(Object.entries(set).map(([operation, { value }]) => [operation, value]));
    return takeOff(repairId, facts, values).map((line) => {
      const why = set[line.operation]?.why;
      return why ? { ...line, how: setByHand(`Set by the estimator: ${why}`) } : line;
    });
  });
}
