import type { Location } from '@underlath/contract';
import { routes } from '@underlath/contract';
import { sized } from '@underlath/rules/places';
import { problemOf } from '../../shared/api/errors.ts';
import { usePages } from '../../shared/api/hooks.ts';
import { ExtentPicker } from '../../shared/drawing/extent-picker.tsx';
import { PlaceThumb } from '../../shared/drawing/place-thumb.tsx';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { flatten, placePath, placesAround, placeTree } from '../../shared/places/place-tree.ts';
import { Button } from '../../shared/ui/button.tsx';
import { RadioGroup } from '../../shared/ui/choice.tsx';
import { FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { CrewFrame } from '../crew-frame.tsx';
import { drawnFinding } from '../place/place-screen.tsx';
import { type StepProps, useDraftPlace } from './step.ts';

/** First which place, then where on it. */
export function WhereStep({ draft, change, go, back }: StepProps) {
  const t = useT(crewWords);
  const c = useT(commonWords);
  const { places, place } = useDraftPlace(draft);
  const drawn = place ? sized(place) : null;
  return (
    <CrewFrame
      back={back}
      foot={
        place && (
          <Button look="go" wide onClick={() => go('what')}>
            {drawn && !draft.extent ? t('wholePlace') : c('next')}
          </Button>
        )
      }
    >
      <h1>{t('whereTitle')}</h1>
      {places.error && !places.data && (
        <FailState
          problem={problemOf(places.error)}
          doing={t('reading', { what: t('thePlaces') })}
          onRetry={() => places.refetch()}
          retrying={places.isFetching}
        />
      )}
      {places.isPending && <LoadingRows rows={5} tall />}
      {places.data && !place && (
        <RadioGroup
          label={t('whereList')}
          value={draft.locationId}
          options={flatten(placeTree(places.data.items)).map(({ place }) => optionOf(place, places.data.items))}
          onChange={(locationId) => change({ locationId, extent: null })}
        />
      )}
      {place && (
        <p className="where-chosen">
          <b>
            {placePath(places.data?.items ?? [], place.id)
              .map((each) => each.name)
              .join(', ')}
          </b>
          <Button look="quiet" onClick={() => change({ locationId: null, extent: null })}>
            {t('otherPlace')}
          </Button>
        </p>
      )}
      {place && drawn && <Mark draft={draft} place={place} change={change} />}
    </CrewFrame>
  );
}

function Mark({ draft, place, change }: { draft: StepProps['draft']; place: Location; change: StepProps['change'] }) {
  const t = useT(crewWords);
  const { locale } = useLocale();
  const findings = usePages(routes.listFindings, {
    params: { projectId: draft.projectId },
    query: { locationId: place.id },
  });
  return (
    <section>
      <h2>{t('whereMark')}</h2>
      <ExtentPicker
        place={place}
        value={draft.extent}
        onChange={(extent) => change({ extent })}
        others={findings.items
          .filter((finding) => finding.locationId === place.id)
          .map((finding) => drawnFinding(finding, locale))}
      />
    </section>
  );
}

function optionOf(place: Location, places: readonly Location[]) {
  const around = placesAround(place, places);
  return {
    value: place.id,
    label: place.name,
    detail: around.map((each) => each.name).join(', ') || undefined,
    picture: <PlaceThumb place={place} worst={place.worst} />,
  };
}
