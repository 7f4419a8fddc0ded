import { findRepair } from '../repairs/take-off.ts';
import type { EstimateContent, RepairChoice } from './document/estimate-content.ts';

type Work = Pick<EstimateContent, 'choices' | 'overrides'>;

/** A part of what was given that cannot be taken, by its JSON Pointer (RFC 6901), and why. */
export interface ContentFault {
  readonly pointer: string;
  readonly detail: string;
}

/** Repairs that are unknown or named twice, and work that no chosen repair has. */
export const contentFaults = (content: EstimateContent): ContentFault[] => [
  ...workFaults(content, ''),
  ...content.alternates.flatMap((alternate, at) => workFaults(alternate, `/alternates/${at}`)),
];

const workFaults = ({ choices, overrides }: Work, at: string): ContentFault[] => [
  ...choiceFaults(choices, `${at}/choices`),
  ...overrideFaults(overrides, choices, `${at}/overrides`),
];

const operationsOf = (repairId: string): string[] =>
  findRepair(repairId)?.steps.map(({ operation }) => operation) ?? [];

function choiceFaults(choices: readonly RepairChoice[], at: string): ContentFault[] {
  return choices.flatMap(({ repairId, quantities }, order): ContentFault[] => {
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

function overrideFaults(overrides: Work['overrides'], choices: Work['choices'], at: string): ContentFault[] {
  const operations = [...new Set(choices.flatMap(({ repairId }) => operationsOf(repairId)))];
  return overrides.flatMap(({ operation }, order): ContentFault[] => {
    const pointer = `${at}/${order}/operation`;
    if (overrides.findIndex((one) => one.operation === operation) < order)
      return [{ pointer, detail: `"${operation}" is set by hand twice; allowed is once` }];
    if (operations.includes(operation)) return [];
    const allowed = operations.length > 0 ? operations.join(', ') : 'nothing, as no repair is chosen';
    return [{ pointer, detail: `no chosen repair has work called "${operation}"; allowed is ${allowed}` }];
  });
}
