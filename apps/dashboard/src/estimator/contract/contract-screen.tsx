import { Link } from '@tanstack/react-router';
import { type Contract, type ContractLine, routes } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money, WasIs } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { Page, Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { changeOrderWord, plural } from '../desk/words.ts';
import { useOverview, useProjectId } from '../project/project-frame.tsx';
import { ContractContingency } from './contingency.tsx';
import { SettleAllowance } from './entry-form.tsx';
import { EntryRows } from './entry-rows.tsx';
import { ContractLedger } from './ledger.tsx';
import { ContractWork } from './money.tsx';
import { ContractPayments } from './payments.tsx';
import { SumOverTime } from './sum-over-time.tsx';
import { ContractSumTable, HistoryLine } from './sum-table.tsx';
import { TermsPart } from './terms.tsx';
import './contract.css';

/** What was agreed, what changed it, what is done and paid, and what waits. Nothing pending is in the sum. */
export function ContractScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const contract = useRoute(routes.getContract, { params: { projectId } });
  return (
    <Page
      title="Contract"
      of={overview.data?.project.name}
      actions={
        <Link to="/projects/$projectId/details" params={{ projectId }}>
          Change the sum, the dates or the client
        </Link>
      }
    >
      <Reading query={contract} doing="Reading the contract">
        {(data) => <ContractSheet contract={data} />}
      </Reading>
    </Page>
  );
}

function ContractSheet({ contract }: { contract: Contract }) {
  const params = { projectId: useProjectId() };
  const ledger = useRoute(routes.getContractLedger, { params });
  const entries = useRoute(routes.listContractEntries, { params });
  return (
    <>
      <Part title="The sum">
        <Reading query={ledger} doing="Reading the ledger" rows={4}>
          {({ items }) => (
            <>
              <SumOverTime contract={contract} entries={items} />
              <ContractSumTable contract={contract} entries={items} />
            </>
          )}
        </Reading>
        <Waiting contract={contract} />
      </Part>
      <ContractPayments contract={contract} />
      <Reading query={entries} doing="Reading payments and work" rows={4}>
        {({ items }) => (
          <div className="contract-pair">
            <ContractWork contract={contract} entries={items} />
            <div className="contract-side">
              <Part title="Allowances" lead="Once one is settled, the difference is in the sum.">
                <EntryRows
                  entries={items.filter(({ kind }) => kind === 'allowance')}
                  empty="No allowance is settled yet."
                />
                <SettleAllowance />
              </Part>
              <ContractContingency contract={contract} />
            </div>
          </div>
        )}
      </Reading>
      <div className="contract-pair">
        <TermsPart contract={contract} />
        <div className="contract-side">
          <ContractTime contract={contract} />
          {contract.declined.length > 0 && (
            <Part title="Declined">
              <Lines lines={contract.declined} />
            </Part>
          )}
        </div>
      </div>
      <Reading query={ledger} doing="Reading the ledger" rows={4}>
        {({ items }) => <ContractLedger entries={items} />}
      </Reading>
    </>
  );
}

function ContractTime({ contract }: { contract: Contract }) {
  return (
    <Part title="Time">
      <Facts
        facts={[
          {
            name: contract.dayKind === 'working' ? 'Working days' : 'Calendar days',
            value: <WasIs was={contract.originalDays} is={plural(contract.currentDays, 'day')} />,
          },
          { name: 'Start', value: contract.startOn ? <Stamp at={contract.startOn} look="long-day" /> : 'not set' },
          {
            name: 'Finish',
            value: contract.finishOn ? <Stamp at={contract.finishOn} look="long-day" /> : 'not known',
            note: 'The start day is not counted; the day after it is day 1.',
          },
        ]}
      />
    </Part>
  );
}

function Waiting({ contract: { pending, pendingCents, currentSumCents } }: { contract: Contract }) {
  if (pending.length === 0) return <p className="soft">Nothing is waiting for the client’s answer.</p>;
  return (
    <>
      <h3>With the client, not in the sum</h3>
      <Lines lines={pending} />
      <Facts facts={[{ name: 'All of it together', value: <Money cents={pendingCents} sign /> }]} />
      <p className="shares-foot">
        <span>Contract sum if all of it is approved</span>
        <Money cents={currentSumCents + pendingCents} />
      </p>
    </>
  );
}

function Lines({ lines }: { lines: readonly ContractLine[] }) {
  return (
    <ul className="apart">
      {lines.map(({ changeOrderId, number, headline, state, days, cents }) => (
        <li key={changeOrderId}>
          <HistoryLine entry={{ changeOrderId, what: `${number}. ${headline || 'Change order'}` }} />
          <span className="soft">
            {changeOrderWord(state)}, {plural(days, 'day')}
          </span>
          <Money cents={cents} sign />
        </li>
      ))}
    </ul>
  );
}
