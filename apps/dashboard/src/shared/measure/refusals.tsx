import { createContext, type ReactNode, useCallback, useContext, useEffect, useId, useState } from 'react';

type Report = (id: string, isRefused: boolean) => void;

const RefusalContext = createContext<Report>(() => {});

/** Tells the form around a box whether what stands in it is refused; nothing of it reaches the inputs. */
export function useReportRefusal(isRefused: boolean): void {
  const id = useId();
  const report = useContext(RefusalContext);
  useEffect(() => {
    report(id, isRefused);
    return () => report(id, false);
  }, [report, id, isRefused]);
}

/** Whether any box of a form holds what is refused, and the frame in which they tell it. */
export function useRefusals(): { isRefused: boolean; watch: (form: ReactNode) => ReactNode } {
  const [refused, setRefused] = useState<ReadonlySet<string>>(new Set());
  const report = useCallback<Report>((id, isRefused) => {
    setRefused((before) => {
      if (before.has(id) === isRefused) return before;
      const after = new Set(before);
      if (isRefused) after.add(id);
      else after.delete(id);
      return after;
    });
  }, []);
  return {
    isRefused: refused.size > 0,
    watch: (form) => <RefusalContext.Provider value={report}>{form}</RefusalContext.Provider>,
  };
}
