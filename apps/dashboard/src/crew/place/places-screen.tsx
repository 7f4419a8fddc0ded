import { Link, useParams } from '@tanstack/react-router';
import { type Location, routes } from '@underlath/contract';
import { problemOf } from '../../shared/api/errors.ts';
import { useRoute } from '../../shared/api/hooks.ts';
import { PlaceThumb } from '../../shared/drawing/place-thumb.tsx';
import { useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { type PlaceNode, placeTree } from '../../shared/places/place-tree.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { SeverityMark, SeverityNote } from '../../shared/ui/severity.tsx';
import { EmptyState, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { BackWords, CrewFrame } from '../crew-frame.tsx';
import { useStartFinding } from '../finding/use-start-finding.ts';
import { placesToMakeSafe } from './to-make-safe.ts';

/** The house: what is not safe first, then every place drawn small, story by story. */
export function CrewPlacesScreen() {
  const { projectId } = useParams({ strict: false }) as { projectId: string };
  const t = useT(crewWords);
  const project = useRoute(routes.getProject, { params: { projectId } });
  const places = useRoute(routes.listLocations, { params: { projectId } });
  const start = useStartFinding();
  const tree = placeTree(places.data?.items ?? []);
  const error = places.error ?? project.error;
  return (
    <CrewFrame
      back={
        <Link to="/crew" className="crew-back">
          <BackWords>{t('myProjects')}</BackWords>
        </Link>
      }
      foot={
        tree.length > 0 ? (
          <Button look="go" wide onClick={() => start(projectId, null)}>
            {t('newFinding')}
          </Button>
        ) : undefined
      }
    >
      <h1>{project.data?.name ?? t('places')}</h1>
      {project.data && <p className="soft">{project.data.siteAddress}</p>}
      {project.data && project.data.originalSumCents !== null && (
        <p>
          {t('originalSum')}: <Money cents={project.data.originalSumCents} trim />
        </p>
      )}
      {error && !places.data && (
        <FailState
          problem={problemOf(error)}
          doing={t('reading', { what: t('thePlaces') })}
          onRetry={() => {
            void places.refetch();
            void project.refetch();
          }}
          retrying={places.isFetching}
        />
      )}
      <PlacesToMakeSafe places={placesToMakeSafe(tree)} />
      {places.isPending && <LoadingRows rows={6} tall />}
      {places.data && tree.length === 0 && (
        <EmptyState title={t('noPlaces')}>
          <p>{t('noPlacesHelp')}</p>
        </EmptyState>
      )}
      <PlaceList nodes={tree} />
    </CrewFrame>
  );
}

/** Says it before anything else, in the severity's own colour, with the way there. */
export function PlacesToMakeSafe({ places }: { places: readonly Location[] }) {
  const t = useT(crewWords);
  if (places.length === 0) return null;
  return (
    <SeverityNote severity="make-safe">
      <p>{t('makeSafeHere', { count: places.length })}</p>
      <p className="make-safe-lead">{t('makeSafeLead')}</p>
      <ul className="make-safe-places">
        {places.map((place) => (
          <li key={place.id}>
            <Link
              to="/crew/$projectId/places/$locationId"
              params={{ projectId: place.projectId, locationId: place.id }}
            >
              {place.name}
            </Link>
          </li>
        ))}
      </ul>
    </SeverityNote>
  );
}

/** Places with what is inside them under them. */
export function PlaceList({ nodes }: { nodes: readonly PlaceNode[] }) {
  const t = useT(crewWords);
  return (
    <ul className="lines">
      {nodes.map(({ place, inside }) => (
        <li key={place.id}>
          <Link
            to="/crew/$projectId/places/$locationId"
            params={{ projectId: place.projectId, locationId: place.id }}
            className="line"
          >
            <PlaceThumb place={place} worst={place.worst} />
            <span className="line-words">
              <b>{place.name}</b>
              {place.worst && <SeverityMark severity={place.worst} />}
              <span className="soft">
                {place.openCount > 0 ? t('openFindings', { count: place.openCount }) : t('nothingOpen')}
              </span>
            </span>
            <span aria-hidden="true">→</span>
          </Link>
          {inside.length > 0 && (
            <div className="lines-inside">
              <PlaceList nodes={inside} />
            </div>
          )}
        </li>
      ))}
    </ul>
  );
}
