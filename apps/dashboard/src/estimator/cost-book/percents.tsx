import type { Problem } from '@underlath/contract';
import { useState } from 'react';
import { RadioGroup } from '../../shared/ui/choice.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { readNumber, writeNumber } from '../desk/numbers.ts';
import { Part } from '../desk/page.tsx';
import type { BookDraft } from './draft.ts';
import { profitMarginPct, profitOfMargin, wholeMarginPct, wholeMarkupPct } from './margin.ts';

type PercentsProps = {
  draft: BookDraft;
  change: (make: (draft: BookDraft) => BookDraft) => void;
  problem: Problem | null;
};

const twoPlaces = (value: number) => writeNumber(Number(value.toFixed(2)));

/** Overhead and profit, what profit is taken on, and the same as markup and as margin. */
export function BookPercents({ draft, change, problem }: PercentsProps) {
  const set = (part: Partial<BookDraft>) => change((old) => ({ ...old, ...part }));
  const [overheadPct, profitPct] = [readNumber(draft.overhead), readNumber(draft.profit)];
  const known = typeof overheadPct === 'number' && overheadPct >= 0 && typeof profitPct === 'number' && profitPct >= 0;
  const sums = known ? { overheadPct, profitPct, stacking: draft.stacking } : null;
  const base = draft.stacking === 'stacked' ? 'cost and overhead' : 'cost';
  return (
    <Part title="Overhead and profit">
      <div className="book-percents">
        <TextInput
          label="Overhead, markup: % of cost"
          inputMode="decimal"
          className="number"
          value={draft.overhead}
          onChange={(overhead) => set({ overhead })}
          error={errorAt(problem, '/book/overheadPct')}
        />
        <TextInput
          label={`Profit, markup: % of ${base}`}
          inputMode="decimal"
          className="number"
          value={draft.profit}
          onChange={(profit) => set({ profit })}
          error={errorAt(problem, '/book/profitPct')}
        />
        <MarginInput
          marginPct={sums ? profitMarginPct(sums) : null}
          onMargin={(marginPct) => {
            const profit = profitOfMargin(marginPct, { overheadPct: overheadPct ?? 0, stacking: draft.stacking });
            if (profit !== undefined) set({ profit: writeNumber(profit) });
            return profit !== undefined;
          }}
        />
      </div>
      <RadioGroup
        label="Profit is taken on"
        layout="row"
        options={[
          { value: 'stacked', label: 'cost and overhead (stacked)' },
          { value: 'added', label: 'cost alone (added)' },
        ]}
        value={draft.stacking}
        onChange={(stacking) => set({ stacking })}
      />
      {sums && (
        <p>
          Together: a markup of <b>{twoPlaces(wholeMarkupPct(sums))}%</b> on cost, which is a margin of{' '}
          <b>{twoPlaces(wholeMarginPct(sums))}%</b> of the price. $100.00 of cost sells for{' '}
          <b>${(100 + wholeMarkupPct(sums)).toFixed(2)}</b>.
        </p>
      )}
    </Part>
  );
}

/** Who works at a place: the days of a scope and a change order are counted with it. */
export function BookCrew({ draft, change, problem }: PercentsProps) {
  const set = (part: Partial<BookDraft>) => change((old) => ({ ...old, ...part }));
  return (
    <Part title="Crew" lead="The days of a scope and of a change order are counted with it.">
      <div className="book-percents">
        <TextInput
          label="People at one place"
          inputMode="numeric"
          className="number"
          value={draft.crew}
          onChange={(crew) => set({ crew })}
          error={errorAt(problem, '/book/crewSize')}
        />
        <TextInput
          label="Hours a day"
          inputMode="decimal"
          className="number"
          value={draft.hoursPerDay}
          onChange={(hoursPerDay) => set({ hoursPerDay })}
          error={errorAt(problem, '/book/hoursPerDay')}
        />
      </div>
    </Part>
  );
}

type MarginProps = { marginPct: number | null; onMargin: (marginPct: number) => boolean };

/** The same profit as a margin: typing it sets the markup, and typing the markup shows it here. */
function MarginInput({ marginPct, onMargin }: MarginProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const [refused, setRefused] = useState(false);
  return (
    <TextInput
      label="The same profit as margin: % of the price"
      inputMode="decimal"
      className="number"
      value={typed ?? (marginPct === null ? '' : twoPlaces(marginPct))}
      onChange={(text) => {
        const value = readNumber(text);
        setTyped(text);
        setRefused(text.trim() !== '' && !(typeof value === 'number' && onMargin(value)));
      }}
      onBlur={() => {
        setTyped(null);
        setRefused(false);
      }}
      error={refused ? `“${typed}” is no margin; type 0 up to below 100.` : undefined}
    />
  );
}
