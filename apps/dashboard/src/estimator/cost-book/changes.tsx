import type { CostBookChange } from '@underlath/contract';
import { operationWords, plural } from '../desk/words.ts';

const verbs = { added: 'Added', changed: 'Changed', removed: 'Removed' } as const;
const rowWords = {
  settings: 'Overhead and profit',
  trade: 'Trade',
  burden: 'Burden',
  item: 'Work',
  fee: 'Fee',
} as const;

/** `wage_usd_per_hour` as `wage, $ per hour`. */
const columnWords = (column: string) =>
  column
    .replace('_yes_no', '')
    .replace('_usd', ', $')
    .replace('_percent', ', %')
    .replace('_stacked_or_added', '')
    .replaceAll('_', ' ');

const nameOf = ({ row, id, name }: CostBookChange) =>
  row === 'settings' ? rowWords.settings : `${rowWords[row]}: ${row === 'item' ? operationWords(id) : name}`;

/** What differs between two books, row by row: was and is. */
export function BookChanges({ changes }: { changes: readonly CostBookChange[] }) {
  if (changes.length === 0) return <p>Nothing differs.</p>;
  const count = (kind: CostBookChange['kind']) => changes.filter((change) => change.kind === kind).length;
  return (
    <>
      <p>
        {plural(count('added'), 'row')} added, {count('changed')} changed, {count('removed')} removed.
      </p>
      <div className="table-scroll book-changes">
        <table className="table">
          <caption className="hidden-text">What differs</caption>
          <thead>
            <tr>
              <th scope="col">Row</th>
              <th scope="col">Was</th>
              <th scope="col">Is</th>
            </tr>
          </thead>
          <tbody>
            {changes.map((change) => (
              <tr key={[change.row, change.id, change.name, change.kind].join(' ')}>
                <th scope="row">
                  {verbs[change.kind]}. {nameOf(change)}
                </th>
                <td>{change.kind === 'added' ? 'not there' : <Cells change={change} side="was" />}</td>
                <td>{change.kind === 'removed' ? 'not there' : <Cells change={change} side="is" />}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

/** A changed row shows the cells that differ, one under the other; a whole row those that say something. */
function Cells({ change, side }: { change: CostBookChange; side: 'was' | 'is' }) {
  const whole = change.kind !== 'changed';
  const cells = change.cells.filter(
    ({ column, [side]: value }) =>
      !(whole && (['id', 'name', 'currency'].includes(column) || value === '' || Number(value) === 0)),
  );
  return (
    <ul className={whole ? 'cells-whole' : 'cells-changed'}>
      {cells.map((cell) => (
        <li key={cell.column}>
          {columnWords(cell.column)}: <b>{cellWords(cell.column, cell[side])}</b>
        </li>
      ))}
    </ul>
  );
}

/** An empty mark is a no; other empty cells are not known, or left to the rule. */
const cellWords = (column: string, value: string) =>
  value !== '' ? value : column.endsWith('_yes_no') ? 'no' : 'empty';
