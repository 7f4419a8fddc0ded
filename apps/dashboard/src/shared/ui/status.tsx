import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import './ui.css';

type Status = { words: ReactNode; at: number } | null;
/** A text stays as it was announced; words drawn by a component follow the language of the page. */
type Announce = (words: ReactNode) => void;

const StatusContext = createContext<Announce>(() => {});

const shownMs = 6000;

/** One quiet line at the foot of the screen, read aloud when it changes. Errors don't go here: they stay where they arose. */
export function StatusProvider({ children }: { children: ReactNode }) {
  const [status, setStatus] = useState<Status>(null);
  const announce = useCallback<Announce>((words) => setStatus({ words, at: Date.now() }), []);
  useEffect(() => {
    if (!status) return;
    const timer = setTimeout(() => setStatus(null), shownMs);
    return () => clearTimeout(timer);
  }, [status]);
  return (
    <StatusContext value={useMemo(() => announce, [announce])}>
      {children}
      <div className="status no-print" role="status">
        {status && <p key={status.at}>{status.words}</p>}
      </div>
    </StatusContext>
  );
}

/** `const announce = useAnnounce(); announce('Saved')`. */
export function useAnnounce(): Announce {
  return useContext(StatusContext);
}
