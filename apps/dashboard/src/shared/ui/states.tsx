import type { ReactNode } from 'react';
import { SendConfirmation } from '../account/send-confirmation.tsx';
import { fieldWords } from '../api/problem-words.ts';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { Button } from './button.tsx';
import { type ShownProblem, useProblemWords } from './use-problem-words.ts';
import './ui.css';

/** Nothing here yet: says so, and what to do first. */
export function EmptyState({ title, children, action }: { title: string; children?: ReactNode; action?: ReactNode }) {
  return (
    <div className="empty">
      <h2>{title}</h2>
      {children && <div className="prose">{children}</div>}
      {action && <div className="row">{action}</div>}
    </div>
  );
}

/** Ruled lines where the rows will stand, so that nothing jumps when they come. */
export function LoadingRows({ rows = 5, tall }: { rows?: number; tall?: boolean }) {
  const t = useT(commonWords);
  return (
    <div className={tall ? 'loading loading-tall' : 'loading'} role="status">
      <span className="hidden-text">{t('loading')}</span>
      {Array.from({ length: rows }, (_, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines have no identity of their own
        <div className="loading-row" key={at} aria-hidden="true" />
      ))}
    </div>
  );
}

type FailStateProps = {
  problem: ShownProblem;
  /** What was being done, to what: "Saving the finding on East wall". */
  doing?: string;
  onRetry?: () => void;
  retrying?: boolean;
  /** True where a form stands behind it: adds that nothing typed is lost. */
  kept?: boolean;
};

/** Says what happened, to what, and what to do. Never takes the form away. */
export function FailState({ problem, doing, onRetry, retrying, kept }: FailStateProps) {
  const t = useT(commonWords);
  const { title, lines } = useProblemWords(problem);
  return (
    <div className="fail" role="alert">
      <p className="fail-title">{doing ? `${doing}: ${title}` : title || t('failTitle')}</p>
      {problem.offline ? (
        <p>{t('failOffline')}</p>
      ) : (
        <ul className={lines.length > 1 ? 'fail-list' : undefined}>
          {lines.map(({ words, where }) => (
            <li key={`${words}${where}`}>
              {words}
              {where && <span className="soft"> {t('at', { where })}</span>}
            </li>
          ))}
        </ul>
      )}
      {kept && !problem.offline && <p>{t('failKept')}</p>}
      {problem.type?.endsWith('confirm-email-first') && <SendConfirmation />}
      {problem.requestId && <p className="soft small">{t('failReference', { id: problem.requestId })}</p>}
      {onRetry && (
        <Button onClick={onRetry} busy={retrying}>
          {t('retry')}
        </Button>
      )}
    </div>
  );
}

/** `/inputs/plates/0/lengthIn` as `inputs, plates, 1, lengthIn`: a person counts from one. */
export function readablePointer(pointer: string): string {
  return pointer
    .replace(/^#?\//, '')
    .split('/')
    .map((part) => (/^\d+$/.test(part) ? String(Number(part) + 1) : part.replaceAll('~1', '/').replaceAll('~0', '~')))
    .join(', ');
}

/** What the problem says of this field, for its error line. */
export function errorAt(problem: ShownProblem | null | undefined, pointer: string): string | undefined {
  const error = problem?.errors?.find((one) => one.pointer.replace(/^#/, '') === pointer);
  return error && fieldWords(error);
}
