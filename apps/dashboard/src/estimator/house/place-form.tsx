import { type BodyIn, type Location, type LocationKind, type Problem, routes } from '@underlath/contract';
import { type FormEvent, useId, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Elevation } from '../../shared/drawing/elevation.tsx';
import { MeasureInput } from '../../shared/measure/measure-input.tsx';
import { placeOptions, within } from '../../shared/places/place-tree.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { localProblem } from '../desk/numbers.ts';
import { useDraft } from '../desk/use-draft.ts';
import { kindOptions } from '../desk/words.ts';
import { type DraftOpening, OpeningsEditor } from './openings-editor.tsx';

type PlaceBody = Omit<BodyIn<typeof routes.createLocation>, 'id'>;

function draftOf(place: Location | null, parent: Location | null) {
  return {
    kind: place?.kind ?? ((parent ? (parent.kind === 'story' ? 'room' : 'wall') : 'story') as LocationKind),
    name: place?.name ?? '',
    parentId: place ? (place.parentId ?? '') : (parent?.id ?? ''),
    widthIn: place?.widthIn ?? null,
    heightIn: place?.heightIn ?? null,
    framingSpacingIn: place?.framingSpacingIn ?? null,
    memberDepthIn: place?.memberDepthIn ?? null,
    storiesAbove: String(place?.storiesAbove ?? parent?.storiesAbove ?? 0),
    existing: place?.existing ?? [],
    edgeNailSpacingIn: place?.edgeNailSpacingIn ?? null,
    fieldNailSpacingIn: place?.fieldNailSpacingIn ?? null,
    openings: (place?.openings ?? []).map((opening, at): DraftOpening => ({ ...opening, key: `${at}` })),
  };
}
type Draft = ReturnType<typeof draftOf>;

const drawnKinds = new Set<LocationKind>(['wall', 'floor', 'roof', 'beam-line']);

function readDraft(draft: Draft, position: number): { body: PlaceBody; problem: Problem | null } {
  const errors = [];
  if (draft.name.trim() === '') errors.push({ pointer: '/name', detail: 'The name is missing.' });
  const openings = draft.openings.map(({ key: _key, ...opening }, at) => {
    const { name, xIn, yIn, widthIn, heightIn } = opening;
    if (!name.trim() || xIn === null || yIn === null || widthIn === null || heightIn === null) {
      errors.push({ pointer: `/openings/${at}`, detail: `Opening ${at + 1} needs a name and all four measures.` });
    }
    return { name: name.trim(), xIn: xIn ?? 0, yIn: yIn ?? 0, widthIn: widthIn ?? 1, heightIn: heightIn ?? 1 };
  });
  const body: PlaceBody = {
    kind: draft.kind,
    name: draft.name.trim(),
    parentId: draft.parentId || null,
    position,
    widthIn: draft.widthIn,
    heightIn: draft.heightIn,
    framingSpacingIn: draft.framingSpacingIn,
    memberDepthIn: draft.memberDepthIn,
    storiesAbove: Number(draft.storiesAbove),
    existing: drawnKinds.has(draft.kind) ? draft.existing : [],
    edgeNailSpacingIn: draft.kind === 'wall' ? draft.edgeNailSpacingIn : null,
    fieldNailSpacingIn: draft.kind === 'wall' ? draft.fieldNailSpacingIn : null,
    openings: draft.kind === 'wall' ? openings : [],
  };
  return { body, problem: errors.length > 0 ? localProblem(errors) : null };
}

type PlaceDialogProps = {
  projectId: string;
  places: readonly Location[];
  /** The place to change, or null to add one inside `parent`. */
  place: Location | null;
  parent: Location | null;
  onClose: () => void;
  onSaved: (place: Location) => void;
};

/** Adds or changes a place: what it is, where it belongs, and what its drawing is made of. */
export function PlaceDialog({ projectId, places, place, parent, onClose, onSaved }: PlaceDialogProps) {
  const formId = useId();
  const announce = useAnnounce();
  const { draft, set } = useDraft(() => draftOf(place, parent));
  const [local, setLocal] = useState<Problem | null>(null);
  const after = {
    invalidates: [routes.listLocations, routes.projectOverview],
    onDone: (saved: Location) => {
      announce(`Saved: ${saved.name}`);
      onSaved(saved);
    },
  };
  const create = useChange(routes.createLocation, after);
  const change = useChange(routes.changeLocation, after);
  const failed = create.error ?? change.error;
  const problem = local ?? (failed ? problemOf(failed) : null);
  const nextPosition = places.filter((each) => each.parentId === (draft.parentId || null)).length;
  function submit(event: FormEvent) {
    event.preventDefault();
    const read = readDraft(draft, place?.position ?? nextPosition);
    setLocal(read.problem);
    if (read.problem) return;
    if (place) change.mutate({ params: { locationId: place.id }, body: read.body, ifMatch: place.version });
    else create.mutate({ params: { projectId }, body: read.body });
  }
  return (
    <Dialog
      open
      title={place ? `Change ${place.name}` : 'Add a place'}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="go" type="submit" form={formId} busy={create.isPending || change.isPending}>
            Save the place
          </Button>
        </>
      }
    >
      <form id={formId} className="stack" onSubmit={submit} noValidate>
        <div className="form-pair">
          <Select
            label="What it is"
            options={kindOptions}
            value={draft.kind}
            onChange={(value) => set('kind')(value as LocationKind)}
            error={errorAt(problem, '/kind')}
          />
          <TextInput
            label="Name"
            hint="As people on the site call it: East wall."
            value={draft.name}
            onChange={set('name')}
            error={errorAt(problem, '/name')}
          />
        </div>
        <div className="form-pair">
          <Select
            label="Inside of"
            options={placeOptions(places, place ? within(place.id, places) : undefined)}
            emptyLabel="the house itself"
            value={draft.parentId}
            onChange={set('parentId')}
            error={errorAt(problem, '/parentId')}
          />
          <Select
            label="Full stories above it"
            hint="The roof is not a story."
            options={['0', '1', '2', '3', '4'].map((value) => ({ value, label: value }))}
            value={draft.storiesAbove}
            onChange={set('storiesAbove')}
            error={errorAt(problem, '/storiesAbove')}
          />
        </div>
        {drawnKinds.has(draft.kind) && <Sizes draft={draft} set={set} problem={problem} />}
        {drawnKinds.has(draft.kind) && <RepairFacts draft={draft} set={set} problem={problem} />}
        {draft.kind === 'wall' && (
          <OpeningsEditor openings={draft.openings} onChange={set('openings')} problem={problem} />
        )}
        {drawnKinds.has(draft.kind) && <DraftDrawing draft={draft} />}
        <FormFail problem={problem} doing="Saving the place" />
      </form>
    </Dialog>
  );
}

