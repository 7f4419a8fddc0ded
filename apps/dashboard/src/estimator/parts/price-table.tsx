import type { PricedScope, PriceLine } from '@underlath/contract';
import { Fragment, useId, useState } from 'react';
import { Money } from '../../shared/ui/money.tsx';
import { unitWords } from './words.ts';
import '../price.css';

type PriceTableProps = {
  scope: PricedScope;
  caption: string;
  /** Opens an editor for a line's quantity; absent where the price is only shown. */
  onQuantity?: (line: PriceLine) => void;
};

const quantityWords = (line: PriceLine) =>
  `${line.quantity.toLocaleString('en-US', { maximumFractionDigits: 2 })} ${unitWords(line.unit)}`;

/** A column without anything in it stays quiet. */
const Part = ({ cents }: { cents: number }) =>
  cents === 0 ? <span className="soft">–</span> : <Money cents={cents} />;

/** Priced lines that open to how they came about, footed to the total. */
export function PriceTable({ scope, caption, onQuantity }: PriceTableProps) {
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
          {scope.lines.map((line) => (
            <LineRows key={line.name} line={line} onQuantity={onQuantity} />
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

function LineRows({ line, onQuantity }: { line: PriceLine; onQuantity?: ((line: PriceLine) => void) | undefined }) {
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
        </td>
        <td className="number">
          {onQuantity ? (
            <button type="button" className="row-open" onClick={() => onQuantity(line)}>
              {quantityWords(line)}
              <span className="hidden-text">, replace the quantity of {line.title.en}</span>
            </button>
          ) : (
            quantityWords(line)
          )}
        </td>
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
