import type { Problem } from '@underlath/contract';
import { type RefObject, useEffect, useRef } from 'react';
import { FailState } from '../../shared/ui/states.tsx';

/** The failing state of a form, brought into sight and focus when it appears, so that it isn't missed below the fold. */
export function FormFail({ problem, doing }: { problem: Problem | null; doing: string }) {
  const ref = useFocusOn(problem);
  return (
    <div ref={ref} tabIndex={-1} className="form-fail">
      {problem && <FailState problem={problem} doing={doing} kept />}
    </div>
  );
}

function useFocusOn(problem: Problem | null): RefObject<HTMLDivElement | null> {
  const ref = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (problem) ref.current?.focus();
  }, [problem]);
  return ref;
}
