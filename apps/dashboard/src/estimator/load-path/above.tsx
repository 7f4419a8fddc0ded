import { type Location, type Problem, routes } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import type { PathDraft } from './draft.ts';

type LineAboveProps = {
  draft: PathDraft;
  place: Location;
  problem: Problem | null;
  set: (part: Pick<PathDraft, 'lineAboveId'> | Pick<PathDraft, 'floorDepthIn'>) => void;
};

/** Says which wall line stands on this one: its moment lifts the hold-downs here. Asked only where a story stands above. */
export function LineAboveFields({ draft, place, problem, set }: LineAboveProps) {
  const { lineAboveId, floorDepthIn } = draft;
  const stories = draft.storiesAbove ?? place.storiesAbove;
  const asked = draft.kind === 'wall-line' && (stories > 0 || lineAboveId !== '');
  const lines = useRoute(routes.listLinesAbove, asked ? { params: { locationId: place.id } } : null);
  if (!asked) return null;
  const choices = lines.data?.items ?? [];
  const offered = lineAboveId ? [] : choices.filter(({ fits }) => fits);
  return (
    <fieldset className="segment-form">
      <legend>What stands on this line</legend>
      <p>
        {stories > 1 ? `${stories} stories stand above.` : 'A story stands above.'} What it carries lifts the hold-downs
        here too. Until that moment is known, what they hold is “at most”.
      </p>
      {offered.map(({ loadPathId, name, place: wall }) => (
        <p key={loadPathId}>
          <Button look="quiet" onClick={() => set({ lineAboveId: loadPathId })}>
            {`“${name}” stands on this line`}
          </Button>{' '}
          <span className="soft">{wall} is as wide and one story higher.</span>
        </p>
      ))}
      {choices.length > 0 ? (
        <div className="form-pair">
          <Select
            label="The line that stands on this one"
            hint="Its load times its height gives the moment, with what stands on it in turn."
            optional
            emptyLabel="nobody said"
            options={choices.map(({ loadPathId, name, place: wall, demandLb }) => ({
              value: loadPathId,
              label: `${name}, ${wall}${demandLb === null ? ': no load yet' : ''}`,
            }))}
            value={lineAboveId}
            onChange={(chosen) => set({ lineAboveId: chosen })}
            error={errorAt(problem, '/lineAbove/loadPathId')}
          />
          {lineAboveId && (
            <TextInput
              label="Floor between the two, in"
              hint="From the top of the plates here to the plate above: joists and sheathing."
              inputMode="decimal"
              value={floorDepthIn}
              onChange={(typed) => set({ floorDepthIn: typed })}
              error={errorAt(problem, '/lineAbove/floorDepthIn')}
            />
          )}
        </div>
      ) : (
        lines.data && (
          <p className="soft">
            No wall line is described at another place of this house yet. Describe the one above, or type the engineer’s
            moment at each hold-down.
          </p>
        )
      )}
    </fieldset>
  );
}
