import type { Contract, ContractEntry } from '@underlath/contract';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { Part } from '../desk/page.tsx';
import { EnterWork } from './entry-form.tsx';
import { EntryRows } from './entry-rows.tsx';
import { type BarPart, PartBar } from './part-bar.tsx';

type Entries = { contract: Contract; entries: readonly ContractEntry[] };

/** What is done, what is paid for it, what is held back, and what is left of the sum. */
export function ContractWork({ contract, entries }: Entries) {
  const { money, retainagePct } = contract;
  const rows = entries.filter(({ kind }) => kind !== 'allowance');
  return (
    <Part title="Work and payments">
      <PartBar parts={moneyParts(contract)} />
      <Facts
        facts={[
          { name: 'Completed and stored', value: <Money cents={money.completedCents} /> },
          { name: `Retainage, ${retainagePct}%`, value: <Money cents={0 - money.retainageCents} /> },
          { name: 'Earned less retainage', value: <Money cents={money.earnedLessRetainageCents} /> },
          { name: 'Paid', value: <Money cents={money.paidCents} /> },
          {
            name: money.dueCents < 0 ? 'Paid ahead of the work' : 'Due now',
            value: <Money cents={Math.abs(money.dueCents)} />,
          },
          {
            name: 'Balance to finish',
            value: <Money cents={money.balanceToFinishCents} />,
            note: 'The sum less what is earned; retainage is in it.',
          },
        ]}
      />
      <EntryRows entries={rows} empty="No work and no payment is entered yet." />
      <EnterWork payments={contract.payments} />
    </Part>
  );
}

function moneyParts({ currentSumCents, money }: Contract): BarPart[] {
  const { paidCents, dueCents, retainageCents } = money;
  const due = Math.max(0, dueCents);
  return [
    { name: 'Paid', cents: paidCents, look: 'full' },
    { name: 'Due now', cents: due, look: 'half' },
    { name: 'Retained', cents: retainageCents, look: 'dashed' },
    {
      name: 'Not earned yet',
      cents: Math.max(0, currentSumCents - Math.max(money.completedCents, paidCents)),
      look: 'empty',
    },
  ];
}
