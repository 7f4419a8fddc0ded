import type { LedgerEntry } from '@underlath/contract';

export interface SumStep {
  readonly key: string;
  readonly on: string;
  readonly name: string;
  readonly fromCents: number;
  readonly toCents: number;
}

export interface SumPlot {
  /** First and last day that is drawn, `YYYY-MM-DD`. */
  readonly from: string;
  readonly to: string;
  readonly originalCents: number;
  readonly steps: readonly SumStep[];
  readonly nowCents: number;
  /** The sum if all that waits is approved; null when nothing waits. */
  readonly waitingCents: number | null;
  readonly lowCents: number;
  readonly highCents: number;
}

/** What a plot of the contract sum over its time holds; null for a contract without a day to begin at. */
export function sumPlotOf(
  entries: readonly LedgerEntry[],
  { today, finishOn, pendingCents }: { today: string; finishOn: string | null; pendingCents: number },
): SumPlot | null {
  const original = entries[0];
  const days = entries.flatMap(({ on }) => on ?? []);
  if (!original || days.length === 0) return null;
  const all = [...days, today, ...(finishOn ? [finishOn] : [])].sort();
  const steps = entries
    .filter(({ changeCents }) => changeCents !== 0)
    .map(({ on, what, changeOrderId, entryId, sumCents, changeCents }, at) => ({
      key: changeOrderId ?? entryId ?? String(at),
      on: on ?? today,
      name: changeOrderId ? `No. ${what.split('.')[0]}` : what,
      fromCents: sumCents - changeCents,
      toCents: sumCents,
    }));
  const nowCents = entries.at(-1)?.sumCents ?? original.sumCents;
  const waitingCents = pendingCents === 0 ? null : nowCents + pendingCents;
  const sums = [original.sumCents, ...steps.map(({ toCents }) => toCents), waitingCents ?? nowCents];
  return {
    from: all[0] ?? today,
    to: all.at(-1) ?? today,
    originalCents: original.sumCents,
    steps,
    nowCents,
    waitingCents,
    lowCents: Math.min(...sums),
    highCents: Math.max(...sums),
  };
}

/** Where a day lies between two, 0 to 1; in the middle when the two are one. */
export function dayShare(day: string, from: string, to: string): number {
  const [at, first, last] = [day, from, to].map((each) => Date.parse(`${each}T00:00:00Z`)) as [number, number, number];
  return last === first ? 0.5 : (at - first) / (last - first);
}

/**
 * Which labels have room, from the last to the first: the newest is always written, an older one only where it ends before
 * the next begins. Places and widths in pixels, places in order.
 */
export function labelsWithRoom(labels: readonly { readonly xPx: number; readonly widthPx: number }[]): boolean[] {
  let freeToPx = Number.POSITIVE_INFINITY;
  return labels
    .toReversed()
    .map(({ xPx, widthPx }) => {
      if (xPx + widthPx > freeToPx) return false;
      freeToPx = xPx;
      return true;
    })
    .reverse();
}
