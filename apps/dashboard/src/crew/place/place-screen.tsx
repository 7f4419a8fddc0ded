import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { type FindingRow, routes } from '@underlath/contract';
import type { Locale } from '@underlath/rules/kernel';
import { sized } from '@underlath/rules/places';
import { problemOf } from '../../shared/api/errors.ts';
import { usePages, useRoute } from '../../shared/api/hooks.ts';
import { type DrawnFinding, Elevation } from '../../shared/drawing/elevation.tsx';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { scopeWords } from '../../shared/i18n/messages/scope.ts';
import { findNode, placePath, placeTree } from '../../shared/places/place-tree.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { EmptyState, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { BackWords, CrewFrame } from '../crew-frame.tsx';
import { findingTitle } from '../finding/finding-title.ts';
import { useStartFinding } from '../finding/use-start-finding.ts';
import { DraftLine } from '../outbox/draft-line.tsx';
import { useOutboxState } from '../outbox/use-outbox.tsx';
import { FindingLine } from './finding-line.tsx';
import { PlaceList, PlacesToMakeSafe } from './places-screen.tsx';
import { placesToMakeSafe } from './to-make-safe.ts';

const closedStates = new Set(['repaired', 'proven', 'withdrawn']);

/** A finding of the API as the elevation draws it. */
export function drawnFinding(finding: FindingRow, locale: Locale): DrawnFinding {
  return {
    id: finding.id,
    number: finding.number,
    title: findingTitle(finding, locale),
    severity: finding.severity,
    extent: finding.extent,
    closed: closedStates.has(finding.state),
  };
}

/** One place: its drawing with what was found on it, the findings, and what waits on this phone. */
export function CrewPlaceScreen() {
  const { projectId, locationId } = useParams({ strict: false }) as { projectId: string; locationId: string };
  const t = useT(crewWords);
  const c = useT(commonWords);
  const s = useT(scopeWords);
  const { locale } = useLocale();
  const navigate = useNavigate();
  const start = useStartFinding();
  const places = useRoute(routes.listLocations, { params: { projectId } });
  const findings = usePages(routes.listFindings, { params: { projectId }, query: { locationId } });
  const { drafts } = useOutboxState();
  const all = places.data?.items ?? [];
  const path = placePath(all, locationId);
  const place = path.at(-1);
  const node = findNode(placeTree(all), locationId);
  const mine = drafts.filter((draft) => draft.locationId === locationId);
  const error = findings.error ?? places.error;
  return (
    <CrewFrame
      back={
        <Link to="/crew/$projectId" params={{ projectId }} className="crew-back">
          <BackWords>{path.at(-2)?.name ?? t('places')}</BackWords>
        </Link>
      }
      foot={
        <Button look="go" wide onClick={() => start(projectId, locationId)}>
          {t('newFinding')}
        </Button>
      }
    >
      <h1>{place?.name ?? ' '}</h1>
      {place?.worst && place.worst !== 'make-safe' && <SeverityMark severity={place.worst} />}
      {node && place?.worst === 'make-safe' && <PlacesToMakeSafe places={placesToMakeSafe([node])} />}
      {error && findings.items.length === 0 && (
        <FailState
          problem={problemOf(error)}
          doing={t('reading', { what: t('theFindings') })}
          onRetry={() => {
            void findings.refetch();
            void places.refetch();
          }}
          retrying={findings.isFetching}
        />
      )}
      {place && sized(place) && (
        <>
          <Elevation
            place={place}
            findings={findings.items
              .filter((finding) => finding.locationId === locationId)
              .map((finding) => drawnFinding(finding, locale))}
            labels="numbers"
            maxHeightPx={360}
            onSelect={(findingId) => navigate({ to: '/crew/findings/$findingId', params: { findingId } })}
          />
          <p className="soft small">{c('hatchedFound')}</p>
        </>
      )}
      {place && !sized(place) && node?.inside.length === 0 && <p className="soft">{t('noSize')}</p>}
      {place && place.openCount > 0 && (
        <Link
          to="/crew/$projectId/places/$locationId/steps"
          params={{ projectId, locationId }}
          className={buttonClass('plain', true)}
        >
          {s('toScope')}
        </Link>
      )}
      {mine.length > 0 && (
        <section>
          <h2>{t('unsentTitle')}</h2>
          <ul className="lines">
            {mine.map((draft) => (
              <DraftLine key={draft.id} draft={draft} />
            ))}
          </ul>
        </section>
      )}
      <section>
        <h2>{t('findingsHere')}</h2>
        {findings.isPending && <LoadingRows rows={3} tall />}
        {findings.isSuccess && findings.items.length === 0 && (
          <EmptyState title={t('noFindingsHere')}>
            <p>{t('noFindingsHelp')}</p>
          </EmptyState>
        )}
        <ul className="lines">
          {findings.items.map((finding) => (
            <FindingLine key={finding.id} finding={finding} />
          ))}
        </ul>
        {findings.hasNextPage && (
          <Button wide onClick={() => findings.fetchNextPage()} busy={findings.isFetchingNextPage}>
            {c('next')}
          </Button>
        )}
      </section>
      {node && node.inside.length > 0 && (
        <section>
          <h2>{t('placesInside')}</h2>
          <PlaceList nodes={node.inside} />
        </section>
      )}
    </CrewFrame>
  );
}
