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
  const at = new Map(steps.map((step, order) => [step.id, order]));
  const behind = steps.map((): number[] => []);
  const left = steps.map(() => 0);
  for (const [order, { after }] of steps.entries())
    for (const id of new Set(after)) {
      const before = at.get(id);
      if (before === undefined) continue;
      behind[before]?.push(order);
      left[order] = (left[order] ?? 0) + 1;
    }
  const ordered: T[] = [];
  const done = new Set<number>();
  for (let order = left.indexOf(0); order >= 0; order = left.indexOf(0)) {
    left[order] = -1;
    done.add(order);
    ordered.push(steps[order] as T);
    for (const next of behind[order] ?? []) left[next] = (left[next] ?? 0) - 1;
  }
  if (ordered.length < steps.length) throw new OrderLoopError(loopOf(steps.filter((_, order) => !done.has(order))));
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

/** A step with the longest chain of those before it. */
interface Chain {
  readonly id: string;
  readonly hours: number;
  readonly before: Chain | undefined;
}

/** The longest chain of steps by their hours, first to last; ties go to the earlier step. Throws OrderLoopError. */
export function criticalPath(steps: readonly Step[]): { readonly ids: readonly string[]; readonly hours: number } {
  const chains = new Map<string, Chain>();
  let longest: Chain | undefined;
  for (const step of inOrder(steps)) {
    let before: Chain | undefined;
    for (const id of step.after) {
      const chain = chains.get(id);
      if (chain && (!before || chain.hours > before.hours)) before = chain;
    }
    const chain: Chain = { id: step.id, hours: (before?.hours ?? 0) + step.hours, before };
    chains.set(step.id, chain);
    if (!longest || chain.hours > longest.hours) longest = chain;
  }
  const ids: string[] = [];
  for (let chain = longest; chain; chain = chain.before) ids.push(chain.id);
  return { ids: ids.reverse(), hours: longest?.hours ?? 0 };
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
