import {
  type CapacityProposal,
  type FindingRow,
  type Location,
  type Photo,
  type Problem,
  routes,
  type StoredLoadPath,
} from '@underlath/contract';
import { pounds } from '@underlath/rules/kernel';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, usePages, useRoute } from '../../shared/api/hooks.ts';
import { ExtentPicker } from '../../shared/drawing/extent-picker.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox, RadioGroup } from '../../shared/ui/choice.tsx';
import { FieldError, Select, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useStatus } from '../../shared/ui/status.tsx';
import { FormFail } from './form-fail.tsx';
import {
  type DraftLink,
  type DraftSegment,
  draftOfPath,
  emptyPath,
  newLink,
  type PathDraft,
  readPath,
  rolesOf,
} from './load-path-draft.ts';
import { kindOfLine, roleWord } from './load-path-view.tsx';
import { useProjectId } from './project-frame.tsx';
import { stageWord } from './words.ts';

type LoadPathFormProps = {
  place: Location;
  /** The line to change, or the kind of a new one. */
  path: StoredLoadPath | null;
  kind: StoredLoadPath['kind'];
  findings: readonly FindingRow[];
  onClose: () => void;
};

/** What the links of this place may be tied to. */
interface Known {
  findings: readonly FindingRow[];
  photos: readonly Photo[];
  capacities: readonly CapacityProposal[];
  place: Location;
}

