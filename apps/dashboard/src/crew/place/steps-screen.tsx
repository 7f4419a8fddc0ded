import { Link, useParams } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useRoute } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { scopeWords } from '../../shared/i18n/messages/scope.ts';
import { ScopeCautions } from '../../shared/scope/scope-cautions.tsx';
import { ScopeDrawing } from '../../shared/scope/scope-drawing.tsx';
import { ScopeSteps } from '../../shared/scope/scope-steps.tsx';
import { EmptyState, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { BackWords, CrewFrame } from '../crew-frame.tsx';

/** What is done at a place, step by step, with its hold points. */
export function CrewStepsScreen() {
  const { projectId, locationId } = useParams({ strict: false }) as { projectId: string; locationId: string };
  const t = useT(scopeWords);
  const [litId, setLitId] = useState<string | null>(null);
  const places = useRoute(routes.listLocations, { params: { projectId } });
  const plan = useRoute(routes.getPlaceScope, { params: { locationId }, query: {} });
  const place = places.data?.items.find(({ id }) => id === locationId);
  const error = plan.error ?? places.error;
  const step = plan.data?.scope.operations.find(({ id }) => id === litId);
  return (
    <CrewFrame
      back={
        <Link to="/crew/$projectId/places/$locationId" params={{ projectId, locationId }} className="crew-back">
          <BackWords>{place?.name ?? t('back')}</BackWords>
        </Link>
      }
    >
      <h1>{t('title')}</h1>
      {error && (
        <FailState
          problem={problemOf(error)}
          doing={t('reading')}
          onRetry={() => {
            void plan.refetch();
            void places.refetch();
          }}
          retrying={plan.isFetching}
        />
      )}
      {!error && (!plan.data || !place) && <LoadingRows rows={6} tall />}
      {plan.data && place && (
        <>
          <ScopeCautions plan={plan.data} />
          {plan.data.scope.operations.length === 0 ? (
            <EmptyState title={t('nothing')}>
              <p>{t('nothingHelp')}</p>
            </EmptyState>
          ) : (
            <>
              {plan.data.findings.some(({ proposed, included }) => proposed && included) && <p>{t('notPriced')}</p>}
              <p>{t('stepsLead')}</p>
              <ScopeDrawing place={place} plan={plan.data} step={step} maxHeightPx={260} />
              <ScopeSteps plan={plan.data} litId={litId} onLight={setLitId} />
            </>
          )}
        </>
      )}
    </CrewFrame>
  );
}
