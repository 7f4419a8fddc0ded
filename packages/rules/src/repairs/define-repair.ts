import { decimal, type Outcome, type Text, text } from '../kernel/index.ts';

/** What a quantity is worked out from. */
export interface RepairFacts {
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly outcome: Pick<Outcome, 'values'>;
}

/** A quantity and, in words, where it came from. */
export interface Worked {
  readonly quantity: number;
  readonly how: Text;
  /** True when no measurement gives it and the estimator should set it. */
  readonly assumed: boolean;
}

export interface RepairStep {
  readonly operation: string;
  readonly work: (facts: RepairFacts) => Worked;
}

/** A way to put a finding right: what is done, in what amounts. Order comes from the phase of each operation. */
export interface Repair {
  readonly id: string;
  readonly title: Text;
  /** What is done, in plain words for the owner. */
  readonly what: Text;
  readonly steps: readonly RepairStep[];
}

/** A number at a dotted path of the inputs, or undefined. */
export function inputNumber(facts: RepairFacts, path: string): number | undefined {
  const value = path
    .split('.')
    .reduce<unknown>((here, key) => (here as Record<string, unknown> | undefined)?.[key], facts.inputs);
  return typeof value === 'number' ? value : undefined;
}

/** A number among the values of the outcome, or undefined. */
export function outcomeNumber(facts: RepairFacts, name: string): number | undefined {
  const value = facts.outcome.values[name]?.value;
  return typeof value === 'number' ? value : undefined;
}

/** A fixed amount that every repair of this kind needs. */
export const fixed = (operation: string, quantity: number, en: string, es: string): RepairStep => ({
  operation,
  work: () => ({ quantity, how: text(en, es), assumed: false }),
});

/** An amount no measurement gives; the estimator sets it. */
export const assumed = (operation: string, quantity: number, en: string, es: string): RepairStep => ({
  operation,
  work: () => assumption(quantity, en, es),
});

const assumption = (quantity: number, en: string, es: string): Worked => ({
  quantity,
  how: text(`${en} Assumed, set it.`, `${es} Supuesto, ajústelo.`),
  assumed: true,
});

/** An amount worked out from the measurements, or an assumption while they are missing. */
export function measured(
  operation: string,
  work: (facts: RepairFacts) => number | undefined,
  words: { readonly en: string; readonly es: string; readonly without: number },
): RepairStep {
  return {
    operation,
    work: (facts) => {
      const quantity = work(facts);
      return quantity === undefined
        ? assumption(words.without, `${words.en}: not measured.`, `${words.es}: no medido.`)
        : {
            quantity,
            how: text(`${words.en}: ${decimal(quantity)}.`, `${words.es}: ${decimal(quantity)}.`),
            assumed: false,
          };
    },
  };
}
