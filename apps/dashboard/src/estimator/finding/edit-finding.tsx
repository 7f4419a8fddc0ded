import { type Finding, type Rectangle, routes } from '@underlath/contract';
import { type FormEvent, useId } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { ExtentPicker } from '../../shared/drawing/extent-picker.tsx';
import { placeOptions } from '../../shared/places/place-tree.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { Select, TextArea, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { useDraft } from '../desk/use-draft.ts';
import { findingReads } from './moves.tsx';

/** Words and place of a finding. Measurements are never edited; they are measured again. */
export function EditFinding({ finding, onClose }: { finding: Finding; onClose: () => void }) {
  const formId = useId();
  const announce = useAnnounce();
  const { draft, set, setDraft } = useDraft({
    title: finding.title,
    note: finding.note,
    locationId: finding.locationId,
    extent: finding.extent as Rectangle | null,
  });
  const places = useRoute(routes.listLocations, { params: { projectId: finding.projectId } });
  const place = places.data?.items.find((each) => each.id === draft.locationId);
  const change = useChange(routes.changeFinding, {
    invalidates: findingReads,
    onDone: () => {
      announce('Saved');
      onClose();
    },
  });
  const problem = change.error ? problemOf(change.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    change.mutate({ params: { findingId: finding.id }, body: draft, ifMatch: finding.version });
  }
  return (
    <Dialog
      open
      title={`Edit finding ${finding.number}`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Cancel</Button>
          <Button look="go" type="submit" form={formId} busy={change.isPending}>
            Save
          </Button>
        </>
      }
    >
      <form id={formId} className="stack" onSubmit={submit} noValidate>
        <TextInput label="Title" value={draft.title} onChange={set('title')} error={errorAt(problem, '/title')} />
        <TextArea label="Note" optional value={draft.note} onChange={set('note')} error={errorAt(problem, '/note')} />
        <Select
          label="Place"
          options={placeOptions(places.data?.items ?? [])}
          value={draft.locationId}
          // An area belongs to the drawing it was marked on.
          onChange={(locationId) => setDraft((before) => ({ ...before, locationId, extent: null }))}
          error={errorAt(problem, '/locationId')}
        />
        {place && <ExtentPicker place={place} value={draft.extent} onChange={set('extent')} maxHeightPx={300} />}
        <FormFail problem={problem} doing="Saving the finding" />
      </form>
    </Dialog>
  );
}
