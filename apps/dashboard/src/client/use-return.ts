import type { ClientLetter } from '@underlath/contract';
import { useCallback, useLayoutEffect, useRef } from 'react';
import type { Step } from './use-step.ts';

/**
 * Coming back from a step, the letter stands where it was left, with the focus on the button that was pressed. After a
 * decision it starts at the top, with the focus on what was decided. Call the answer when leaving for a step.
 */
export function useReturnToPlace(shown: Step, state: ClientLetter['state']): () => void {
  const left = useRef<{ scrollY: number; focus: Element | null } | null>(null);
  const wasOpen = useRef(state === 'open');
  useLayoutEffect(() => {
    if (shown !== 'letter') return;
    if (wasOpen.current && state !== 'open') {
      window.scrollTo(0, 0);
      document.getElementById('decided')?.focus({ preventScroll: true });
    } else if (left.current) {
      window.scrollTo(0, left.current.scrollY);
      if (left.current.focus instanceof HTMLElement) left.current.focus.focus({ preventScroll: true });
    }
    wasOpen.current = state === 'open';
    left.current = null;
  }, [shown, state]);
  return useCallback(() => {
    history.scrollRestoration = 'manual';
    left.current = { scrollY: window.scrollY, focus: document.activeElement };
  }, []);
}
