import type { Text } from '../kernel/index.ts';
import { text } from '../kernel/index.ts';
import type { RepairFacts } from './define-repair.ts';
import { OPERATIONS, type Operation, PHASES, type Phase, type WorkUnit } from './operations.data.ts';
import { repairs } from './registry.ts';

/** No repair template has this id. */
export class UnknownRepairError extends Error {
  override readonly name = 'UnknownRepairError';
  readonly repairId: string;
  constructor(repairId: string) {
    super(`There is no repair "${repairId}"; there are ${repairs.map((repair) => repair.id).join(', ')}.`);
    this.repairId = repairId;
  }
}

/** One piece of work with its amount and where the amount came from. */
export interface TakeOffLine {
  readonly operation: string;
  readonly title: Text;
  readonly phase: Phase;
  readonly quantity: number;
  readonly unit: WorkUnit;
  readonly how: Text;
  /** True when the amount is assumed and the estimator should set it. */
  readonly assumed: boolean;
  /** True when the estimator typed the amount; then no drawing changes it. */
  readonly set?: true;
  readonly holdPoint: boolean;
  readonly sharedPer?: 'place' | 'visit';
}

const operationById = new Map(OPERATIONS.map((operation) => [operation.id, operation]));

/** The operation with this id, or undefined. */
export const findOperation = (id: string): Operation | undefined => operationById.get(id);

/** The repair template with this id, or undefined. */
export const findRepair = (id: string) => repairs.find((repair) => repair.id === id);

/** Working order. */
export const byPhase = (a: Pick<TakeOffLine, 'phase'>, b: Pick<TakeOffLine, 'phase'>): number =>
  PHASES.indexOf(a.phase) - PHASES.indexOf(b.phase);

const SET_BY_ESTIMATOR = text('Set by the estimator.', 'Fijado por el estimador.');

/**
 * What a repair takes, in the order it is done. `quantities` sets amounts by operation id in place of the worked ones;
 * operations whose amount is 0 are left out. Throws UnknownRepairError.
 */
export function takeOff(
  repairId: string,
  facts: RepairFacts,
  quantities: Readonly<Record<string, number>> = {},
): TakeOffLine[] {
  const repair = findRepair(repairId);
  if (!repair) throw new UnknownRepairError(repairId);
  return repair.steps
    .map(({ operation: id, work }): TakeOffLine => {
      const operation = findOperation(id);
      if (!operation) throw new RangeError(`Repair ${repairId} names an operation that is not there: ${id}`);
      const set = quantities[id];
      const worked =
        set === undefined ? work(facts) : { quantity: set, how: SET_BY_ESTIMATOR, assumed: false, set: true as const };
      const { title, phase, unit, sharedPer, holdPoint } = operation;
      return {
        operation: id,
        title,
        phase,
        unit,
        ...worked,
        holdPoint: holdPoint === true,
        ...(sharedPer && { sharedPer }),
      };
    })
    .filter((line) => line.quantity > 0)
    .sort(byPhase);
}