/** Describes a line as a chain: its links, what was seen of each, what each was meant to carry. */
export function LoadPathForm({ place, path, kind, findings, onClose }: LoadPathFormProps) {
  const projectId = useProjectId();
  const say = useStatus();
  const [draft, setDraft] = useState<PathDraft>(() => (path ? draftOfPath(path) : emptyPath(kind, place)));
  const [local, setLocal] = useState<Problem | null>(null);
  const photos = usePages(routes.listPhotos, { params: { projectId }, query: { locationId: place.id, limit: 200 } });
  const capacities = useRoute(routes.listCapacities, { params: { locationId: place.id } });
  const known: Known = { findings, photos: photos.items, capacities: capacities.data?.items ?? [], place };
  const after = {
    invalidates: [routes.listLoadPaths, routes.getLoadPath],
    onDone: (saved: StoredLoadPath) => {
      say(`Saved: ${saved.name}. ${saved.answer.reasons[0] ?? ''}`);
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

const states = [
  { value: 'unseen', label: 'Not seen' },
  { value: 'sound', label: 'Seen sound' },
  { value: 'findings', label: 'Has findings' },
] as const;

type LinkFormProps = {
  link: DraftLink;
  pointer: string;
  draft: PathDraft;
  known: Known;
  problem: Problem | null;
  onChange: (link: DraftLink) => void;
  onRemove: () => void;
};

function LinkForm({ link, pointer, draft, known, problem, onChange, onRemove }: LinkFormProps) {
  const [more, setMore] = useState(false);
  const set = (part: Partial<DraftLink>) => onChange({ ...link, ...part });
  const error = (name: string) => errorAt(problem, `${pointer}/${name}`);
  const offered = known.capacities.filter(({ role }) => role === link.role);
  return (
    <div className="link-form">
      <TextInput label="Link" value={link.name} onChange={(name) => set({ name })} error={error('name')} />
      <Select
        label="Kind"
        options={rolesOf(draft.kind).map((value) => ({ value, label: roleWord(value) }))}
        value={link.role}
        onChange={(role) => set({ role: role as DraftLink['role'] })}
        error={error('role')}
      />
      <TextInput
        label="Meant to carry, lb"
        optional
        inputMode="decimal"
        value={link.intendedLb}
        onChange={(intendedLb) => set({ intendedLb })}
        error={error('intendedLb')}
      />
      <div className="link-wide">
        <RadioGroup
          label={`What was seen of ${link.name || 'it'}`}
          layout="row"
          options={states}
          value={link.state}
          onChange={(state) => set({ state })}
          error={error('state')}
        />
        {link.state === 'sound' && <SoundPhoto link={link} photos={known.photos} error={error('photoId')} set={set} />}
        {link.state === 'findings' && <LinkFindings link={link} known={known} error={error('findingIds')} set={set} />}
        {offered.map(({ findingId, number, intendedLb, why }) => (
          <p key={findingId}>
            <Button look="quiet" onClick={() => set({ intendedLb: String(Math.round(intendedLb)) })}>
              Take {pounds(intendedLb)} from finding {number}
            </Button>{' '}
            <span className="soft">{why}</span>
          </p>
        ))}
        <div className="row">
          <Button look="quiet" onClick={() => setMore(!more)}>
            {more ? 'Less' : `Place on the drawing, ${link.role === 'hold-down' ? 'tension, ' : ''}many like parts`}
          </Button>
          <Button look="quiet" onClick={onRemove}>
            Remove {link.name || 'this link'}
          </Button>
        </div>
        {more && <MoreOfLink link={link} place={known.place} error={error} set={set} />}
        {!more && (
          <FieldError id={`${link.key}-at`}>
            {error('at') ?? error('tensionLb') ?? error('leverFt') ?? error('parts/opened') ?? error('parts/bad')}
          </FieldError>
        )}
      </div>
    </div>
  );
}

type PartOfLinkProps = { link: DraftLink; error: string | undefined; set: (part: Partial<DraftLink>) => void };

function SoundPhoto({ link, photos, error, set }: PartOfLinkProps & { photos: readonly Photo[] }) {
  if (photos.length === 0)
    return (
      <p className="field-error" role="alert">
        {error ??
          'There is no photo of this place yet. A link counts as sound only with one: add it on the place first.'}
      </p>
    );
  return (
    <Select
      label="The photo that shows it"
      emptyLabel="choose a photo"
      options={photos.map(({ id, stage, caption }, at) => ({
        value: id,
        label: `${at + 1}. ${stageWord(stage)}${caption ? `: ${caption}` : ''}`,
      }))}
      value={link.photoId}
      onChange={(photoId) => set({ photoId })}
      error={error}
    />
  );
}

function LinkFindings({ link, known, error, set }: PartOfLinkProps & { known: Known }) {
  const open = known.findings.filter(({ state }) => state !== 'withdrawn');
  return (
    <fieldset className="field" aria-describedby={`${link.key}-findings`}>
      <legend className="field-label">Its findings</legend>
      {open.length === 0 && <p className="soft">Nothing was recorded at this place yet.</p>}
      {open.map(({ id, number, title }) => (
        <Checkbox
          key={id}
          label={`${number}. ${title}`}
          checked={link.findingIds.includes(id)}
          onChange={(on) =>
            set({ findingIds: on ? [...link.findingIds, id] : link.findingIds.filter((one) => one !== id) })
          }
        />
      ))}
      <FieldError id={`${link.key}-findings`}>{error}</FieldError>
    </fieldset>
  );
}

type MoreProps = {
  link: DraftLink;
  place: Location;
  error: (name: string) => string | undefined;
  set: PartOfLinkProps['set'];
};

function MoreOfLink({ link, place, error, set }: MoreProps) {
  const part = (name: keyof DraftLink['parts'], label: string) => (
    <TextInput
      label={label}
      optional
      inputMode="numeric"
      value={link.parts[name]}
      onChange={(value) => set({ parts: { ...link.parts, [name]: value } })}
      error={error(`parts/${name}`)}
    />
  );
  return (
    <>
      {link.role === 'hold-down' && (
        <div className="form-pair">
          <TextInput
            label="Tension it was meant for, lb"
            optional
            inputMode="decimal"
            value={link.tensionLb}
            onChange={(tensionLb) => set({ tensionLb })}
            error={error('tensionLb')}
          />
          <TextInput
            label="From the far end of the segment, ft"
            optional
            inputMode="decimal"
            value={link.leverFt}
            onChange={(leverFt) => set({ leverFt })}
            error={error('leverFt')}
          />
        </div>
      )}
      <div className="form-pair">
        {part('total', 'Like parts in all')}
        {part('opened', 'Opened')}
        {part('bad', 'Bad among them')}
      </div>
      <ExtentPicker place={place} value={link.at} onChange={(at) => set({ at })} maxHeightPx={260} />
      <FieldError id={`${link.key}-where`}>{error('at')}</FieldError>
    </>
  );
}