type SizesProps = { draft: Draft; set: ReturnType<typeof useDraft<Draft>>['set']; problem: Problem | null };

function Sizes({ draft, set, problem }: SizesProps) {
  const isWall = draft.kind === 'wall';
  const across = isWall ? 'Length of the wall' : draft.kind === 'beam-line' ? 'Length of the beam line' : 'Width';
  return (
    <fieldset className="form-group form-group-plain">
      <legend>Its drawing</legend>
      <div className="form-pair">
        <MeasureInput
          label={across}
          optional
          value={draft.widthIn}
          onChange={set('widthIn')}
          min={1}
          max={2400}
          error={errorAt(problem, '/widthIn')}
        />
        <MeasureInput
          label={draft.kind === 'floor' || draft.kind === 'roof' ? 'Length along the joists' : 'Height'}
          optional
          value={draft.heightIn}
          onChange={set('heightIn')}
          min={1}
          max={2400}
          error={errorAt(problem, '/heightIn')}
        />
        <MeasureInput
          label={isWall ? 'Stud spacing, on center' : 'Joist spacing, on center'}
          optional
          value={draft.framingSpacingIn}
          onChange={set('framingSpacingIn')}
          min={4}
          max={96}
          error={errorAt(problem, '/framingSpacingIn')}
        />
        <MeasureInput
          label={isWall ? 'Stud depth' : 'Member depth'}
          optional
          value={draft.memberDepthIn}
          onChange={set('memberDepthIn')}
          min={0.5}
          max={48}
          error={errorAt(problem, '/memberDepthIn')}
        />
      </div>
    </fieldset>
  );
}

const existingWords: Record<Location['existing'][number], string> = {
  protected: 'Floors and contents are protected',
  stripped: 'The finish is taken off',
  shored: 'It is shored',
  closed: 'The finish is closed again',
  hauled: 'The debris is hauled',
  inspected: 'The inspection before cover is called',
};

/** What a repair here is counted with: work that the contract has already, and the approved nails of a wall. */
function RepairFacts({ draft, set, problem }: SizesProps) {
  const has = (word: Location['existing'][number]) => draft.existing.includes(word);
  return (
    <fieldset className="form-group form-group-plain">
      <legend>In the contract already</legend>
      <p className="soft small">What is ticked is not charged again when something is repaired here.</p>
      {Object.entries(existingWords).map(([key, label]) => {
        const word = key as Location['existing'][number];
        return (
          <Checkbox
            key={word}
            label={label}
            checked={has(word)}
            onChange={(checked) =>
              set('existing')([...draft.existing.filter((one) => one !== word), ...(checked ? [word] : [])])
            }
          />
        );
      })}
      {draft.kind === 'wall' && (
        <div className="form-pair">
          <MeasureInput
            label="Approved nails, panel edges"
            optional
            value={draft.edgeNailSpacingIn}
            onChange={set('edgeNailSpacingIn')}
            min={1}
            max={24}
            error={errorAt(problem, '/edgeNailSpacingIn')}
          />
          <MeasureInput
            label="Approved nails, studs between"
            optional
            value={draft.fieldNailSpacingIn}
            onChange={set('fieldNailSpacingIn')}
            min={1}
            max={24}
            error={errorAt(problem, '/fieldNailSpacingIn')}
          />
        </div>
      )}
    </fieldset>
  );
}

/** What is typed, drawn at once: a wrong digit shows as a wrong wall. */
function DraftDrawing({ draft }: { draft: Draft }) {
  const openings = draft.openings.flatMap(({ name, xIn, yIn, widthIn, heightIn }) =>
    xIn === null || yIn === null || widthIn === null || heightIn === null
      ? []
      : [{ name, xIn, yIn, widthIn, heightIn }],
  );
  return (
    <Elevation
      place={{ ...draft, name: draft.name || 'New place', openings: draft.kind === 'wall' ? openings : [] }}
      maxHeightPx={260}
    />
  );
}
