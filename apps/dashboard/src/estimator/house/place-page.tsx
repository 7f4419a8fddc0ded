import { Link } from '@tanstack/react-router';
import { type Location, routes } from '@underlath/contract';
import type { ReactNode } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { EmptyState } from '../../shared/ui/states.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { useProjectId } from '../project/project-frame.tsx';

type PlacePageProps = { title: string; locationId: string; children: (place: Location) => ReactNode };

/** A page about one place of the house, with the way back to it. */
export function PlacePage({ title, locationId, children }: PlacePageProps) {
  const projectId = useProjectId();
  const places = useRoute(routes.listLocations, { params: { projectId } });
  const place = places.data?.items.find(({ id }) => id === locationId);
  return (
    <Page
      title={title}
      of={place?.name}
      wide
      lead={
        <Link to="/projects/$projectId/house" params={{ projectId }} search={{ place: locationId }}>
          {place?.name ?? 'Back to the house'}
        </Link>
      }
    >
      <Reading query={places} doing="Reading the place" rows={6}>
        {() => (place ? children(place) : <EmptyState title="This place is not part of the project any more" />)}
      </Reading>
    </Page>
  );
}
