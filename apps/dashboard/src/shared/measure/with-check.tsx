import type { Check } from '@underlath/rules/kernel';
import type { ReactNode } from 'react';
import { useT } from '../i18n/locale.tsx';
import { checksWords } from '../i18n/messages/checks.ts';
import { FailState, LoadingRows } from '../ui/states.tsx';
import { useCheck } from './use-check.ts';

type WithCheckProps = {
  id: string;
  children: (check: Check) => ReactNode;
  /** Shown when this version of the program has no such check. */
  unknown?: ReactNode;
  /** What stands around the words while the check is read or cannot be. */
  frame?: (body: ReactNode) => ReactNode;
};

/** Shows what needs a check once it is read; until then the place is kept, and a failed reading can be tried again. */
export function WithCheck({ id, children, unknown = null, frame = (body) => body }: WithCheckProps) {
  const t = useT(checksWords);
  const { check, state, retry } = useCheck(id);
  if (check) return children(check);
  if (state === 'unknown') return unknown;
  if (state === 'loading') return frame(<LoadingRows rows={4} tall />);
  return frame(
    <FailState problem={{ title: t('readFailed'), detail: t('readFailedDo') }} doing={t('reading')} onRetry={retry} />,
  );
}
