import { type ContractEntry, routes } from '@underlath/contract';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Money } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { TakeBack } from '../desk/take-back.tsx';
import { contractReads } from './reads.ts';

type EntryRowsProps = { entries: readonly ContractEntry[]; empty: string };

const kinds = { payment: 'Paid', completed: 'Completed', allowance: 'Allowance' } as const;

/** Entries by their day; those taken back stay readable, struck through with the reason. */
export function EntryRows({ entries, empty }: EntryRowsProps) {
  if (entries.length === 0) return <p className="soft">{empty}</p>;
  return (
    <ul className="plain-rows entry-rows">
      {entries.map((entry) => (
        <EntryRow key={entry.id} entry={entry} />
      ))}
    </ul>
  );
}

function EntryRow({ entry }: { entry: ContractEntry }) {
  const announce = useAnnounce();
  const take = useChange(routes.takeBackContractEntry, {
    invalidates: contractReads,
    onDone: () => announce('Taken back.'),
  });
  const { takenBack, name, happenedOn } = entry;
  const words = (
    <>
      <Stamp at={happenedOn} />: {kinds[entry.kind]}, <b>{name}</b>
    </>
  );
  return (
    <li>
      <span>
        {takenBack ? <s>{words}</s> : words}
        {entry.kind === 'allowance' && <AllowanceWords entry={entry} />}
        {takenBack && <span className="soft"> (taken back: {takenBack.why})</span>}
      </span>
      <span className="entry-end">
        {takenBack ? (
          <s>
            <Amount entry={entry} />
          </s>
        ) : (
          <Amount entry={entry} />
        )}
        {!takenBack && (
          <TakeBack
            what={name}
            busy={take.isPending}
            problem={take.error ? problemOf(take.error) : null}
            onTake={(why) => take.mutate({ params: { contractEntryId: entry.id }, body: { why } })}
          />
        )}
      </span>
    </li>
  );
}

type Allowance = Extract<ContractEntry, { kind: 'allowance' }>;

function AllowanceWords({ entry: { allowedCents, spentCents, overheadProfitPct } }: { entry: Allowance }) {
  return (
    <span className="soft">
      , <Money cents={spentCents} trim /> spent of <Money cents={allowedCents} trim /> allowed
      {overheadProfitPct > 0 && `, ${overheadProfitPct}% overhead and profit`}
    </span>
  );
}

/** Of an allowance what it does to the sum, of the others what was paid or done. */
const Amount = ({ entry }: { entry: ContractEntry }) =>
  entry.kind === 'allowance' ? <Money cents={entry.changeCents} sign /> : <Money cents={entry.cents} />;
