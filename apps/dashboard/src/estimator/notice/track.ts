import type { NoticeClock } from '@underlath/contract';

export type TrackPoint = { kind: 'seen' | 'sent' | 'today' | 'due'; day: string; at: number };

const DAY_MS = 86_400_000;
/** Whole days from one date to another, `YYYY-MM-DD`; below 0 when the other is earlier. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS);

const order: readonly TrackPoint['kind'][] = ['seen', 'sent', 'today', 'due'];

/** The days of a notice in order, each with its share (0 to 1) of the way from the first to the last of them. */
export function trackOf({ firstSeenOn, sentOn, today, dueOn }: NoticeClock): TrackPoint[] {
  const days = [
    { kind: 'seen' as const, day: firstSeenOn },
    ...(sentOn ? [{ kind: 'sent' as const, day: sentOn }] : []),
    { kind: 'today' as const, day: today },
    ...(dueOn ? [{ kind: 'due' as const, day: dueOn }] : []),
  ].toSorted((a, b) => a.day.localeCompare(b.day) || order.indexOf(a.kind) - order.indexOf(b.kind));
  const first = days[0]?.day ?? firstSeenOn;
  const whole = daysBetween(first, days.at(-1)?.day ?? first);
  return days.map((point) => ({ ...point, at: whole === 0 ? 0 : daysBetween(first, point.day) / whole }));
}
