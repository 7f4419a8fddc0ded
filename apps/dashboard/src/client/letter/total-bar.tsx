import type { ClientLetter } from '@underlath/contract';
import { type RefObject, useEffect, useRef } from 'react';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Money, WasIs } from '../../shared/ui/money.tsx';
import type { LetterStep } from '../use-step.ts';
import { shortDays } from './letter-text.ts';

/** Tells the page how much of its foot the bar covers, so that nothing scrolled to or focused hides under it. */
function useCoveredFoot(ref: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const bar = ref.current;
    if (!bar) return;
    const root = document.documentElement;
    const observer = new ResizeObserver(() => {
      const sticks = getComputedStyle(bar).position === 'sticky';
      root.style.setProperty('--bar-height', `${sticks ? bar.offsetHeight : 0}px`);
    });
    observer.observe(bar);
    return () => {
      observer.disconnect();
      root.style.removeProperty('--bar-height');
    };
  }, [ref]);
}

/** The total, always in sight, with the three answers side by side. */
export function TotalBar({ letter, go }: { letter: ClientLetter; go?: ((step: LetterStep) => void) | undefined }) {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const ref = useRef<HTMLElement>(null);
  useCoveredFoot(ref);
  const { contract } = letter.document;
  const { finishBefore, finishAfter } = contract;
  const [was, is] = finishBefore && finishAfter ? shortDays(finishBefore, finishAfter, tag) : ['', ''];
  return (
    <section className="total-bar" ref={ref} aria-label={t('totalRegion')}>
      <div className="total-inner">
        <dl className="total-lines">
          <div className="total-main">
            <dt>{t('totalLabel')}</dt>
            <dd>
              <Money cents={contract.thisChangeCents} sign />
            </dd>
          </div>
          <div>
            <dt>{t('totalContract')}</dt>
            <dd>
              <WasIs
                was={<Money cents={contract.beforeCents} trim />}
                is={<Money cents={contract.afterCents} trim />}
              />
            </dd>
          </div>
          {was && (
            <div>
              <dt>{t('totalFinish')}</dt>
              <dd>
                <WasIs was={was} is={is} />
              </dd>
            </div>
          )}
        </dl>
        {go && (
          <div className="total-actions no-print">
            <Button look="go" onClick={() => go('review')}>
              {t('actionReview')}
            </Button>
            <Button onClick={() => go('ask')}>{t('actionAsk')}</Button>
            <Button onClick={() => go('decline')}>{t('actionDecline')}</Button>
          </div>
        )}
      </div>
    </section>
  );
}
