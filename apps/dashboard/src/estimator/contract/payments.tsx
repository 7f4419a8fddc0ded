import type { ChangeEffect, Contract, PlannedPayment } from '@underlath/contract';
import { Money } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { TableScroll } from '../../shared/ui/table-scroll.tsx';
import { Part } from '../desk/page.tsx';
import { changeOrderWord, plural } from '../desk/words.ts';
import { HistoryLine } from './sum-table.tsx';

/** The agreed payments, and beside them what each change order without an answer would add to those still to come, and to the finish. */
export function ContractPayments({ contract }: { contract: Contract }) {
  const { payments, effects } = contract;
  if (payments.length === 0 && effects.length === 0)
    return (
      <Part title="Payments and waiting changes">
        <p className="soft">
          No payments are agreed, and no change order waits. Write the payments into the terms below, and each change
          order shows here what it adds to them.
        </p>
      </Part>
    );
  return (
    <Part
      title="Payments and waiting changes"
      lead="A change is spread over the payments that are not settled yet, by their agreed sums. Retainage is not taken off here. A waiting change counts only when it is approved; each column takes its change order alone."
    >
      <TableScroll label="Payments">
        <table className="table effects">
          <caption className="hidden-text">
            Each payment as agreed and as it is now, and what each change order without an answer would add to it
          </caption>
          <thead>
            <tr>
              <th scope="col">Payment</th>
              <th scope="col" className="number wide-only">
                Agreed
              </th>
              <th scope="col" className="number">
                Now
              </th>
              {effects.map((effect) => (
                <th scope="col" className="number" key={effect.changeOrderId}>
                  <HistoryLine entry={{ what: `No. ${effect.number}`, changeOrderId: effect.changeOrderId }} />
                  <span className="effect-state">{changeOrderWord(effect.state)}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rowsOf(payments, effects).map((row) => (
              <PaymentRow key={row.milestoneId ?? 'final'} payment={row} effects={effects} />
            ))}
          </tbody>
          <tfoot>
            {effects.length > 0 && (
              <tr>
                <td>The change in all</td>
                <td className="wide-only" />
                <td />
                {effects.map(({ changeOrderId, cents }) => (
                  <td className="number" key={changeOrderId}>
                    <Money cents={cents} sign />
                  </td>
                ))}
              </tr>
            )}
            <tr>
              <td>Contract sum{effects.length > 0 && ', with it'}</td>
              <td className="number wide-only">
                <Money cents={contract.originalSumCents} />
              </td>
              <td className="number">
                <Money cents={contract.currentSumCents} />
              </td>
              {effects.map(({ changeOrderId, sumAfterCents }) => (
                <td className="number" key={changeOrderId}>
                  <Money cents={sumAfterCents} />
                </td>
              ))}
            </tr>
            <FinishRow contract={contract} />
          </tfoot>
        </table>
      </TableScroll>
      <Leftover contract={contract} />
    </Part>
  );
}

/** The final payment has a row as soon as something would go into it. */
function rowsOf(payments: readonly PlannedPayment[], effects: readonly ChangeEffect[]): PlannedPayment[] {
  const goesToFinal = effects.some((effect) => effect.payments.some(({ milestoneId }) => milestoneId === null));
  const hasFinal = payments.some(({ milestoneId }) => milestoneId === null);
  const final = { milestoneId: null, name: 'Final payment', agreedCents: 0, addedCents: 0, settledOn: null };
  return goesToFinal && !hasFinal ? [...payments, final] : [...payments];
}

function PaymentRow({ payment, effects }: { payment: PlannedPayment; effects: readonly ChangeEffect[] }) {
  const { milestoneId, name, agreedCents, addedCents, settledOn } = payment;
  return (
    <tr>
      <th scope="row">
        {name}
        {settledOn && (
          <span className="soft small settled">
            settled <Stamp at={settledOn} />
          </span>
        )}
      </th>
      <td className="number wide-only">
        <Money cents={agreedCents} />
      </td>
      <td className="number">
        <Money cents={agreedCents + addedCents} />
      </td>
      {effects.map((effect) => {
        const part = effect.payments.find((one) => one.milestoneId === milestoneId);
        return (
          <td className="number" key={effect.changeOrderId}>
            {part ? <Money cents={part.cents} sign /> : <span className="soft">–</span>}
          </td>
        );
      })}
    </tr>
  );
}

function FinishRow({ contract }: { contract: Contract }) {
  const { finishOn, effects, currentDays } = contract;
  return (
    <tr className="finish-row">
      <td>Finish</td>
      <td className="wide-only" />
      <td className="number">{finishOn ? <Stamp at={finishOn} /> : plural(currentDays, 'day')}</td>
      {effects.map((effect) => (
        <td className="number" key={effect.changeOrderId}>
          {effect.finishOn ? <Stamp at={effect.finishOn} /> : plural(currentDays + effect.days, 'day')}
          <span className="soft small settled">
            {effect.days > 0 && '+'}
            {plural(effect.days, 'day')}
          </span>
        </td>
      ))}
    </tr>
  );
}

function Leftover({ contract: { unscheduledCents, payments } }: { contract: Contract }) {
  if (payments.length === 0)
    return <p className="notice">No payments are agreed yet. Write them into the terms below.</p>;
  if (unscheduledCents === 0) return null;
  return (
    <p className="notice">
      <Money cents={Math.abs(unscheduledCents)} />{' '}
      {unscheduledCents > 0
        ? 'of the original sum is in no payment. Add it to a payment in the terms below.'
        : 'more is in the payments than the original sum. Mend the payments in the terms below.'}
    </p>
  );
}
