import { useCallback, useEffect, useState } from 'react';
import * as z from 'zod';
import type { BookDraft } from './book-draft.ts';

const row = z.record(z.string(), z.string()).and(z.object({ key: z.string() }));
const kept = z.object({
  /** The version it was typed against. */
  version: z.number(),
  draft: z.object({
    own: z.boolean(),
    notice: z.object({ en: z.string(), es: z.string() }),
    trades: z.array(row),
    parts: z.array(row),
    items: z.array(row),
    fees: z.array(row),
    overhead: z.string(),
    profit: z.string(),
    stacking: z.enum(['stacked', 'added']),
  }),
});
export type Kept = { version: number; draft: BookDraft };

const keyOf = (companyId: string) => `underlath.cost-book.${companyId}`;

/** An unsaved draft of this browser; one that cannot be read is none. */
export function keptDraft(companyId: string): Kept | null {
  try {
    return kept.parse(JSON.parse(localStorage.getItem(keyOf(companyId)) ?? 'null'));
  } catch {
    return null;
  }
}

export function dropDraft(companyId: string): void {
  try {
    localStorage.removeItem(keyOf(companyId));
  } catch {
    // Without storage nothing was kept.
  }
}

/** Answers whether it could be kept: storage may be full or forbidden. */
function keepDraft(companyId: string, value: Kept): boolean {
  try {
    localStorage.setItem(keyOf(companyId), JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

type History = { past: readonly BookDraft[]; now: BookDraft; future: readonly BookDraft[] };

/** Steps that can be undone. */
const mostSteps = 200;

/** A draft with undo and redo that stays in this browser until it is saved or left. */
export function useBookDraft(companyId: string, version: number, saved: () => BookDraft) {
  const [before] = useState(() => keptDraft(companyId));
  const [history, setHistory] = useState<History>(() => ({ past: [], now: before?.draft ?? saved(), future: [] }));
  const [base, setBase] = useState(before?.version ?? version);
  const [touched, setTouched] = useState(before !== null);
  const [isKept, setIsKept] = useState(true);
  const { now } = history;
  useEffect(() => {
    if (touched) setIsKept(keepDraft(companyId, { version: base, draft: now }));
  }, [companyId, base, now, touched]);
  const change = useCallback((make: (draft: BookDraft) => BookDraft) => {
    setTouched(true);
    setHistory(({ past, now: old }) => ({ past: [...past, old].slice(-mostSteps), now: make(old), future: [] }));
  }, []);
  const undo = useCallback(
    () =>
      setHistory((each) => {
        const last = each.past.at(-1);
        return last ? { past: each.past.slice(0, -1), now: last, future: [each.now, ...each.future] } : each;
      }),
    [],
  );
  const redo = useCallback(
    () =>
      setHistory((each) => {
        const [next, ...future] = each.future;
        return next ? { past: [...each.past, each.now], now: next, future } : each;
      }),
    [],
  );
  /** Starts anew from what is saved, and forgets what was typed. */
  const startFrom = useCallback(
    (draft: BookDraft, newBase: number) => {
      dropDraft(companyId);
      setTouched(false);
      setBase(newBase);
      setHistory({ past: [], now: draft, future: [] });
    },
    [companyId],
  );
  return {
    draft: now,
    base,
    touched,
    isKept,
    wasKept: before !== null,
    change,
    startFrom,
    undo: history.past.length > 0 ? undo : undefined,
    redo: history.future.length > 0 ? redo : undefined,
  };
}
