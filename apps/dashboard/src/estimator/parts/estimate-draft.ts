import type { Estimate, ManualLine, RepairChoice } from '@underlath/contract';

/** What is saved of an estimate: everything else is worked out by the server. */
export type EstimateDraft = { choices: KeptChoice[]; manualLines: ManualLine[] };
type KeptChoice = Estimate['choices'][number];
export type Replacement = { value: number; why: string };

/** What was saved; before that, the repairs the check proposes. */
export function draftOf(estimate: Estimate): EstimateDraft {
  return { choices: estimate.choices.map((choice) => ({ ...choice })), manualLines: [...estimate.manualLines] };
}

export function withRepair(draft: EstimateDraft, repairId: string, chosen: boolean): EstimateDraft {
  const others = draft.choices.filter((choice) => choice.repairId !== repairId);
  return { ...draft, choices: chosen ? [...others, { repairId, quantities: {} }] : others };
}

/** Sets the quantity of an operation in a repair, or with null gives it back to the measurements. */
export function withQuantity(
  draft: EstimateDraft,
  repairId: string,
  operation: string,
  replacement: Replacement | null,
): EstimateDraft {
  const choices = draft.choices.map((choice): RepairChoice & KeptChoice => {
    if (choice.repairId !== repairId) return choice;
    const { [operation]: _old, ...rest } = choice.quantities;
    return { ...choice, quantities: replacement ? { ...rest, [operation]: replacement } : rest };
  });
  return { ...draft, choices };
}
