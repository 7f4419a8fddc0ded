import { Link, useParams } from '@tanstack/react-router';
import { type Location, type PlaceScope, routes } from '@underlath/contract';
import { useState } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { formatNumber } from '../../shared/i18n/format.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { scopeWords } from '../../shared/i18n/messages/scope.ts';
import { ScopeCautions } from '../../shared/scope/scope-cautions.tsx';
import { ScopeDrawing } from '../../shared/scope/scope-drawing.tsx';
import { ScopeSteps } from '../../shared/scope/scope-steps.tsx';
import { StepBars } from '../../shared/scope/step-bars.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Facts } from '../../shared/ui/facts.tsx';
import { Select } from '../../shared/ui/field.tsx';
import { WasIs } from '../../shared/ui/money.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { TableScroll } from '../../shared/ui/table-scroll.tsx';
import { Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { plural } from '../desk/words.ts';
import { useProjectId } from '../project/project-frame.tsx';
import { PlacePage } from './place-page.tsx';

const crewSizes = [1, 2, 3, 4, 6];
const dayLengths = [6, 8, 10];
/** The usual ones and the one that counts now, small to large. */
const choices = (usual: readonly number[], now: number, word: (value: number) => string) =>
  [...new Set([...usual, now])].sort((a, b) => a - b).map((value) => ({ value: String(value), label: word(value) }));

/** One repair for an opened place: its steps beside its drawing, what leaving one out does, how many days. */
export function ScopeScreen() {
  const { locationId } = useParams({ from: '/in/desk/projects/$projectId/places/$locationId/scope' });
  return (
    <PlacePage title="Repair scope" locationId={locationId}>
      {(place) => <PlaceScopeView place={place} />}
    </PlacePage>
  );
}

function PlaceScopeView({ place }: { place: Location }) {
  const [out, setOut] = useState<readonly string[]>([]);
  // Undefined: as the cost book says.
  const [crewSize, setCrewSize] = useState<string>();
  const [hoursPerDay, setHoursPerDay] = useState<string>();
  const plan = useRoute(routes.getPlaceScope, {
    params: { locationId: place.id },
    query: {
      ...(crewSize !== undefined && { crewSize }),
      ...(hoursPerDay !== undefined && { hoursPerDay }),
      ...(out.length > 0 && { declined: out.join(',') }),
    },
  });
  const leave = (id: string, included: boolean) => setOut(included ? out.filter((one) => one !== id) : [...out, id]);
  return (
    <Reading query={plan} doing={`Working out the scope of ${place.name}`} rows={8}>
      {(data) => (
        <>
          <div className="scope-options no-print">
            <Select
              label="Crew"
              options={choices(crewSizes, data.crewSize, (size) => plural(size, 'person', 'people'))}
              value={crewSize ?? String(data.crewSize)}
              onChange={setCrewSize}
            />
            <Select
              label="A day has"
              options={choices(dayLengths, data.hoursPerDay, (hours) => plural(hours, 'hour'))}
              value={hoursPerDay ?? String(data.hoursPerDay)}
              onChange={setHoursPerDay}
            />
          </div>
          <Plan place={place} plan={data} out={out} onLeave={leave} />
        </>
      )}
    </Reading>
  );
}

type PlanProps = {
  place: Location;
  plan: PlaceScope;
  out: readonly string[];
  onLeave: (id: string, included: boolean) => void;
};

function Plan({ place, plan, out, onLeave }: PlanProps) {
  const projectId = useProjectId();
  const [litId, setLitId] = useState<string | null>(null);
  const t = useT(scopeWords);
  const { scope, findings } = plan;
  const lit = scope.operations.find(({ id }) => id === litId);
  if (findings.length === 0) {
    return (
      <EmptyState
        title="Nothing to repair here yet"
        action={
          <Link to="/projects/$projectId/findings/new" params={{ projectId }} search={{ place: place.id }}>
            Record a finding here
          </Link>
        }
      >
        <p>A finding that was measured brings its repair here. Several in one place are opened once.</p>
      </EmptyState>
    );
  }
  return (
    <>
      <p className="scope-answer">
        <b>{plural(scope.workingDays, 'working day')}</b> for a crew of {plan.crewSize} at{' '}
        {plural(plan.hoursPerDay, 'hour')} a day, {formatNumber(scope.totalHours.likely, 'en-US', 1)} crew hours (
        {formatNumber(scope.totalHours.low, 'en-US', 1)} to {formatNumber(scope.totalHours.high, 'en-US', 1)}).{' '}
        <span className="soft">The least it takes: waiting for inspectors, engineers and drying comes on top.</span>
      </p>
      <ScopeCautions plan={plan} />
      <div className="scope-page">
        <div className="scope-beside">
          <ScopeDrawing place={place} plan={plan} step={lit} />
          <Included plan={plan} out={out} onLeave={onLeave} />
        </div>
        <div>
          <Part
            title="Steps, in order"
            lead={<span className="no-print">Press a step to see where it is. The crew has the same list.</span>}
          >
            <ScopeSteps plan={plan} litId={litId} onLight={setLitId} detailed />
          </Part>
        </div>
      </div>
      <Part
        title="Hours"
        lead="The earliest each step can be done, if hands are free. Thick bars are the longest chain of steps; a full line is a hold point."
      >
        <StepBars plan={plan} litId={litId} />
      </Part>
      <Once plan={plan} />
      <Shares plan={plan} />
      {plan.inventedHours && <p className="soft small">{t('inventedHours')}</p>}
    </>
  );
}

/** Which findings are in; what leaving one out would cover over is said at once. */
function Included({ plan, out, onLeave }: Omit<PlanProps, 'place'>) {
  const conflict = new Map(plan.scope.conflicts.map(({ finding, why }) => [finding, why]));
  return (
    <fieldset className="field">
      <legend className="field-label">In this scope</legend>
      <p className="soft no-print">Untick one to see the scope without it.</p>
      {plan.findings.map((finding) => (
        <div key={finding.id}>
          <Checkbox
            label={`${finding.number}. ${finding.title}`}
            detail={
              finding.state === 'declined'
                ? 'declined by the client'
                : `${finding.repairs.join(', ') || 'no repair is proposed'}${finding.proposed ? ' (proposed, not priced)' : ''}`
            }
            checked={!out.includes(finding.id) && finding.state !== 'declined'}
            disabled={finding.state === 'declined'}
            onChange={(included) => onLeave(finding.id, included)}
          />
          {conflict.has(finding.id) && (
            <p className="notice" role="status">
              {conflict.get(finding.id)}
            </p>
          )}
        </div>
      ))}
    </fieldset>
  );
}

/** Square feet are shown to a tenth. */
const SHOWN_SF = 0.1;

/** The same wall opened once, beside what the findings would open one by one. */
function Once({ plan }: { plan: PlaceScope }) {
  const { unions, naive, credits } = plan.scope;
  const sf = (value: number) => `${formatNumber(value, 'en-US', 1)} sq ft`;
  const overlap = naive.stripSf - unions.stripSf >= SHOWN_SF;
  const facts = [
    {
      name: 'Opened and closed',
      value: overlap ? <WasIs was={sf(naive.stripSf)} is={sf(unions.stripSf)} /> : sf(unions.stripSf),
      note: overlap ? 'added up one by one, then opened once' : 'no spot is opened for two findings',
    },
    ...(unions.panelSf > 0
      ? [
          {
            name: 'Panel',
            value: <WasIs was={sf(naive.panelSf)} is={sf(unions.panelSf)} />,
            note: plural(unions.panelSheets, 'whole sheet'),
          },
          { name: 'Nails in the panel', value: formatNumber(unions.panelNails, 'en-US', 0) },
        ]
      : []),
    ...credits.map(({ title, hours }) => ({
      name: title,
      value: 'in the contract already',
      note: `${formatNumber(hours, 'en-US', 1)} hours not charged`,
    })),
  ];
  return (
    <Part title="Opened once">
      <Facts facts={facts} />
    </Part>
  );
}

function Shares({ plan }: { plan: PlaceScope }) {
  const { shares } = plan.scope;
  if (shares.length < 2) return null;
  const titleOf = new Map(plan.findings.map(({ id, number, title }) => [id, `${number}. ${title}`]));
  return (
    <Part title="What each finding brings" lead="Work that several need is divided; the shares add up to the whole.">
      <TableScroll label="What each finding brings">
        <table className="table">
          <thead>
            <tr>
              <th scope="col">Finding</th>
              <th scope="col" className="number">
                Hours alone
              </th>
              <th scope="col" className="number">
                Share here
              </th>
            </tr>
          </thead>
          <tbody>
            {shares.map(({ finding, aloneHours, shareHours }) => (
              <tr key={finding}>
                <td>{titleOf.get(finding)}</td>
                <td className="number">{formatNumber(aloneHours, 'en-US', 1)}</td>
                <td className="number">{formatNumber(shareHours, 'en-US', 1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableScroll>
    </Part>
  );
}
