import { useEffect, useState } from 'react';

/** What was typed and not yet sent. The ticks are not kept over a reload: they are to be made on purpose each time. */
export type DecisionDraft = {
  name: string;
  reason: string;
  question: string;
  /** Findings that are not to be done. */
  leftOut: readonly string[];
};

const empty: DecisionDraft = { name: '', reason: '', question: '', leftOut: [] };
const keyFor = (letterId: string) => `underlath.letter.${letterId}`;

function read(key: string): DecisionDraft {
  try {
    const kept = JSON.parse(sessionStorage.getItem(key) ?? '{}') as Partial<DecisionDraft>;
    const word = (value: unknown) => (typeof value === 'string' ? value : '');
    const leftOut = Array.isArray(kept.leftOut) ? kept.leftOut.filter((id) => typeof id === 'string') : [];
    return { name: word(kept.name), reason: word(kept.reason), question: word(kept.question), leftOut };
  } catch {
    return empty; // Storage is shut off or holds something else: the page starts with empty lines.
  }
}

/** Keeps what is typed for this letter while the tab lives, over going back, a failed send and a reload. */
export function useDecisionDraft(letterId: string): {
  draft: DecisionDraft;
  change: (part: Partial<DecisionDraft>) => void;
  forget: () => void;
} {
  const key = keyFor(letterId);
  const [draft, setDraft] = useState(() => read(key));
  useEffect(() => {
    try {
      sessionStorage.setItem(key, JSON.stringify(draft));
    } catch {
      // Not kept over a reload when storage is shut off; it stays in the page.
    }
  }, [key, draft]);
  return { draft, change: (part) => setDraft((old) => ({ ...old, ...part })), forget: () => setDraft(empty) };
}
