import {
  type BodyIn,
  type Problem,
  type Project,
  type routes,
  US_STATES,
  zoneOfSite,
  zonesOf,
} from '@underlath/contract';
import { editionFamilies } from '@underlath/rules';
import { type FormEvent, type ReactNode, useState } from 'react';
import { useAllChecks } from '../../shared/measure/use-check.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { errorAt, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { dayKinds } from '../contract/terms-form.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Reader, readDollars, readNumber, writeDollars, writeNumber } from '../desk/numbers.ts';
import { useDraft } from '../desk/use-draft.ts';
import { codeEditionWords } from '../desk/words.ts';

export type ProjectBody = Omit<BodyIn<typeof routes.createProject>, 'id'>;

function draftOf(project: Project | null) {
  return {
    name: project?.name ?? '',
    siteAddress: project?.siteAddress ?? '',
    siteState: project?.siteState ?? '',
    timeZone: project?.timeZone ?? '',
    yearBuilt: writeNumber(project?.yearBuilt),
    stories: writeNumber(project?.stories),
    clientName: project?.clientName ?? '',
    clientEmail: project?.clientEmail ?? '',
    clientLocale: project?.clientLocale ?? 'en',
    originalSum: writeDollars(project?.originalSumCents ?? null),
    originalDays: writeNumber(project?.originalDays),
    dayKind: '',
    startOn: project?.startOn ?? '',
    contingency: writeDollars(project?.contingencyCents ?? null),
    codeEdition: project?.codeEdition ?? '',
    jurisdiction: project?.jurisdiction ?? '',
    standardEditions: project?.standardEditions ?? ([] as readonly string[]),
  };
}
type Draft = ReturnType<typeof draftOf>;

const stateOptions = Object.entries(US_STATES)
  .map(([value, label]) => ({ value, label }))
  .toSorted((a, b) => a.label.localeCompare(b.label));

/** `Eastern Time`, in the words of the trade and not of the database. */
const zoneName = (timeZone: string): string =>
  new Intl.DateTimeFormat('en-US', { timeZone, timeZoneName: 'longGeneric' })
    .formatToParts(new Date())
    .find(({ type }) => type === 'timeZoneName')?.value ?? timeZone;

const zoneOptions = (state: string) =>
  zonesOf(state).map(({ timeZone, where }) => ({ value: timeZone, label: `${zoneName(timeZone)}: ${where}` }));

const dollarsAllowed = 'type dollars, like 184,200';

function readDraft(draft: Draft, isNew: boolean): { body: ProjectBody; problem: Problem | null } {
  const reader = new Reader();
  const body: ProjectBody = {
    name: reader.need('/name', draft.name, 'The name of the site'),
    siteAddress: reader.need('/siteAddress', draft.siteAddress, 'The address'),
    siteState: (draft.siteState || null) as NonNullable<ProjectBody['siteState']> | null,
    timeZone:
      zoneOptions(draft.siteState).length > 1
        ? reader.need('/timeZone', zoneOfSite(draft.siteState, draft.timeZone) ?? '', 'The time zone')
        : null,
    yearBuilt: reader.number('/yearBuilt', readNumber(draft.yearBuilt), draft.yearBuilt, 'type a year, like 1938'),
    stories: reader.neededNumber('/stories', readNumber(draft.stories), draft.stories, 'choose 1 to 4'),
    clientName: reader.need('/clientName', draft.clientName, 'The client’s name'),
    clientEmail: draft.clientEmail.trim() || null,
    clientLocale: draft.clientLocale,
    originalSumCents: reader.neededNumber(
      '/originalSumCents',
      readDollars(draft.originalSum),
      draft.originalSum,
      dollarsAllowed,
    ),
    originalDays: reader.neededNumber(
      '/originalDays',
      readNumber(draft.originalDays),
      draft.originalDays,
      'type whole days',
    ),
    ...(isNew && {
      dayKind: reader.need('/dayKind', draft.dayKind, 'The kind of days') as NonNullable<ProjectBody['dayKind']>,
    }),
    startOn: draft.startOn || null,
    contingencyCents:
      reader.number('/contingencyCents', readDollars(draft.contingency), draft.contingency, dollarsAllowed) ?? 0,
    codeEdition: reader.need('/codeEdition', draft.codeEdition, 'The code edition') as ProjectBody['codeEdition'],
    jurisdiction: reader.need('/jurisdiction', draft.jurisdiction, 'The jurisdiction'),
    standardEditions: [...draft.standardEditions],
  };
  return { body, problem: reader.problem };
}

/** Only these are sent as a change, so that another person's change to the rest stays. */
function differing(body: ProjectBody, began: ProjectBody): Partial<ProjectBody> {
  const names = Object.keys(body) as (keyof ProjectBody)[];
  const differs = (name: keyof ProjectBody) => JSON.stringify(body[name]) !== JSON.stringify(began[name]);
  return Object.fromEntries(names.filter(differs).map((name) => [name, body[name]]));
}

type ProjectFormProps = {
  project: Project | null;
  busy: boolean;
  problem: Problem | null;
  doing: string;
  submitLabel: string;
  /** All of it, and the part that differs from what the form began with. */
  onSubmit: (body: ProjectBody, changed: Partial<ProjectBody>) => void;
  /** Beside the submit button. */
  children?: ReactNode;
};

