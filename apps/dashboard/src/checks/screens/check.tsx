import { Link, useParams } from '@tanstack/react-router';
import { findCheck } from '@underlath/rules';
import { say } from '@underlath/rules/kernel';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { checksWords } from '../../shared/i18n/messages/checks.ts';
import { useEvidence } from '../../shared/measure/use-evidence.ts';
import { buttonClass } from '../../shared/ui/button.tsx';
import { EmptyState, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { SheetFrame } from '../parts/sheet-frame.tsx';

/** One check: all there is to know about it, and its form to try. */
export function CheckScreen() {
  const t = useT(checksWords);
  const { locale } = useLocale();
  const { checkId } = useParams({ from: '/checks/$checkId' });
  const check = findCheck(checkId);
  const { evidence, failed } = useEvidence(check);
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
      {failed && <FailState problem={{ title: t('readFailed'), detail: t('readFailedDo') }} doing={t('reading')} />}
      {!failed && !evidence && <LoadingRows rows={8} tall />}
      {evidence && <Sheet key={check.id} check={check} evidence={evidence} />}
    </SheetFrame>
  );
}
