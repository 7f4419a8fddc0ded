import type { PricedScope } from '@underlath/contract';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money } from '../../shared/ui/money.tsx';

/** The sums of a price: its lines, overhead and profit, the total. */
export function PriceSums({ scope }: { scope: PricedScope }) {
  const profitOn = scope.stacking === 'stacked' ? 'on cost and overhead' : 'on cost';
  const set = scope.lines.filter(({ kind }) => kind === 'allowance');
  return (
    <div className="price-sums">
      <Facts
        facts={[
          {
            name: 'Lines',
            value: <Money cents={scope.subtotalCents} />,
            ...(set.length > 0 && {
              note: (
                <>
                  of these, allowances <Money cents={set.reduce((sum, { totalCents }) => sum + totalCents, 0)} />
                </>
              ),
            }),
          },
          { name: `Overhead ${scope.overheadPct}%`, value: <Money cents={scope.overheadCents} /> },
          { name: `Profit ${scope.profitPct}%, ${profitOn}`, value: <Money cents={scope.profitCents} /> },
          {
            name: 'Total',
            value: (
              <b>
                <Money cents={scope.totalCents} />
              </b>
            ),
            note: `${scope.hours.toLocaleString('en-US', { maximumFractionDigits: 1 })} hours`,
          },
        ]}
      />
      {scope.gaps.length > 0 && (
        <p className="notice">
          {scope.gaps.length === 1 ? 'One line has' : `${scope.gaps.length} lines have`} no rate and{' '}
          {scope.gaps.length === 1 ? 'is' : 'are'} not in this total.
        </p>
      )}
    </div>
  );
}
