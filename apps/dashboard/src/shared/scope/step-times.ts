import type { ScopeStep } from '@underlath/contract';

/** Two people find room at one opening; the server's days are counted the same way. */
const PEOPLE_AT_ONE_STEP = 2;

export interface StepTime {
  id: string;
  /** Hours from the start of the work. */
  from: number;
  to: number;
}

/** Steps that wait for this one, directly or through others, for steps given in their order. */
export function waitingFor(steps: readonly ScopeStep[], id: string): string[] {
  const waiting = new Set([id]);
  for (const step of steps) if (step.after.some((before) => waiting.has(before))) waiting.add(step.id);
  return [...waiting].slice(1);
}

/** When each step can be done at the earliest, once all it waits for is done, for steps given in their order. */
export function stepTimes(steps: readonly ScopeStep[], crewSize: number): StepTime[] {
  const ends = new Map<string, number>();
  return steps.map(({ id, after, hours }) => {
    const from = Math.max(0, ...after.map((before) => ends.get(before) ?? 0));
    const to = from + hours.likely / Math.min(crewSize, PEOPLE_AT_ONE_STEP);
    ends.set(id, to);
    return { id, from, to };
  });
}
