import type { CapacityProposal, FindingRow, Location, Photo, Problem } from '@underlath/contract';
import { pounds } from '@underlath/rules/kernel';
import { useState } from 'react';
import { ExtentPicker } from '../../shared/drawing/extent-picker.tsx';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox, RadioGroup } from '../../shared/ui/choice.tsx';
import { FieldError, Select, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { stageWord } from '../desk/words.ts';
import { type DraftLink, type PathDraft, rolesOf } from './draft.ts';
import { roleWord } from './view.tsx';

/** What the links of this place may be tied to. */
export interface Known {
  findings: readonly FindingRow[];
  photos: readonly Photo[];
  capacities: readonly CapacityProposal[];
  place: Location;
}

/** What is wrong with these is shown while they are folded away, too. */
const hidden = ['at', 'tensionLb', 'leverFt', 'momentAboveFtLb', 'resistingFtLb', 'parts/opened', 'parts/bad'];

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

/** One link of the chain: what it is, what was seen of it, what it was meant to carry, where it is drawn. */
export function LinkForm({ link, pointer, draft, known, problem, onChange, onRemove }: LinkFormProps) {
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
            {more
              ? 'Less'
              : `Place on the drawing, ${link.role === 'hold-down' ? 'tension and moments, ' : ''}many like parts`}
          </Button>
          <Button look="quiet" onClick={onRemove}>
            Remove {link.name || 'this link'}
          </Button>
        </div>
        {more && <MoreOfLink link={link} place={known.place} error={error} set={set} />}
        {!more && (
          <FieldError id={`${link.key}-at`}>{hidden.map(error).find((found) => found !== undefined)}</FieldError>
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
  const amount = (
    name: 'tensionLb' | 'leverFt' | 'momentAboveFtLb' | 'resistingFtLb',
    label: string,
    hint?: string,
  ) => (
    <TextInput
      label={label}
      hint={hint}
      optional
      inputMode="decimal"
      value={link[name]}
      onChange={(value) => set({ [name]: value })}
      error={error(name)}
    />
  );
  return (
    <>
      {link.role === 'hold-down' && (
        <div className="form-pair">
          {amount('tensionLb', 'Tension it was meant for, lb')}
          {amount('leverFt', 'From the far end of the segment, ft')}
          {amount(
            'momentAboveFtLb',
            'Moment from the stories above, ft-lb',
            'From the engineer. Left empty, it follows from the line that stands on this one; without that it is “at most”.',
          )}
          {amount(
            'resistingFtLb',
            'Moment of the weight that keeps it down, ft-lb',
            'Already times its factor, as the engineer counts it.',
          )}
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