/** Every field of a project, in the order in which it is known: house, client, contract, code. */
export function ProjectForm({ project, busy, problem, doing, submitLabel, onSubmit, children }: ProjectFormProps) {
  const { draft, set } = useDraft(() => draftOf(project));
  const [began] = useState(() => readDraft(draft, project === null).body);
  const [local, setLocal] = useState<Problem | null>(null);
  const shown = local ?? problem;
  function submit(event: FormEvent) {
    event.preventDefault();
    const read = readDraft(draft, project === null);
    setLocal(read.problem);
    if (!read.problem) onSubmit(read.body, differing(read.body, began));
  }
  const field = <K extends keyof Draft>(name: K, pointer: string) => ({
    value: draft[name],
    onChange: set(name) as (value: string) => void,
    error: errorAt(shown, pointer),
  });
  return (
    <form className="form" onSubmit={submit} noValidate>
      <fieldset className="form-group">
        <legend>The house</legend>
        <TextInput
          label="Name of the site"
          hint="Short; it stands at the top of every screen."
          {...field('name', '/name')}
        />
        <TextInput label="Site address" autoComplete="off" {...field('siteAddress', '/siteAddress')} />
        <Select
          label="State"
          optional
          emptyLabel="Not set"
          hint="A change order is held against what is known of this state’s rules before it is sent, and the days of letters and notices are told by its clock. Not set, they are told in UTC or by a phone’s clock, and say so."
          options={stateOptions}
          {...field('siteState', '/siteState')}
        />
        {zoneOptions(draft.siteState).length > 1 && (
          <Select
            label="Time zone"
            emptyLabel="Choose one"
            hint="This state keeps two clocks. A signature at night is of the day that it is at the house."
            options={zoneOptions(draft.siteState)}
            {...field('timeZone', '/timeZone')}
          />
        )}
        <div className="form-pair">
          <TextInput
            label="Year built"
            optional
            inputMode="numeric"
            hint="Not known is treated as old: lead and asbestos are then assumed possible."
            {...field('yearBuilt', '/yearBuilt')}
          />
          <Select
            label="Stories"
            options={['1', '2', '3', '4'].map((value) => ({ value, label: value }))}
            {...field('stories', '/stories')}
          />
        </div>
      </fieldset>
      <fieldset className="form-group">
        <legend>The client</legend>
        <TextInput label="Name" autoComplete="off" {...field('clientName', '/clientName')} />
        <div className="form-pair">
          <TextInput
            label="E-mail"
            optional
            type="email"
            autoComplete="off"
            hint="Change orders are mailed there; without it you hand over the link yourself."
            {...field('clientEmail', '/clientEmail')}
          />
          <Select
            label="Preferred language"
            options={[
              { value: 'en', label: 'English' },
              { value: 'es', label: 'Spanish' },
            ]}
            {...field('clientLocale', '/clientLocale')}
          />
        </div>
      </fieldset>
      <fieldset className="form-group">
        <legend>The contract</legend>
        <div className="form-pair">
          <TextInput
            label="Original contract sum, dollars"
            inputMode="decimal"
            className="number"
            {...field('originalSum', '/originalSumCents')}
          />
          <TextInput
            label="Contingency the client set aside, dollars"
            inputMode="decimal"
            className="number"
            optional
            {...field('contingency', '/contingencyCents')}
          />
        </div>
        <div className="form-pair">
          <TextInput
            label="Contract time, days"
            inputMode="numeric"
            className="number"
            {...field('originalDays', '/originalDays')}
          />
          {project === null && (
            <Select
              label="These days are"
              emptyLabel="As the contract says"
              hint="Many home contracts mean calendar days. It can be changed in the terms."
              options={dayKinds}
              {...field('dayKind', '/dayKind')}
            />
          )}
        </div>
        <TextInput
          label="Start"
          type="date"
          optional
          className="input-short"
          hint="This day is not counted; the day after it is day 1."
          {...field('startOn', '/startOn')}
        />
      </fieldset>
      <fieldset className="form-group">
        <legend>Building code</legend>
        <div className="form-pair">
          <Select label="Code edition" options={codeEditionWords} {...field('codeEdition', '/codeEdition')} />
          <TextInput
            label="Jurisdiction"
            hint="City or county that inspects. Local amendments govern."
            {...field('jurisdiction', '/jurisdiction')}
          />
        </div>
        <StandardEditions chosen={draft.standardEditions} onChange={set('standardEditions')} problem={shown} />
      </fieldset>
      <FormFail problem={shown} doing={doing} />
      <div className="row form-foot">
        <Button type="submit" look="go" busy={busy}>
          {submitLabel}
        </Button>
        {children}
      </div>
    </form>
  );
}

type StandardEditionsProps = {
  chosen: readonly string[];
  onChange: (chosen: readonly string[]) => void;
  problem: Problem | null;
};

/** Which edition of each standard the jurisdiction uses; left open, a check takes its own default and says so. */
function StandardEditions({ chosen, onChange, problem }: StandardEditionsProps) {
  const { checks, failed, retry } = useAllChecks();
  if (failed)
    return (
      <FailState
        problem={{
          title: 'The list of standards could not be read',
          detail: 'The rest of this form works without it.',
        }}
        doing="Reading the standards"
        onRetry={retry}
      />
    );
  if (!checks) return <LoadingRows rows={2} />;
  // The codes are chosen above; these are the standards they refer to.
  const standards = editionFamilies(checks).filter(({ id }) => id !== 'irc' && id !== 'ibc');
  return standards.map(({ id, editions }) => {
    const of = (edition: string) => editions.some((each) => each.id === edition);
    return (
      <Select
        key={id}
        label={`${id.toUpperCase()} edition`}
        hint="The one your jurisdiction adopted. Without one, each check says which it used."
        options={[
          { value: '', label: "Use each check's default" },
          ...editions.map((each) => ({ value: each.id, label: each.title.en })),
        ]}
        value={chosen.find(of) ?? ''}
        onChange={(value) => onChange([...chosen.filter((each) => !of(each)), ...(value ? [value] : [])])}
        error={errorAt(problem, '/standardEditions')}
      />
    );
  });
}
