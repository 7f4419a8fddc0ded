import { addCalendarDays, addWorkingDays } from '../kernel/dates.ts';
import { type Text, text } from '../kernel/index.ts';

/** How a contract wants to be told. */
export const NOTICE_METHODS = ['in-person', 'letter', 'certified-mail', 'e-mail', 'app'] as const;
export type NoticeMethod = (typeof NOTICE_METHODS)[number];

/** What the contract says of hidden conditions. Days are dates of the project's own place, `YYYY-MM-DD`. */
export interface NoticeTerms {
  /** Days after the condition was first seen; null where the contract only says promptly. */
  readonly days: number | null;
  readonly dayKind: 'calendar' | 'working';
  /** Methods the contract accepts; empty where it names none. */
  readonly methods: readonly NoticeMethod[];
  readonly holidays?: readonly string[];
}

export interface SentNotice {
  readonly on: string;
  readonly method: NoticeMethod;
}

export interface NoticeClock {
  /** Last day for the notice; null where no number of days is named: then at once. */
  readonly dueOn: string | null;
  /** Calendar days from today to the last day, below 0 when it is past; null with `dueOn`. */
  readonly daysLeft: number | null;
  readonly state: 'open' | 'overdue' | 'sent' | 'sent-late';
  /** The first notice by a method of the contract. */
  readonly sentOn: string | null;
  readonly cautions: readonly Text[];
}

const OTHER_METHOD = text(
  'A notice went out by a method the contract does not name; send it again by one that it names.',
  'Se envió un aviso por un medio que el contrato no nombra; envíelo otra vez por uno que sí nombre.',
);
const DISTURBED = text(
  'The place was disturbed before the notice. Contracts commonly want notice first.',
  'Se movió el lugar antes del aviso. Los contratos suelen pedir primero el aviso.',
);
const PROMPTLY = text(
  'The contract names no number of days: send the notice at once, before the place is disturbed.',
  'El contrato no nombra un número de días: envíe el aviso de inmediato, antes de mover el lugar.',
);
const EARLIER = text(
  'A notice is dated before the condition was first seen; check both dates.',
  'Un aviso tiene fecha anterior a cuando se vio la condición; revise ambas fechas.',
);

const DAY_MS = 86_400_000;
const daysBetween = (from: string, to: string): number => Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

/**
 * Where the notice of a hidden condition stands. The day after it was first seen is day 1, and the last day is still in
 * time. Only a notice by a method the contract names counts. It reads no law and says nothing of what a late notice costs.
 * @param firstSeenOn, today and all others `YYYY-MM-DD`
 * @throws RangeError for a date there is not, or days below 0 or not whole
 */
export function runNoticeClock(input: {
  readonly firstSeenOn: string;
  readonly terms: NoticeTerms;
  readonly sent: readonly SentNotice[];
  readonly today: string;
  readonly disturbedOn?: string;
}): NoticeClock {
  const { firstSeenOn, terms, sent, today, disturbedOn } = input;
  for (const date of [firstSeenOn, today, ...sent.map(({ on }) => on), ...(disturbedOn ? [disturbedOn] : [])])
    assertDay(date);
  const dueOn = dueOf(firstSeenOn, terms);
  const counted = sent.filter(({ method }) => terms.methods.length === 0 || terms.methods.includes(method));
  const sentOn = counted.map(({ on }) => on).sort()[0] ?? null;
  return {
    dueOn,
    daysLeft: dueOn === null ? null : daysBetween(today, dueOn),
    state: stateOf(dueOn, sentOn, today),
    sentOn,
    cautions: [
      ...(dueOn === null && sentOn === null ? [PROMPTLY] : []),
      ...(counted.length === 0 && sent.length > 0 ? [OTHER_METHOD] : []),
      ...(disturbedOn && (sentOn === null || disturbedOn < sentOn) ? [DISTURBED] : []),
      ...(sentOn !== null && sentOn < firstSeenOn ? [EARLIER] : []),
    ],
  };
}

function dueOf(firstSeenOn: string, { days, dayKind, holidays }: NoticeTerms): string | null {
  if (days === null) return null;
  if (!Number.isInteger(days) || days < 0)
    throw new RangeError(`Notice days came as ${days}; allowed is a whole number from 0`);
  return dayKind === 'working' ? addWorkingDays(firstSeenOn, days, holidays) : addCalendarDays(firstSeenOn, days);
}

function stateOf(dueOn: string | null, sentOn: string | null, today: string): NoticeClock['state'] {
  if (sentOn !== null) return dueOn !== null && sentOn > dueOn ? 'sent-late' : 'sent';
  return dueOn !== null && today > dueOn ? 'overdue' : 'open';
}

function assertDay(date: string): void {
  const time = Date.parse(`${date}T00:00:00Z`);
  if (Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== date)
    throw new RangeError(`"${date}" is no day; allowed is YYYY-MM-DD`);
}
