import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import './ui.css';

type Status = { words: ReactNode; at: number } | null;
/** A text stays as it was said; words drawn by a component follow the language of the page. */
type Say = (words: ReactNode) => void;

const StatusContext = createContext<Say>(() => {});

const shownMs = 6000;

/** One quiet line at the foot of the screen, read aloud when it changes. Errors don't go here: they stay where they arose. */
export function StatusProvider({ children }: { children: ReactNode }) {
  const [status, setStatus] = useState<Status>(null);
  const say = useCallback<Say>((words) => setStatus({ words, at: Date.now() }), []);
  useEffect(() => {
    if (!status) return;
    const timer = setTimeout(() => setStatus(null), shownMs);
    return () => clearTimeout(timer);
  }, [status]);
  return (
    <StatusContext value={useMemo(() => say, [say])}>
      {children}
      <div className="status no-print" role="status">
        {status && <p key={status.at}>{status.words}</p>}
      </div>
    </StatusContext>
  );
}

/** `const say = useStatus(); say('Saved')`. */
export function useStatus(): Say {
  return useContext(StatusContext);
}
