import { useCallback, useEffect, useState } from 'react';

const steps = ['letter', 'review', 'ask', 'decline'] as const;
export type Step = (typeof steps)[number];

const stepOf = (state: unknown): Step => {
  const step = (state as { step?: unknown } | null)?.step;
  return steps.find((known) => known === step) ?? 'letter';
};

/** Each step is an entry of the browser's history, so that the phone's own Back goes back to the letter and not away. */
export function useStep(): { step: Step; go: (step: Step) => void; back: () => void } {
  const [step, setStep] = useState<Step>(() => stepOf(history.state));
  useEffect(() => {
    const onPop = (event: PopStateEvent) => setStep(stepOf(event.state));
    window.addEventListener('popstate', onPop);
    return () => window.removeEventListener('popstate', onPop);
  }, []);
  const go = useCallback((next: Step) => {
    history.pushState({ step: next }, '');
    setStep(next);
  }, []);
  // A step is always pushed on top of the letter, and a reload keeps both, so what lies behind a step is the letter.
  const back = useCallback(() => {
    if (stepOf(history.state) !== 'letter') history.back();
  }, []);
  return { step, go, back };
}
