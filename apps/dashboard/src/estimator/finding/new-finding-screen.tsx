import { useNavigate, useSearch } from '@tanstack/react-router';
import { type FindingContext, type Location, type Rectangle, routes } from '@underlath/contract';
import { checkEntries, checksByElement, editionUnder } from '@underlath/rules';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { CheckPicture } from '../../shared/drawing/check-picture.tsx';
import { ExtentPicker } from '../../shared/drawing/extent-picker.tsx';
import { CheckForm } from '../../shared/measure/check-form.tsx';
import { ContextForm } from '../../shared/measure/context-form.tsx';
import { editionsOf } from '../../shared/measure/editions.ts';
import { askedInputs, type Inputs } from '../../shared/measure/form.ts';
import { useCheck } from '../../shared/measure/use-check.ts';
import { WithCheck } from '../../shared/measure/with-check.tsx';
import { placeOptions } from '../../shared/places/place-tree.ts';
import { Button } from '../../shared/ui/button.tsx';
import { RadioGroup } from '../../shared/ui/choice.tsx';
import { FieldError, Select, TextArea, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { localProblem } from '../desk/numbers.ts';
import { Page, Part } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { useDraft } from '../desk/use-draft.ts';
import { PhotoAdder } from '../photos/adder.tsx';
import { useOverview, useProjectId } from '../project/project-frame.tsx';
import { inputErrors, REFUSED_MEASUREMENT } from './input-errors.ts';
import { findingReads } from './moves.tsx';

/** A finding entered at the desk: where, what it is, how big, and photos if there are any. */
export function NewFindingScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const places = useRoute(routes.listLocations, { params: { projectId } });
  return (
    <Page title="New finding" of={overview.data?.project.name}>
      <Reading query={places} doing="Reading the places" rows={6}>
        {({ items }) => <NewFinding places={items} editions={editionsOf(overview.data?.project)} />}
      </Reading>
    </Page>
  );
}

function emptyDraft(locationId: string) {
  return {
    locationId,
    checkId: '',
    title: '',
    note: '',
    extent: null as Rectangle | null,
    inputs: {} as Inputs,
    context: {} as FindingContext,
    photoIds: [] as string[],
  };
}

function NewFinding({ places, editions }: { places: readonly Location[]; editions: readonly string[] }) {
  const projectId = useProjectId();
  const navigate = useNavigate();
  const announce = useAnnounce();
  const { place: placeInAddress } = useSearch({ from: '/in/desk/projects/$projectId/findings/new' });
  const { draft, set, setDraft } = useDraft(() => emptyDraft(placeInAddress ?? ''));
  const [seenAt] = useState(() => new Date().toISOString());
  const [missing, setMissing] = useState<ReturnType<typeof localProblem> | null>(null);
  const [refused, setRefused] = useState(false);
  const create = useChange(routes.createFinding, {
    invalidates: findingReads,
    onDone: (finding) => {
      announce(`Recorded: ${finding.title}`);
      navigate({
        to: '/projects/$projectId/house',
        params: { projectId },
        search: { place: finding.locationId, finding: finding.id },
      });
    },
  });
  const { check } = useCheck(draft.checkId);
  const place = places.find((each) => each.id === draft.locationId);
  const problem = missing ?? (create.error ? problemOf(create.error) : null);
  function submit(event: FormEvent) {
    event.preventDefault();
    const errors = [];
    if (!draft.locationId) errors.push({ pointer: '/locationId', detail: 'Choose the place first.' });
    if (!draft.checkId) errors.push({ pointer: '/checkId', detail: 'Choose what it is first.' });
    if (refused) errors.push(REFUSED_MEASUREMENT);
    setMissing(errors.length > 0 ? localProblem(errors) : null);
    if (!check || errors.length > 0) return;
    const { title, inputs, ...rest } = draft;
    create.mutate({
      params: { projectId },
      body: {
        ...rest,
        seenAt,
        inputs: askedInputs(check.inputs, inputs),
        ...(title.trim() ? { title: title.trim() } : {}),
      },
    });
  }
  return (
    <form className="form" onSubmit={submit} noValidate>
      <Part title="Where">
        <Select
          label="Place"
          options={placeOptions(places)}
          value={draft.locationId}
          onChange={(locationId) => setDraft((before) => ({ ...before, locationId, extent: null }))}
          error={errorAt(problem, '/locationId')}
        />
        {place && <ExtentPicker place={place} value={draft.extent} onChange={set('extent')} />}
      </Part>
      <Part title="What it is">
        <CheckChoice
          checkId={draft.checkId}
          error={errorAt(problem, '/checkId')}
          onChange={(checkId) => {
            setRefused(false);
            setDraft((before) => ({ ...before, checkId, inputs: {} }));
          }}
        />
      </Part>
      {draft.checkId && (
        <Part
          title="Measurements"
          lead="What is not known yet may stay empty; the verdict then says that it cannot tell yet."
        >
          <WithCheck id={draft.checkId}>
            {(known) => (
              <CheckForm
                check={known}
                inputs={draft.inputs}
                onChange={set('inputs')}
                context={draft.context}
                edition={editionUnder(known, editions, draft.inputs)}
                serverErrors={inputErrors(problem)}
                onRefused={setRefused}
              />
            )}
          </WithCheck>
          <ContextForm storiesUnknown="as the place says" context={draft.context} onChange={set('context')} />
        </Part>
      )}
      <Part title="Words and photos">
        <TextInput
          label="Title"
          optional
          hint="Left empty, it takes the name of what it is."
          value={draft.title}
          maxLength={120}
          onChange={set('title')}
          error={errorAt(problem, '/title')}
        />
        <TextArea
          label="Note"
          optional
          value={draft.note}
          maxLength={4000}
          onChange={set('note')}
          error={errorAt(problem, '/note')}
        />
        <PhotoAdder
          projectId={projectId}
          {...(draft.locationId ? { locationId: draft.locationId } : {})}
          onDone={(photoId) =>
            setDraft((before) => ({ ...before, photoIds: [...new Set([...before.photoIds, photoId])] }))
          }
        />
      </Part>
      <FormFail problem={problem} doing="Recording the finding" />
      <div className="row form-foot">
        <Button type="submit" look="go" busy={create.isPending}>
          Record the finding
        </Button>
      </div>
    </form>
  );
}

type CheckChoiceProps = { checkId: string; error: string | undefined; onChange: (checkId: string) => void };

/** Every check there is, under the part of the house it is about. */
function CheckChoice({ checkId, error, onChange }: CheckChoiceProps) {
  return (
    <fieldset className="field" aria-describedby="what-was-found-error">
      <legend className="hidden-text">What was found</legend>
      {checksByElement(checkEntries).map((element) => (
        <RadioGroup
          key={element.id}
          label={element.name.en}
          layout="grid"
          options={element.checks.map((check) => ({
            value: check.id,
            label: check.question.en,
            detail: check.title.en,
            picture: <CheckPicture checkId={check.id} />,
          }))}
          value={checkId || null}
          onChange={onChange}
        />
      ))}
      <FieldError id="what-was-found-error">{error}</FieldError>
    </fieldset>
  );
}
