import { useCallback, useEffect, useState } from 'react';

const steps = ['letter', 'review', 'ask', 'decline'] as const;
export type LetterStep = (typeof steps)[number];

const stepOf = (state: unknown): LetterStep => {
  const step = (state as { step?: unknown } | null)?.step;
  return steps.find((known) => known === step) ?? 'letter';
};

/** Each step is an entry of the browser's history, so that the phone's own Back goes back to the letter and not away. */
export function useStep(): { step: LetterStep; go: (step: LetterStep) => void; back: () => void } {
  const [step, setStep] = useState<LetterStep>(() => stepOf(history.state));
  useEffect(() => {
    const onPop = (event: PopStateEvent) => setStep(stepOf(event.state));
    window.addEventListener('popstate', onPop);
    return () => window.removeEventListener('popstate', onPop);
  }, []);
  const go = useCallback((next: LetterStep) => {
    history.pushState({ step: next }, '');
    setStep(next);
  }, []);
  // A step is always pushed on top of the letter, and a reload keeps both, so what lies behind a step is the letter.
  const back = useCallback(() => {
    if (stepOf(history.state) !== 'letter') history.back();
  }, []);
  return { step, go, back };
}
