import { Link } from '@tanstack/react-router';
import { type Contract, type ContractLine, routes } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money, WasIs } from '../../shared/ui/money.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { Page, Part } from '../parts/page.tsx';
import { useOverview, useProjectId } from '../parts/project-frame.tsx';
import { Reading } from '../parts/reading.tsx';
import { SumSteps } from '../parts/sum-steps.tsx';
import { changeOrderWord, plural } from '../parts/words.ts';
import '../order.css';

/** What was agreed at first, each approved change in order, and what the contract is now. Nothing pending is in the sum. */
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
  return (
    <>
      <Part title="The sum">
        <SumSteps contract={contract} />
        <SumTable contract={contract} />
      </Part>
      <Part title="Time">
        <Facts
          facts={[
            {
              name: 'Working days',
              value: <WasIs was={contract.originalDays} is={plural(contract.currentDays, 'day')} />,
            },
            { name: 'Start', value: contract.startOn ? <Stamp at={contract.startOn} look="long-day" /> : 'not set' },
            {
              name: 'Finish',
              value: contract.finishOn ? <Stamp at={contract.finishOn} look="long-day" /> : 'not known',
            },
            { name: 'Contingency the client set aside', value: <Money cents={contract.contingencyCents} /> },
          ]}
        />
      </Part>
      <Apart
        title="With the client, not in the sum"
        lines={contract.pending}
        empty="Nothing is waiting for the client’s answer."
        foot={contract.pendingCents}
      />
      {contract.declined.length > 0 && <Apart title="Declined" lines={contract.declined} empty="" />}
    </>
  );
}

function SumTable({ contract }: { contract: Contract }) {
  return (
    <div className="table-scroll">
      <table className="table">
        <caption className="hidden-text">Original sum, approved changes in order, and the sum now</caption>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col" className="wide-only">
              Decided
            </th>
            <th scope="col" className="number wide-only">
              Days
            </th>
            <th scope="col" className="number">
              Change
            </th>
            <th scope="col" className="number">
              Sum after
            </th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>Original contract</td>
            <td className="wide-only" />
            <td className="number wide-only">{contract.originalDays}</td>
            <td className="number" />
            <td className="number">
              <Money cents={contract.originalSumCents} />
            </td>
          </tr>
          {contract.approved.map((line) => (
            <tr key={line.changeOrderId}>
              <td>
                <OrderLink line={line} />
              </td>
              <td className="wide-only">{line.decidedAt && <Stamp at={line.decidedAt} />}</td>
              <td className="number wide-only">+{line.days}</td>
              <td className="number">
                <Money cents={line.cents} sign />
              </td>
              <td className="number">{line.sumAfterCents !== null && <Money cents={line.sumAfterCents} />}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td>Contract now</td>
            <td className="wide-only" />
            <td className="number wide-only">{contract.currentDays}</td>
            <td className="number">
              <Money cents={contract.approvedChangesCents} sign />
            </td>
            <td className="number">
              <Money cents={contract.currentSumCents} />
            </td>
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

function OrderLink({ line }: { line: ContractLine }) {
  const projectId = useProjectId();
  return (
    <Link
      to="/projects/$projectId/change-orders/$changeOrderId"
      params={{ projectId, changeOrderId: line.changeOrderId }}
      className="row-link"
    >
      {line.number}. {line.headline || 'Change order'}
    </Link>
  );
}

type ApartProps = { title: string; lines: readonly ContractLine[]; empty: string; foot?: number };

function Apart({ title, lines, empty, foot }: ApartProps) {
  return (
    <Part title={title}>
      {lines.length === 0 ? (
        <p className="soft">{empty}</p>
      ) : (
        <>
          <ul className="apart">
            {lines.map((line) => (
              <li key={line.changeOrderId}>
                <OrderLink line={line} />
                <span className="soft">
                  {changeOrderWord(line.state)}, {plural(line.days, 'day')}
                </span>
                <Money cents={line.cents} sign />
              </li>
            ))}
          </ul>
          {foot !== undefined && (
            <p className="shares-foot">
              <span>If all of it is approved</span>
              <Money cents={foot} sign />
            </p>
          )}
        </>
      )}
    </Part>
  );
}
