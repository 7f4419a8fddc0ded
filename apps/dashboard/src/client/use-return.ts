import { useCallback, useLayoutEffect, useRef } from 'react';
import type { LetterStep } from './use-step.ts';

/**
 * Coming back from a step, the letter stands where it was left, with the focus on the button that was pressed. After a
 * decision, or when the link has died meanwhile, it starts at the top, with the focus on what is told there. Call the
 * function given back when leaving for a step.
 */
export function useReturnToPlace(shown: LetterStep, answerable: boolean): () => void {
  const left = useRef<{ scrollY: number; focus: Element | null } | null>(null);
  const wasAnswerable = useRef(answerable);
  useLayoutEffect(() => {
    if (shown !== 'letter') return;
    if (wasAnswerable.current && !answerable) {
      window.scrollTo(0, 0);
      document.querySelector<HTMLElement>('[data-told]')?.focus({ preventScroll: true });
    } else if (left.current) {
      window.scrollTo(0, left.current.scrollY);
      if (left.current.focus instanceof HTMLElement) left.current.focus.focus({ preventScroll: true });
    }
    wasAnswerable.current = answerable;
    left.current = null;
  }, [shown, answerable]);
  return useCallback(() => {
    history.scrollRestoration = 'manual';
    left.current = { scrollY: window.scrollY, focus: document.activeElement };
  }, []);
}
