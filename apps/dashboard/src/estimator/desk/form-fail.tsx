import type { Problem } from '@underlath/contract';
import { useEffect, useRef, useState } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import { FailState, readablePointer } from '../../shared/ui/states.tsx';
import { nameWords } from './check-values.tsx';

const marked = '[aria-invalid="true"]';

/** The failing state of a form, brought into sight and focus when it appears, with a way to the first answer it marks. */
export function FormFail({ problem, doing }: { problem: Problem | null; doing: string }) {
  const ref = useRef<HTMLDivElement>(null);
  const [hasMark, setHasMark] = useState(false);
  const firstMark = () => ref.current?.closest('form, dialog, main')?.querySelector<HTMLElement>(marked);
  // biome-ignore lint/correctness/useExhaustiveDependencies: looks at the page once for each new problem
  useEffect(() => {
    if (!problem) return;
    setHasMark(Boolean(firstMark()));
    ref.current?.focus();
  }, [problem]);
  return (
    <div ref={ref} tabIndex={-1} className="form-fail">
      {problem && <FailState problem={withPlaces(problem)} doing={doing} kept />}
      {problem?.status === 412 && <p>What is there now was read again. Press once more to put yours in its place.</p>}
      {problem && hasMark && (
        <Button look="quiet" onClick={() => firstMark()?.focus()}>
          Go to the first marked answer
        </Button>
      )}
    </div>
  );
}

/**
 * Says where an answer stands in plain words: `/originalSumCents` is read as "original sum". Measurements name themselves,
 * and so does what is wrong with a file: "Row 3, …".
 */
function withPlaces(problem: Problem) {
  if (!problem.errors) return problem;
  const place = (pointer: string) =>
    readablePointer(
      pointer
        .split('/')
        .map((step) => (step === '' || /^\d+$/.test(step) ? step : nameWords(step).toLowerCase()))
        .join('/'),
    );
  return {
    ...problem,
    errors: problem.errors.map((error) =>
      error.words || /^row \d/.test(error.detail) ? error : { ...error, where: place(error.pointer) },
    ),
  };
}
