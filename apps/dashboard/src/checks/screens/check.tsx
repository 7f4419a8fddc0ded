import { Link, useParams } from '@tanstack/react-router';
import { elementWords, findCheck, runCase } from '@underlath/rules';
import { say } from '@underlath/rules/kernel';
import { useMemo } from 'react';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { checksWords } from '../../shared/i18n/messages/checks.ts';
import { useEvidence } from '../../shared/measure/use-evidence.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { EmptyState, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import type { RunCase } from '../parts/cases.tsx';
import { Sheet, TitleBlock } from '../parts/sheet.tsx';
import { SheetFrame } from '../parts/sheet-frame.tsx';

/** One check: all there is to know about it, and its form to try. */
export function CheckScreen() {
  const t = useT(checksWords);
  const { locale } = useLocale();
  const { checkId } = useParams({ from: '/checks/$checkId' });
  const check = findCheck(checkId);
  const { evidence, failed } = useEvidence(check);
  const cases = useMemo(
    () => check && evidence?.cases.map((one): RunCase => ({ one, ...runCase(check, one) })),
    [check, evidence],
  );
  if (!check) {
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
    <SheetFrame title={say(check.title, locale)}>
      <header className="sheet-head">
        <div>
          <p className="sheet-element">{say(elementWords(check), locale)}</p>
          <h1 tabIndex={-1}>{say(check.title, locale)}</h1>
          <p className="lead">{say(check.question, locale)}</p>
        </div>
        {cases && <TitleBlock check={check} cases={cases} />}
      </header>
      {failed && <FailState problem={{ title: t('readFailed'), detail: t('readFailedDo') }} doing={t('reading')} />}
      {!failed && !evidence && <LoadingRows rows={8} tall />}
      {evidence && cases && <Sheet key={check.id} check={check} evidence={evidence} cases={cases} />}
    </SheetFrame>
  );
}
