/** One step of a network: how long it takes, in crew hours (0 or more), and what must be done before it. */
export interface Step {
  readonly id: string;
  readonly hours: number;
  readonly after: readonly string[];
}

/** Steps that wait for each other in a circle; nothing of them could ever begin. */
export class OrderLoopError extends Error {
  override readonly name = 'OrderLoopError';
  readonly ids: readonly string[];
  constructor(ids: readonly string[]) {
    super(`These wait for each other: ${ids.join(', ')}`);
    this.ids = ids;
  }
}

/** Two people find room at one opening; more hands shorten the work only where there is other work (common practice). */
export const PEOPLE_AT_ONE_STEP = 2;

/**
 * Steps in an order in which each comes after all it waits for, otherwise as they were given. A step named in `after`
 * that is not among them is ignored. Throws OrderLoopError with the steps that wait for each other.
 */
export function inOrder<T extends Pick<Step, 'id' | 'after'>>(steps: readonly T[]): T[] {
  const ids = new Set(steps.map((step) => step.id));
  const done = new Set<string>();
  const ordered: T[] = [];
  let waiting = [...steps];
  while (waiting.length > 0) {
    const next = waiting.find((step) => step.after.every((id) => done.has(id) || !ids.has(id)));
    if (!next) throw new OrderLoopError(loopOf(waiting));
    ordered.push(next);
    done.add(next.id);
    waiting = waiting.filter((step) => step !== next);
  }
  return ordered;
}

/** Follows what blocks what until a step comes twice: that much is the circle. Every step given waits for another of them. */
function loopOf(waiting: readonly Pick<Step, 'id' | 'after'>[]): string[] {
  const path: string[] = [];
  let step = waiting[0];
  while (step && !path.includes(step.id)) {
    path.push(step.id);
    const blockers: readonly string[] = step.after;
    step = waiting.find((one) => blockers.includes(one.id));
  }
  return step ? path.slice(path.indexOf(step.id)) : path;
}

/** The longest chain of steps by their hours, first to last; ties go to the earlier step. Throws OrderLoopError. */
export function criticalPath(steps: readonly Step[]): { readonly ids: readonly string[]; readonly hours: number } {
  const best = new Map<string, { hours: number; ids: string[] }>();
  let longest: { hours: number; ids: string[] } = { hours: 0, ids: [] };
  for (const step of inOrder(steps)) {
    let before: { hours: number; ids: string[] } = { hours: 0, ids: [] };
    for (const id of step.after) {
      const chain = best.get(id);
      if (chain && (chain.hours > before.hours || before.ids.length === 0)) before = chain;
    }
    const chain = { hours: before.hours + step.hours, ids: [...before.ids, step.id] };
    best.set(step.id, chain);
    if (chain.hours > longest.hours || longest.ids.length === 0) longest = chain;
  }
  return longest;
}

/** What rounding of hundredths of an hour may add up to and still not begin another day. */
const DAY_SLACK = 1e-9;

/**
 * Whole working days: the critical path with at most two people at one step, or all the work shared by the crew,
 * whichever is longer. It is the least it can take: waiting for inspectors, engineers and drying comes on top.
 */
export const workingDays = (steps: readonly Step[], crewSize: number, hoursPerDay: number): number =>
  daysOf(spanHours(steps, crewSize), hoursPerDay);

/** Hours from the first step to the end of the last, with a crew of 1 or more. */
export function spanHours(steps: readonly Step[], crewSize: number): number {
  const pathHours = criticalPath(steps).hours / Math.min(crewSize, PEOPLE_AT_ONE_STEP);
  const crewHours = steps.reduce((sum, step) => sum + step.hours, 0) / crewSize;
  return Math.max(pathHours, crewHours);
}

/** Whole days that so many hours fill; one begun is one. */
export const daysOf = (hours: number, hoursPerDay: number): number =>
  Math.max(0, Math.ceil(hours / hoursPerDay - DAY_SLACK));
