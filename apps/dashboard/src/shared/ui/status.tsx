import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import './ui.css';

type Status = { text: string; at: number } | null;
type Say = (text: string) => void;

const StatusContext = createContext<Say>(() => {});

const shownMs = 6000;

/** One quiet line at the foot of the screen, read aloud when it changes. Errors don't go here: they stay where they arose. */
export function StatusProvider({ children }: { children: ReactNode }) {
  const [status, setStatus] = useState<Status>(null);
  const say = useCallback<Say>((text) => setStatus({ text, at: Date.now() }), []);
  useEffect(() => {
    if (!status) return;
    const timer = setTimeout(() => setStatus(null), shownMs);
    return () => clearTimeout(timer);
  }, [status]);
  return (
    <StatusContext value={useMemo(() => say, [say])}>
      {children}
      <div className="status no-print" role="status">
        {status && <p key={status.at}>{status.text}</p>}
      </div>
    </StatusContext>
  );
}

/** `const say = useStatus(); say('Saved')`. */
export function useStatus(): Say {
  return useContext(StatusContext);
}
