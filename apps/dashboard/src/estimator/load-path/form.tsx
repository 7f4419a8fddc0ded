import { type FindingRow, type Location, type Problem, routes, type StoredLoadPath } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, usePages, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { useProjectId } from '../project/project-frame.tsx';
import { LineAboveFields } from './above.tsx';
import {
  type DraftLink,
  type DraftSegment,
  draftOfPath,
  emptyPath,
  newLink,
  type PathDraft,
  readPath,
  rolesOf,
} from './draft.ts';
import { type Known, LinkForm } from './link-form.tsx';
import { NotListed } from './not-listed.tsx';
import { kindOfLine } from './view.tsx';

type LoadPathFormProps = {
  place: Location;
  /** The line to change, or the kind of a new one. */
  path: StoredLoadPath | null;
  kind: StoredLoadPath['kind'];
  findings: readonly FindingRow[];
  onClose: () => void;
};

/** Describes a line as a chain: its links, what was seen of each, what each was meant to carry. */
export function LoadPathForm({ place, path, kind, findings, onClose }: LoadPathFormProps) {
  const projectId = useProjectId();
  const announce = useAnnounce();
  const [draft, setDraft] = useState<PathDraft>(() => (path ? draftOfPath(path) : emptyPath(kind, place)));
  const [local, setLocal] = useState<Problem | null>(null);
  const photos = usePages(routes.listPhotos, { params: { projectId }, query: { locationId: place.id, limit: 200 } });
  const capacities = useRoute(routes.listCapacities, { params: { locationId: place.id } });
  const known: Known = { findings, photos: photos.items, capacities: capacities.data?.items ?? [], place };
  const after = {
    invalidates: [routes.listLoadPaths, routes.getLoadPath],
    onDone: (saved: StoredLoadPath) => {
      announce(`Saved: ${saved.name}. ${saved.answer.reasons[0] ?? ''}`);
      onClose();
    },
  };
  const create = useChange(routes.createLoadPath, after);
  const change = useChange(routes.changeLoadPath, after);
  const failed = create.error ?? change.error;
  const problem = local ?? (failed ? problemOf(failed) : null);
  const set = (part: Partial<PathDraft>) => setDraft((before) => ({ ...before, ...part }));
  const setSegment = (key: string, next: DraftSegment) =>
    set({ segments: draft.segments.map((one) => (one.key === key ? next : one)) });
  function submit(event: FormEvent) {
    event.preventDefault();
    const { body, reader } = readPath(draft);
    setLocal(reader.problem);
    if (reader.problem) return;
    if (path) change.mutate({ params: { loadPathId: path.id }, body, ifMatch: path.version });
    else create.mutate({ params: { locationId: place.id }, body });
  }
  const addSegment = () =>
    set({
      segments: [
        ...draft.segments,
        ...emptyPath(draft.kind, place).segments.map((one) => ({
          ...one,
          name: `Segment ${draft.segments.length + 1}`,
          fromIn: null,
          lengthFt: '',
          links: one.links.map((link) => ({ ...link, at: null })),
        })),
      ],
    });
  return (
    <form className="form path-form" onSubmit={submit} noValidate>
      <div className="form-pair">
        <TextInput
          label={`Name of the ${kindOfLine[draft.kind].toLowerCase()}`}
          value={draft.name}
          onChange={(name) => set({ name })}
          error={errorAt(problem, '/name')}
        />
        <TextInput
          label="Load on the line, lb"
          hint="From the engineer, if there is one."
          optional
          inputMode="decimal"
          value={draft.demandLb}
          onChange={(demandLb) => set({ demandLb })}
          error={errorAt(problem, '/demandLb')}
        />
      </div>
      <TextInput
        label="Where these loads and strengths come from"
        hint="The sheet of the drawings, the engineer’s letter."
        optional
        maxLength={200}
        value={draft.capacitiesFrom}
        onChange={(capacitiesFrom) => set({ capacitiesFrom })}
        error={errorAt(problem, '/capacitiesFrom')}
      />
      <LineAboveFields draft={draft} place={place} problem={problem} set={set} />
      {draft.segments.map((segment, at) => (
        <SegmentForm
          key={segment.key}
          segment={segment}
          at={at}
          draft={draft}
          known={known}
          problem={problem}
          onChange={(next) => setSegment(segment.key, next)}
          onRemove={() => set({ segments: draft.segments.filter((one) => one.key !== segment.key) })}
        />
      ))}
      {draft.kind !== 'gravity-line' && (
        <p>
          <Button onClick={addSegment}>Add a segment side by side</Button>
        </p>
      )}
      <FormFail problem={problem} doing="Saving the load path" />
      <div className="row form-foot">
        <Button type="submit" look="go" busy={create.isPending || change.isPending}>
          Save the load path
        </Button>
        <Button onClick={onClose}>Cancel</Button>
      </div>
    </form>
  );
}

type SegmentFormProps = {
  segment: DraftSegment;
  at: number;
  draft: PathDraft;
  known: Known;
  problem: Problem | null;
  onChange: (segment: DraftSegment) => void;
  onRemove: () => void;
};

function SegmentForm({ segment, at, draft, known, problem, onChange, onRemove }: SegmentFormProps) {
  const here = `/segments/${at}`;
  const set = (part: Partial<DraftSegment>) => onChange({ ...segment, ...part });
  const setLink = (key: string, next: DraftLink) =>
    set({ links: segment.links.map((one) => (one.key === key ? next : one)) });
  const [first = 'member'] = rolesOf(draft.kind);
  return (
    <fieldset className="segment-form">
      <legend>{draft.segments.length > 1 ? `Segment ${at + 1}` : 'The chain'}</legend>
      <div className="form-pair">
        <TextInput
          label="Name"
          value={segment.name}
          onChange={(name) => set({ name })}
          error={errorAt(problem, `${here}/name`)}
        />
        {draft.kind === 'wall-line' && (
          <>
            <TextInput
              label="Length, ft"
              optional
              inputMode="decimal"
              value={segment.lengthFt}
              onChange={(lengthFt) => set({ lengthFt })}
              error={errorAt(problem, `${here}/lengthFt`) ?? errorAt(problem, `${here}/fromIn`)}
            />
            <TextInput
              label="Height, ft"
              optional
              inputMode="decimal"
              value={segment.heightFt}
              onChange={(heightFt) => set({ heightFt })}
              error={errorAt(problem, `${here}/heightFt`)}
            />
          </>
        )}
      </div>
      {segment.links.map((link, part) => (
        <LinkForm
          key={link.key}
          link={link}
          pointer={`${here}/links/${part}`}
          draft={draft}
          known={known}
          problem={problem}
          onChange={(next) => setLink(link.key, next)}
          onRemove={() => set({ links: segment.links.filter((one) => one.key !== link.key) })}
        />
      ))}
      <NotListed
        kind={draft.kind}
        segment={segment}
        error={errorAt(problem, `${here}/without/0`)}
        onAdd={(role, name) => set({ links: [...segment.links, newLink(role, name)] })}
        onWithout={(without) => set({ without })}
      />
      <div className="row">
        <Button onClick={() => set({ links: [...segment.links, newLink(first, `Link ${segment.links.length + 1}`)] })}>
          Add a link
        </Button>
        {draft.segments.length > 1 && (
          <Button look="quiet" onClick={onRemove}>
            Remove this segment
          </Button>
        )}
      </div>
    </fieldset>
  );
}
