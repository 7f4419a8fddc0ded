import { allocate, type Text, text } from '../kernel/index.ts';
import { disjointSf, type Ground, overlaps, type Rect } from '../places/extents.ts';
import { type FindingTakeOff, has, type WorkLine } from './drawn.ts';
import { EXISTING, type Existing } from './existing.ts';
import type { WorkUnit } from './operations.data.ts';
import { layOutPanels, panelArea } from './panel-layout.ts';
import { named, type Order, precedence } from './precedence.ts';
import { criticalPath, type Step, spanHours, workingDays } from './schedule.ts';
import { SHEET_SF } from './sheets.ts';
import { byPhase } from './take-off.ts';
import { uniteTakeOffs } from './unite.ts';

export interface Hours {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** One place with its findings, ready to be planned. */
export interface ScopeJob {
  /** Null while the place has no sizes: then amounts are the templates'. */
  readonly ground: Ground | null;
  readonly existing: readonly Existing[];
  readonly takeOffs: readonly FindingTakeOff[];
  /** Findings whose own work waits for another's. */
  readonly order: Order;
  readonly declined: readonly string[];
  readonly crewSize: number;
  readonly hoursPerDay: number;
  /** Hours per unit of an operation; undefined when nobody knows. */
  readonly hoursOf: (operation: string) => Hours | undefined;
}

export interface ScopeOperation {
  readonly id: string;
  readonly operation: string;
  readonly title: Text;
  readonly quantity: { readonly value: number; readonly unit: WorkUnit };
  readonly how: Text;
  readonly assumed: boolean;
  readonly area?: readonly Rect[];
  readonly members?: readonly Text[];
  readonly for: readonly string[];
  readonly after: readonly string[];
  readonly holdPoint: boolean;
  readonly hours: Hours;
}

export interface Scope {
  readonly operations: readonly ScopeOperation[];
  readonly unions: {
    readonly stripSf: number;
    readonly panelSf: number;
    readonly panelSheets: number;
    readonly panelNails: number;
  };
  readonly naive: { readonly stripSf: number; readonly panelSf: number };
  readonly totalHours: Hours;
  /** Hours from the first step to the end of the last. */
  readonly spanHours: number;
  readonly workingDays: number;
  readonly criticalPath: readonly string[];
  readonly shares: readonly { readonly finding: string; readonly aloneHours: number; readonly shareHours: number }[];
  readonly conflicts: readonly { readonly finding: string; readonly why: Text }[];
  /** Left out because the base contract does it already. */
  readonly credits: readonly { readonly operation: string; readonly title: Text; readonly hours: number }[];
  /** Operations without hours; they count as none until the cost book has them. */
  readonly withoutHours: readonly string[];
}

const NO_HOURS: Hours = { low: 0, likely: 0, high: 0 };

const hundredths = (hours: number): number => Math.round(hours * 100) / 100;

function hoursFor(line: WorkLine, job: ScopeJob): Hours {
  const unit = job.hoursOf(line.operation) ?? NO_HOURS;
  const times = (each: number) => hundredths(line.quantity * each);
  return { low: times(unit.low), likely: times(unit.likely), high: times(unit.high) };
}

const groundsOf = (job: ScopeJob): Map<string, Ground> =>
  new Map(job.takeOffs.flatMap(({ place }) => (job.ground ? [[place, job.ground] as const] : [])));

/** Operations that the base contract does already where it does this work. */
function creditedBy(existing: readonly Existing[]): Set<string> {
  const credited = new Set<string>(existing.map((word) => EXISTING[word]));
  if (credited.has('shore-load')) credited.add('release-shoring');
  return credited;
}

const ALREADY_PAID = text(
  'The base contract pays for it. The stop stays.',
  'El contrato base lo paga. El alto se queda.',
);

/** A hold point is credited in money only: someone still looks before the work goes on. */
const stopsOf = (credits: readonly WorkLine[]): WorkLine[] =>
  credits.filter((line) => line.holdPoint).map((line) => ({ ...line, how: ALREADY_PAID, assumed: false }));

/**
 * Lines to be paid for, and those that the base contract does already at their place. Work shared by a visit is credited
 * only where every place of the visit has it already.
 */
export function splitExisting(lines: readonly WorkLine[], existingAt: ReadonlyMap<string, readonly Existing[]>) {
  const byPlace = new Map([...existingAt].map(([place, existing]) => [place, creditedBy(existing)]));
  const isCredited = ({ operation, place }: WorkLine): boolean =>
    place === undefined
      ? byPlace.size > 0 && [...byPlace.values()].every((credited) => credited.has(operation))
      : (byPlace.get(place)?.has(operation) ?? false);
  return { lines: lines.filter((line) => !isCredited(line)), credits: lines.filter(isCredited) };
}

const split = (lines: readonly WorkLine[], { takeOffs, existing }: ScopeJob) =>
  splitExisting(lines, new Map(takeOffs.map(({ place }) => [place, existing])));

const likely = (lines: readonly WorkLine[], job: ScopeJob): number =>
  lines.reduce((sum, line) => sum + hoursFor(line, job).likely, 0);

/** What each finding takes when it is the only one. */
type Alone = ReadonlyMap<string, readonly WorkLine[]>;

/** Each finding's hours alone and its share in the group: each step is split in proportion to what it would take alone. */
function sharesOf(job: ScopeJob, alone: Alone, lines: readonly WorkLine[]): Scope['shares'] {
  const ids = [...alone.keys()];
  const aloneHours = new Map(ids.map((id) => [id, hoursByOperation(split(alone.get(id) ?? [], job).lines, job)]));
  const weights = new Map(ids.map((id) => [id, 0]));
  for (const line of lines) {
    const parts = line.for.map((finding) => aloneHours.get(finding)?.get(line.operation) ?? 0);
    const whole = parts.reduce((sum, part) => sum + part, 0);
    const hours = hoursFor(line, job).likely;
    for (const [at, finding] of line.for.entries()) {
      const part = whole > 0 ? (parts[at] ?? 0) / whole : 1 / line.for.length;
      weights.set(finding, (weights.get(finding) ?? 0) + hours * part);
    }
  }
  const total = Math.round(likely(lines, job) * 100);
  const shares = allocate(
    ids.length > 0 ? total : 0,
    ids.map((id) => weights.get(id) ?? 0),
  );
  return ids.map((finding, at) => ({
    finding,
    aloneHours: hundredths([...(aloneHours.get(finding)?.values() ?? [])].reduce((sum, hours) => sum + hours, 0)),
    shareHours: (shares[at] ?? 0) / 100,
  }));
}

function hoursByOperation(lines: readonly WorkLine[], job: ScopeJob): Map<string, number> {
  const hours = new Map<string, number>();
  for (const line of lines) hours.set(line.operation, (hours.get(line.operation) ?? 0) + hoursFor(line, job).likely);
  return hours;
}

const COVERED = text(
  'It was declined, but approved work closes the wall over it.',
  'Se rechazó, pero el trabajo aprobado cierra la pared encima.',
);

/** Declined findings that the approved work would close in: with new panel or with finish. */
export function coveredOver(lines: readonly WorkLine[], declined: readonly FindingTakeOff[]): Scope['conflicts'] {
  const closing = lines.filter((line) => line.phase === 'panel' || line.operation === 'close-finish');
  return declined
    .filter((one) =>
      closing.some(
        (line) =>
          line.place === one.place && line.area?.some((area) => one.extents?.some((rect) => overlaps(area, rect))),
      ),
    )
    .map(({ finding }) => ({ finding, why: COVERED }));
}

const amountOf = (lines: readonly WorkLine[], operation: string): number =>
  lines.filter((line) => line.operation === operation).reduce((total, line) => total + line.quantity, 0);

/** Where the panel of a place is bad, as far as it is drawn. */
const badPanel = (takeOffs: readonly FindingTakeOff[]): Rect[] =>
  takeOffs.filter((one) => has(one, 'panel')).flatMap((one) => one.extents ?? []);

function areasOf(
  lines: readonly WorkLine[],
  { ground }: ScopeJob,
  approved: readonly FindingTakeOff[],
): Scope['naive'] {
  const defects = ground ? badPanel(approved) : [];
  return {
    stripSf: amountOf(lines, 'open-finish'),
    panelSf: ground && defects.length > 0 ? disjointSf(panelArea(defects, ground)) : amountOf(lines, 'panel-new'),
  };
}

function unionsOf(lines: readonly WorkLine[], job: ScopeJob, approved: readonly FindingTakeOff[]): Scope['unions'] {
  const defects = badPanel(approved);
  const panelNew = amountOf(lines, 'panel-new');
  return {
    ...areasOf(lines, job, approved),
    panelSheets:
      defects.length > 0 && job.ground ? layOutPanels(defects, job.ground).sheets : Math.ceil(panelNew / SHEET_SF),
    panelNails: amountOf(lines, 'panel-nails'),
  };
}

/**
 * One repair scope for a place: what is done, in what order, in how many hours, and what each finding brings. Throws
 * OrderLoopError when findings wait for each other.
 */
export function planScope(job: ScopeJob): Scope {
  const approved = job.takeOffs.filter((one) => !job.declined.includes(one.finding));
  const declined = job.takeOffs.filter((one) => job.declined.includes(one.finding));
  const grounds = groundsOf(job);
  const { lines, credits } = split(uniteTakeOffs(approved, grounds), job);
  const stops = stopsOf(credits);
  const steps = named([...lines, ...stops].sort(byPhase));
  const after = precedence(steps, job.order, approved);
  const operations = steps.map(
    ({ id, line }): ScopeOperation => ({
      id,
      operation: line.operation,
      title: line.title,
      quantity: { value: line.quantity, unit: line.unit },
      how: line.how,
      assumed: line.assumed,
      ...(line.area && { area: line.area }),
      ...(line.members && { members: line.members }),
      for: line.for,
      after: after.get(id) ?? [],
      holdPoint: line.holdPoint,
      hours: stops.includes(line) ? NO_HOURS : hoursFor(line, job),
    }),
  );
  const network = operations.map(({ id, hours, after: before }): Step => ({ id, hours: hours.likely, after: before }));
  const alone: Alone = new Map(approved.map((one) => [one.finding, uniteTakeOffs([one], grounds)] as const));
  const apart = approved.map((one) => areasOf(alone.get(one.finding) ?? [], job, [one]));
  const total = (part: keyof Hours) => hundredths(operations.reduce((sum, { hours }) => sum + hours[part], 0));
  return {
    operations,
    unions: unionsOf(lines, job, approved),
    naive: {
      stripSf: apart.reduce((sum, one) => sum + one.stripSf, 0),
      panelSf: apart.reduce((sum, one) => sum + one.panelSf, 0),
    },
    totalHours: { low: total('low'), likely: total('likely'), high: total('high') },
    spanHours: spanHours(network, job.crewSize),
    workingDays: workingDays(network, job.crewSize, job.hoursPerDay),
    criticalPath: criticalPath(network).ids,
    shares: sharesOf(job, alone, lines),
    conflicts: coveredOver(lines, declined),
    credits: credits.map((line) => ({
      operation: line.operation,
      title: line.title,
      hours: hoursFor(line, job).likely,
    })),
    withoutHours: [...new Set(lines.map((line) => line.operation))].filter((id) => !job.hoursOf(id)),
  };
}
