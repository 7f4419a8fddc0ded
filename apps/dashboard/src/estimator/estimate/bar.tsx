import type { Estimate, EstimateRange } from '@underlath/contract';
import type { ReactNode } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { Money } from '../../shared/ui/money.tsx';
import { plural } from '../desk/words.ts';

type EstimateBarProps = {
  estimate: Estimate;
  range: EstimateRange | undefined;
  /** Null while nothing is typed that is not saved. */
  preview: { error: Error | null; isBehind: boolean } | null;
  /** How many cells do not fit. */
  wrong: number;
  children: ReactNode;
};

/** The total and what it may come to, always in sight, with the action beside it. */
export function EstimateBar({ estimate: { scope }, range, preview, wrong, children }: EstimateBarProps) {
  const drawn = range?.range;
  return (
    <div className="estimate-bar">
      <dl>
        <div>
          <dt>Total</dt>
          <dd>
            <Money cents={scope.totalCents} />
          </dd>
        </div>
        <div>
          <dt>Of ten jobs, five to eight stay under</dt>
          <dd>
            {drawn ? (
              <>
                <Money cents={drawn.p50Cents} trim /> to <Money cents={drawn.p80Cents} trim />
              </>
            ) : (
              'no range while a rate is missing'
            )}
          </dd>
        </div>
      </dl>
      <p className="soft estimate-bar-says" aria-live="polite">
        {stateWords(preview, wrong, scope.gaps.length)}
      </p>
      <div className="row">{children}</div>
    </div>
  );
}

function stateWords(preview: EstimateBarProps['preview'], wrong: number, gaps: number): string {
  if (preview?.error)
    return `Not worked out anew: ${problemOf(preview.error).title}. The total is of before; what you typed is kept.`;
  if (wrong > 0) return `${plural(wrong, 'cell does', 'cells do')} not fit yet; each says why.`;
  if (gaps > 0) return `${plural(gaps, 'rate is', 'rates are')} missing and not in the total.`;
  if (preview?.isBehind) return 'Working it out…';
  return preview ? 'Worked out with what you typed; not saved yet.' : '';
}
