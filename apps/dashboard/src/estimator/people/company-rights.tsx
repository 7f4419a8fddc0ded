import { type Company, type CompanySwitch, routes } from '@underlath/contract';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';

const switches: readonly { name: CompanySwitch; label: string; on: string; off: string }[] = [
  {
    name: 'crewSeesMoney',
    label: 'The crew sees money',
    on: 'The crew sees prices, contract sums and the client’s e-mail address.',
    off: 'The crew sees no prices, no contract sums and no client’s e-mail address.',
  },
  {
    name: 'estimatorsEditCostBook',
    label: 'Estimators change the cost book',
    on: 'Owners and estimators save new versions of the cost book.',
    off: 'Only owners save new versions of the cost book; estimators read it.',
  },
];

/** What an owner decides for everyone of the company; it holds from the next request on. */
export function CompanyRights({ owner }: { owner: boolean }) {
  const company = useRoute(routes.getCompany, {});
  return (
    <Part title="What people may see and do">
      <Reading query={company} doing="Reading the company" rows={2}>
        {(data) => (owner ? <Switches company={data} /> : <Facts company={data} />)}
      </Reading>
    </Part>
  );
}

function Facts({ company }: { company: Company }) {
  return (
    <ul>
      {switches.map(({ name, on, off }) => (
        <li key={name}>{company[name] ? on : off}</li>
      ))}
    </ul>
  );
}

function Switches({ company }: { company: Company }) {
  const announce = useAnnounce();
  const change = useChange(routes.changeCompany, {
    invalidates: [routes.getCompany, routes.whoAmI],
    onDone: () => announce('Saved'),
  });
  // What was just pressed is shown while it is being saved.
  const now = { ...company, ...(change.isPending && change.variables.body) };
  return (
    <div className="stack">
      {switches.map(({ name, label, on, off }) => (
        <Checkbox
          key={name}
          label={label}
          detail={now[name] ? on : off}
          checked={now[name] === true}
          onChange={(checked) => change.mutate({ body: { [name]: checked }, ifMatch: company.version })}
        />
      ))}
      {change.error && <FailState problem={problemOf(change.error)} doing="Saving what people may see and do" />}
    </div>
  );
}
