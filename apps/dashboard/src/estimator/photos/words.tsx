import { type Photo, type PhotoStage, routes } from '@underlath/contract';
import type { FormEvent } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { placeOptions } from '../../shared/places/place-tree.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Select, TextInput } from '../../shared/ui/field.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { useDraft } from '../desk/use-draft.ts';
import { stageOptions } from '../desk/words.ts';

/** Caption, stage and place can change; the bytes never do. */
export function PhotoWords({ photo }: { photo: Photo }) {
  const announce = useAnnounce();
  const places = useRoute(routes.listLocations, { params: { projectId: photo.projectId } });
  const { draft, set } = useDraft({
    caption: photo.caption,
    stage: photo.stage as string,
    locationId: photo.locationId ?? '',
  });
  const change = useChange(routes.changePhoto, {
    invalidates: [routes.listPhotos, routes.getFinding],
    onDone: () => announce('Saved'),
  });
  const problem = change.error ? problemOf(change.error) : null;
  const changed =
    draft.caption !== photo.caption || draft.stage !== photo.stage || draft.locationId !== (photo.locationId ?? '');
  function submit(event: FormEvent) {
    event.preventDefault();
    const body = {
      caption: draft.caption,
      stage: draft.stage as PhotoStage,
      locationId: draft.locationId || null,
    };
    change.mutate({ params: { photoId: photo.id }, body, ifMatch: photo.version });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <TextInput
        label="Caption"
        optional
        maxLength={300}
        value={draft.caption}
        onChange={set('caption')}
        error={errorAt(problem, '/caption')}
      />
      <div className="form-pair">
        <Select label="Stage" options={stageOptions} value={draft.stage} onChange={set('stage')} />
        <Select
          label="Place"
          emptyLabel="none"
          options={placeOptions(places.data?.items ?? [])}
          value={draft.locationId}
          onChange={set('locationId')}
        />
      </div>
      <FormFail problem={problem} doing="Saving the photo’s words" />
      {changed && (
        <p>
          <Button type="submit" look="go" busy={change.isPending}>
            Save the words
          </Button>
        </p>
      )}
    </form>
  );
}
