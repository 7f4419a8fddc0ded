import type { OverrideMark, PricedScope, PriceLine } from '@underlath/contract';
import { Fragment, useId, useState } from 'react';
import { Money } from '../../shared/ui/money.tsx';
import { writeDollars } from '../desk/numbers.ts';
import { unitWords } from '../desk/words.ts';
import './estimate.css';

type PriceTableProps = {
  scope: PricedScope;
  caption: string;
};

const quantityWords = (line: PriceLine) =>
  `${line.quantity.toLocaleString('en-US', { maximumFractionDigits: 2 })} ${unitWords(line.unit)}`;

/** A column without anything in it stays quiet. */
const Part = ({ cents }: { cents: number }) =>
  cents === 0 ? <span className="soft">–</span> : <Money cents={cents} />;

/** Priced lines that open to how they came about, footed to the total. */
export function PriceTable({ scope, caption }: PriceTableProps) {
  return (
    <div className="table-scroll">
      <table className="table price-table">
        <caption className="hidden-text">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col" className="number">
              Quantity
            </th>
            <th scope="col" className="number wide-only">
              Hours
            </th>
            <th scope="col" className="number wide-only">
              Labor
            </th>
            <th scope="col" className="number wide-only">
              Material, tax
            </th>
            <th scope="col" className="number wide-only">
              Other
            </th>
            <th scope="col" className="number">
              Total
            </th>
          </tr>
        </thead>
        <tbody>
          {scope.lines.map((line, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines may have one name, and the lines of a price stay where they are
            <LineRows key={at} line={line} />
          ))}
          {scope.gaps.map((gap) => (
            <tr key={gap.operation + gap.findingIds.join()} className="gap-row">
              <td>
                <b>{gap.title.en}</b>
                <div className="small">
                  The cost book has no rate for “{gap.operation}”, per {unitWords(gap.unit)}. It is not counted below.
                </div>
              </td>
              <td className="number" />
              <td className="number wide-only" />
              <td className="number wide-only" />
              <td className="number wide-only" />
              <td className="number wide-only" />
              <td className="number">
                <b>no rate</b>
              </td>
            </tr>
          ))}
        </tbody>
        <Foot scope={scope} />
      </table>
    </div>
  );
}

const kindWords = { credit: 'Credit', allowance: 'Allowance, reconciled when spent' };

const fieldWords: Record<OverrideMark['field'], string> = {
  quantity: 'quantity',
  hoursPerUnit: 'hours each',
  materialCentsPerUnit: 'material',
  equipmentCentsPerUnit: 'equipment',
  subcontractCentsPerUnit: 'subcontract',
  otherCentsPerUnit: 'other',
};

function markWords({ field, was, is, why }: OverrideMark): string {
  const shown = (value: number) =>
    field.endsWith('CentsPerUnit') ? `$${writeDollars(value)}` : value.toLocaleString('en-US');
  return `${fieldWords[field]} was ${was === null ? 'not in the book' : shown(was)}, is ${shown(is)}: ${why}`;
}

/** What of a line is set by hand, for everybody who reads the price. */
function ByHand({ line: { overrides = [] } }: { line: PriceLine }) {
  return overrides.map((mark) => (
    <div key={mark.field} className="small by-hand">
      By hand: {markWords(mark)}
    </div>
  ));
}

function LineRows({ line }: { line: PriceLine }) {
  const [open, setOpen] = useState(false);
  const id = useId();
  const other = line.equipmentCents + line.subcontractCents + line.otherCents;
  return (
    <Fragment>
      <tr>
        <td>
          <button
            type="button"
            className="row-open"
            aria-expanded={open}
            aria-controls={id}
            onClick={() => setOpen(!open)}
          >
            <span aria-hidden="true" className="opener">
              {open ? '−' : '+'}
            </span>
            {line.title.en}
          </button>
          {(line.kind === 'credit' || line.kind === 'allowance') && <div className="small">{kindWords[line.kind]}</div>}
          <ByHand line={line} />
        </td>
        <td className="number">{quantityWords(line)}</td>
        <td className="number wide-only">{line.hours.toLocaleString('en-US', { maximumFractionDigits: 2 })}</td>
        <td className="number wide-only">
          <Part cents={line.laborCents} />
        </td>
        <td className="number wide-only">
          <Part cents={line.materialCents + line.taxCents} />
        </td>
        <td className="number wide-only">
          <Part cents={other} />
        </td>
        <td className="number">
          <Money cents={line.totalCents} />
        </td>
      </tr>
      <tr id={id} hidden={!open} className="steps-row">
        <td colSpan={7}>
          <ol className="numbered">
            {line.steps.map((step) => (
              <li key={step.en}>{step.en}</li>
            ))}
          </ol>
        </td>
      </tr>
    </Fragment>
  );
}

function Foot({ scope }: { scope: PricedScope }) {
  const profitOn = scope.stacking === 'stacked' ? 'on cost and overhead' : 'on cost';
  const lines = [
    { name: 'Lines', cents: scope.subtotalCents },
    { name: `Overhead ${scope.overheadPct}%`, cents: scope.overheadCents },
    { name: `Profit ${scope.profitPct}%, ${profitOn}`, cents: scope.profitCents },
  ];
  return (
    <tfoot className="price-foot">
      {lines.map((line) => (
        <tr key={line.name} className="price-sub">
          <td>{line.name}</td>
          <td className="number" />
          <td className="number wide-only" />
          <td className="number wide-only" />
          <td className="number wide-only" />
          <td className="number wide-only" />
          <td className="number">
            <Money cents={line.cents} />
          </td>
        </tr>
      ))}
      <tr>
        <td>Total</td>
        <td className="number" />
        <td className="number wide-only">{scope.hours.toLocaleString('en-US', { maximumFractionDigits: 1 })}</td>
        <td className="number wide-only" />
        <td className="number wide-only" />
        <td className="number wide-only" />
        <td className="number">
          <Money cents={scope.totalCents} />
        </td>
      </tr>
    </tfoot>
  );
}

/** Said wherever a price rests on rates nobody has set yet. */
export function PlaceholderNote({ version }: { version: number }) {
  return (
    <p className="notice">
      <b>These prices rest on invented values.</b> For this work the cost book (version {version}) still holds starter
      values that came with the program. Replace them with your own rates before anyone relies on a total.
    </p>
  );
}
