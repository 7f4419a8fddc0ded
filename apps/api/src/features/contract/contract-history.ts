import type { ContractTerms } from '@underlath/contract';
import type { ContractEvent, ContractInput } from '@underlath/rules';
import { dayOf } from '../../shared/days.ts';
import { atSite, type SiteClock, siteClock } from '../../shared/site-clock.ts';
import { readMilestones, readWording } from '../../shared/stored/stored-columns.ts';
import type { ContractProject, EntryRow, OrderRow, TermsRow } from './contract.repository.ts';

export type Terms = Omit<ContractTerms, 'version' | 'changedAt'>;

/** Of a contract whose terms nobody has written: what changes no figure. */
export const unwrittenTerms: Terms = {
  retainagePct: 0,
  netDecreaseReturnsOverheadAndProfit: false,
  dayKind: 'working',
  daysOff: [],
  noticeDays: null,
  noticeDayKind: 'calendar',
  noticeMethods: [],
  milestones: [],
};

/** A change order or an entry, as the rules read it. */
export interface Happening {
  readonly event: ContractEvent;
  /** When it was decided, sent or entered: the order of those of one day. */
  readonly at: Date;
  readonly what: string;
  readonly order: OrderRow | null;
  readonly entry: EntryRow | null;
}

export interface History {
  readonly project: ContractProject;
  readonly terms: Terms;
  readonly orders: readonly OrderRow[];
  /** In the order they happened, one for each event of the input. */
  readonly happenings: readonly Happening[];
  readonly input: ContractInput;
  /** Those taken back too. */
  readonly entries: readonly EntryRow[];
  readonly clock: SiteClock;
}

/** The letter's headline; of one approved in part it says so, for the headline speaks of the whole. */
export function headlineOf({ id, wording, state }: Pick<OrderRow, 'id' | 'wording' | 'state'>): string {
  const { en } = readWording(id, wording).headline;
  return state === 'partApproved' ? `${en} (approved in part)` : en;
}

export function toTerms(row: TermsRow | null): Terms {
  if (!row) return unwrittenTerms;
  return {
    retainagePct: row.retainagePct,
    netDecreaseReturnsOverheadAndProfit: row.netDecreaseReturns,
    dayKind: row.dayKind as Terms['dayKind'],
    daysOff: row.daysOff.map(dayOf),
    noticeDays: row.noticeDays,
    noticeDayKind: row.noticeDayKind as Terms['noticeDayKind'],
    noticeMethods: row.noticeMethods as Terms['noticeMethods'],
    milestones: readMilestones(row.projectId, row.milestones),
  };
}

/** Change orders that were with the client and entries that stand, in the order of their days. */
export function historyOf(project: ContractProject): History {
  const { changeOrders: orders, entries } = project;
  const terms = toTerms(project.terms);
  const clock = siteClock(project.timeZone, project.photos[0]?.deviceOffset ?? null);
  const happenings = [
    ...orders.map((order) => ofOrder(order, clock)),
    ...entries.filter(({ takenBackAt }) => takenBackAt === null).map(ofEntry),
  ].sort((a, b) => compare(a.event.on, b.event.on) || a.at.getTime() - b.at.getTime());
  const { dayKind, daysOff, retainagePct, netDecreaseReturnsOverheadAndProfit } = terms;
  const input: ContractInput = {
    originalCents: project.originalSumCents,
    originalDays: project.originalDays,
    ...(project.startOn && { start: dayOf(project.startOn) }),
    dayKind,
    ...(dayKind === 'working' && { holidays: [...daysOff] }),
    retainagePct,
    netDecreaseReturnsOverheadAndProfit,
    events: happenings.map(({ event }) => event),
  };
  return { project, terms, orders, happenings, input, entries, clock };
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const standings = { approved: 'approved', partApproved: 'approved', declined: 'declined', sent: 'pending' } as const;

/** A change order was answered, or sent, on the day that it was at the site. */
function ofOrder(order: OrderRow, clock: SiteClock): Happening {
  const { number, state, totalCents, days, decidedAt, createdAt, versions } = order;
  const at = decidedAt ?? versions[0]?.sentAt ?? createdAt;
  const standing = standings[state as keyof typeof standings];
  return {
    event: { kind: 'change', state: standing, cents: totalCents, days, on: atSite(at, clock).day },
    at,
    what: `${number}. ${headlineOf(order) || 'Change order'}`,
    order,
    entry: null,
  };
}

const ofEntry = (entry: EntryRow): Happening => ({
  event: eventOf(entry),
  at: entry.enteredAt,
  what: entry.name,
  order: null,
  entry,
});

export function eventOf({ kind, happenedOn, ...row }: EntryRow): ContractEvent {
  const on = dayOf(happenedOn);
  if (kind !== 'allowance') return { kind, cents: row.cents ?? 0, on };
  const { allowedCents, spentCents, overheadProfitPct } = row;
  return {
    kind,
    allowedCents: allowedCents ?? 0,
    spentCents: spentCents ?? 0,
    overheadProfitPct: overheadProfitPct ?? 0,
    on,
  };
}
