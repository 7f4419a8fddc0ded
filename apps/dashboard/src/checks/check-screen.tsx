import { Link, useParams } from '@tanstack/react-router';
import { elementWords, findEntry, runCase } from '@underlath/rules';
import { say } from '@underlath/rules/kernel';
import { useMemo } from 'react';
import { useLocale, useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { useCheck } from '../shared/measure/use-check.ts';
import { useEvidence } from '../shared/measure/use-evidence.ts';
import { buttonClass } from '../shared/ui/button.tsx';
import { EmptyState, FailState, LoadingRows } from '../shared/ui/states.tsx';
import type { RunCase } from './cases.tsx';
import { CheckSheet, TitleBlock } from './check-sheet.tsx';
import { SheetFrame } from './sheet-frame.tsx';

/** One check: all there is to know about it, and its form to try. */
export function CheckScreen() {
  const t = useT(checksWords);
  const { locale } = useLocale();
  const { checkId } = useParams({ from: '/checks/$checkId' });
  const card = findEntry(checkId);
  const { check, state, retry } = useCheck(checkId);
  const { evidence, failed } = useEvidence(check);
  const unread = failed || state === 'failed';
  const cases = useMemo(
    () => check && evidence?.cases.map((one): RunCase => ({ one, ...runCase(check, one) })),
    [check, evidence],
  );
  if (!card) {
    return (
      <SheetFrame title={t('unknownTitle', { id: checkId })}>
        <h1 tabIndex={-1}>{t('unknownTitle', { id: checkId })}</h1>
        <EmptyState
          title={t('unknownLead')}
          action={
            <Link to="/checks" className={buttonClass('go')}>
              {t('allChecks')}
            </Link>
          }
        />
      </SheetFrame>
    );
  }
  return (
    <SheetFrame title={say(card.title, locale)}>
      <header className="sheet-head">
        <div>
          <p className="sheet-element">{say(elementWords(card), locale)}</p>
          <h1 tabIndex={-1}>{say(card.title, locale)}</h1>
          <p className="lead">{say(card.question, locale)}</p>
        </div>
        {check && cases && <TitleBlock check={check} cases={cases} />}
      </header>
      {unread && (
        <FailState
          problem={{ title: t('readFailed'), detail: t('readFailedDo') }}
          doing={t('reading')}
          {...(state === 'failed' && { onRetry: retry })}
        />
      )}
      {!unread && !evidence && <LoadingRows rows={8} tall />}
      {check && evidence && cases && <CheckSheet key={check.id} check={check} evidence={evidence} cases={cases} />}
    </SheetFrame>
  );
}
