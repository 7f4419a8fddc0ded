import { useCallback, useEffect, useState } from 'react';
import * as z from 'zod';

/** A draft and the version it was typed on, as this browser keeps them. */
type Kept<D> = { version: number; draft: D };

/** Where a draft is kept, and how it is read back. */
type Keeping<D> = { key: string; schema: z.ZodType<D> };

/** An unsaved draft of this browser; one that cannot be read is none. */
function keptDraft<D>({ key, schema }: Keeping<D>): Kept<D> | null {
  try {
    const kept = z.object({ version: z.number(), draft: schema });
    return kept.parse(JSON.parse(localStorage.getItem(key) ?? 'null'));
  } catch {
    return null;
  }
}

function dropDraft(key: string): void {
  try {
    localStorage.removeItem(key);
  } catch {
    // Without storage nothing was kept.
  }
}

/** Answers whether it could be kept: storage may be full or forbidden. */
function keepDraft<D>(key: string, value: Kept<D>): boolean {
  try {
    localStorage.setItem(key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

type History<D> = { past: readonly D[]; now: D; future: readonly D[] };

/** Steps that can be undone. */
const mostSteps = 200;

/** A draft with undo and redo that stays in this browser until it is saved or left. */
export function useKeptDraft<D>(keeping: Keeping<D>, version: number, saved: () => D) {
  const { key } = keeping;
  const [before] = useState(() => keptDraft(keeping));
  const [history, setHistory] = useState<History<D>>(() => ({ past: [], now: before?.draft ?? saved(), future: [] }));
  const [base, setBase] = useState(before?.version ?? version);
  const [touched, setTouched] = useState(before !== null);
  const [isKept, setIsKept] = useState(true);
  const { now } = history;
  useEffect(() => {
    if (touched) setIsKept(keepDraft(key, { version: base, draft: now }));
  }, [key, base, now, touched]);
  const change = useCallback((make: (draft: D) => D) => {
    setTouched(true);
    setHistory(({ past, now: old }) => ({ past: [...past, old].slice(-mostSteps), now: make(old), future: [] }));
  }, []);
  const undo = useCallback(
    () =>
      setHistory((each) => {
        const last = each.past.at(-1);
        return last === undefined
          ? each
          : { past: each.past.slice(0, -1), now: last, future: [each.now, ...each.future] };
      }),
    [],
  );
  const redo = useCallback(
    () =>
      setHistory((each) => {
        const [next, ...future] = each.future;
        return next === undefined ? each : { past: [...each.past, each.now], now: next, future };
      }),
    [],
  );
  /** Starts anew from what is saved, and forgets what was typed. */
  const startFrom = useCallback(
    (draft: D, newBase: number) => {
      dropDraft(key);
      setTouched(false);
      setBase(newBase);
      setHistory({ past: [], now: draft, future: [] });
    },
    [key],
  );
  return {
    draft: now,
    base,
    touched,
    isKept,
    change,
    startFrom,
    undo: history.past.length > 0 ? undo : undefined,
    redo: history.future.length > 0 ? redo : undefined,
  };
}
