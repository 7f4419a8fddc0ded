import type { EstimateContent, FieldProblem, RepairChoice } from '@underlath/contract';
import { findRepair } from '@underlath/rules';
import { ProblemError } from '../../platform/problem-error.ts';

type Work = Pick<EstimateContent, 'choices' | 'overrides'>;

/** @throws ProblemError `invalid-input` for a repair that is unknown or named twice, or work that no chosen repair has */
export function assertContent(content: EstimateContent): void {
  const errors = [
    ...workErrors(content, ''),
    ...content.alternates.flatMap((alternate, at) => workErrors(alternate, `/alternates/${at}`)),
  ];
  if (errors.length > 0)
    throw new ProblemError('invalid-input', errors.map(({ detail }) => detail).join('; '), { errors });
}

const workErrors = ({ choices, overrides }: Work, at: string): FieldProblem[] => [
  ...choiceErrors(choices, `${at}/choices`),
  ...overrideErrors(overrides, choices, `${at}/overrides`),
];

const operationsOf = (repairId: string): string[] =>
  findRepair(repairId)?.steps.map(({ operation }) => operation) ?? [];

function choiceErrors(choices: readonly RepairChoice[], at: string): FieldProblem[] {
  return choices.flatMap(({ repairId, quantities }, order): FieldProblem[] => {
    const pointer = `${at}/${order}`;
    if (!findRepair(repairId)) return [{ pointer: `${pointer}/repairId`, detail: `there is no repair "${repairId}"` }];
    if (choices.findIndex((choice) => choice.repairId === repairId) < order)
      return [{ pointer: `${pointer}/repairId`, detail: `"${repairId}" is chosen twice` }];
    const operations = operationsOf(repairId);
    return Object.keys(quantities)
      .filter((operation) => !operations.includes(operation))
      .map((operation) => ({
        pointer: `${pointer}/quantities/${operation}`,
        detail: `"${repairId}" has no work called "${operation}"; it has ${operations.join(', ')}`,
      }));
  });
}

function overrideErrors(overrides: Work['overrides'], choices: Work['choices'], at: string): FieldProblem[] {
  const operations = [...new Set(choices.flatMap(({ repairId }) => operationsOf(repairId)))];
  return overrides.flatMap(({ operation }, order): FieldProblem[] => {
    const pointer = `${at}/${order}/operation`;
    if (overrides.findIndex((one) => one.operation === operation) < order)
      return [{ pointer, detail: `"${operation}" is set by hand twice; allowed is once` }];
    if (operations.includes(operation)) return [];
    const allowed = operations.length > 0 ? operations.join(', ') : 'nothing, as no repair is chosen';
    return [{ pointer, detail: `no chosen repair has work called "${operation}"; allowed is ${allowed}` }];
  });
}
