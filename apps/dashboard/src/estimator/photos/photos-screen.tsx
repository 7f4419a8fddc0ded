import { useNavigate, useSearch } from '@tanstack/react-router';
import { type Location, type Photo, type PhotoStage, routes } from '@underlath/contract';
import { useState } from 'react';
import { usePages, useRoute } from '../../shared/api/hooks.ts';
import { flatten, placeOptions, placesAround, placeTree } from '../../shared/places/place-tree.ts';
import { Select } from '../../shared/ui/field.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { MoreRows } from '../desk/more-rows.tsx';
import { Page } from '../desk/page.tsx';
import { Reading } from '../desk/reading.tsx';
import { plural, stageOptions } from '../desk/words.ts';
import { useOverview, useProjectId } from '../project/project-frame.tsx';
import { PhotoAdder } from './adder.tsx';
import { PhotoThumbButton } from './strip.tsx';
import { DeriveAgain, PhotoViewer } from './viewer.tsx';

type Filters = { place?: string; stage?: string };

/** A contact sheet: every photo of the project, by place. */
export function PhotosScreen() {
  const projectId = useProjectId();
  const overview = useOverview();
  const filters = useSearch({ from: '/in/desk/projects/$projectId/photos' });
  const places = useRoute(routes.listLocations, { params: { projectId } });
  const photos = usePages(routes.listPhotos, {
    params: { projectId },
    query: {
      limit: 100,
      ...(filters.place ? { locationId: filters.place } : {}),
      ...(filters.stage ? { stage: filters.stage as PhotoStage } : {}),
    },
  });
  return (
    <Page
      title="Photos"
      of={overview.data?.project.name}
      wide
      lead={overview.data && plural(overview.data.photoCount, 'photo')}
      actions={
        <PhotoAdder
          projectId={projectId}
          {...(filters.place ? { locationId: filters.place } : {})}
          compact
          onDone={() => {}}
        />
      }
    >
      <FilterLine filters={filters} places={places.data?.items ?? []} />
      <Reading query={photos} doing="Reading the photos" rows={4}>
        {() => (
          <>
            <Sheets photos={photos.items as Photo[]} places={places.data?.items ?? []} filtered={isFiltered(filters)} />
            <MoreRows pages={photos} what="photos" />
          </>
        )}
      </Reading>
    </Page>
  );
}

const isFiltered = (filters: Filters) => Boolean(filters.place || filters.stage);

function FilterLine({ filters, places }: { filters: Filters; places: readonly Location[] }) {
  const projectId = useProjectId();
  const navigate = useNavigate();
  const apply = (part: Filters) =>
    navigate({
      to: '/projects/$projectId/photos',
      params: { projectId },
      search: Object.fromEntries(Object.entries({ ...filters, ...part }).filter(([, value]) => value)),
      replace: true,
    });
  return (
    <search className="filters">
      <Select
        label="Place"
        emptyLabel="the whole house"
        options={placeOptions(places)}
        value={filters.place ?? ''}
        onChange={(place) => apply({ place })}
      />
      <Select
        label="Stage"
        emptyLabel="any"
        options={stageOptions}
        value={filters.stage ?? ''}
        onChange={(stage) => apply({ stage })}
      />
    </search>
  );
}

type SheetsProps = { photos: readonly Photo[]; places: readonly Location[]; filtered: boolean };

function Sheets({ photos, places, filtered }: SheetsProps) {
  const [openId, setOpenId] = useState<string | null>(null);
  if (photos.length === 0) return <NoPhotos filtered={filtered} />;
  const groups = byPlace(photos, places);
  const inOrder = groups.flatMap((group) => group.photos);
  const openAt = inOrder.findIndex((photo) => photo.id === openId);
  const failed = photos.filter((photo) => photo.derivative.state === 'failed');
  return (
    <>
      {failed.length > 0 && (
        <section className="part failed-photos">
          <h2>{failed.length === 1 ? 'One photo has no picture' : `${failed.length} photos have no picture`}</h2>
          <ul className="stack">
            {failed.map((photo) => (
              <li key={photo.id}>
                <DeriveAgain photo={photo} />
              </li>
            ))}
          </ul>
        </section>
      )}
      {groups.map((group) => (
        <section key={group.key} className="part">
          <div className="part-head">
            <h2>{group.title}</h2>
            <span className="soft">{group.where}</span>
          </div>
          <ul className="contact-sheet">
            {group.photos.map((photo) => (
              <li key={photo.id}>
                <PhotoThumbButton photo={photo} onOpen={() => setOpenId(photo.id)} />
              </li>
            ))}
          </ul>
        </section>
      ))}
      {openAt >= 0 && (
        <PhotoViewer
          photos={inOrder}
          at={openAt}
          onMove={(at) => setOpenId(inOrder[at]?.id ?? null)}
          onClose={() => setOpenId(null)}
        />
      )}
    </>
  );
}

type Group = { key: string; title: string; where: string; photos: Photo[] };

/** The order of the house; photos without a place at the end. Within a place by stage, then by time. */
function byPlace(photos: readonly Photo[], places: readonly Location[]): Group[] {
  const stages = stageOptions.map((option) => option.value as PhotoStage);
  const sorted = photos.toSorted(
    (a, b) => stages.indexOf(a.stage) - stages.indexOf(b.stage) || a.receivedAt.localeCompare(b.receivedAt),
  );
  const known = flatten(placeTree(places)).map(({ place }) => ({
    key: place.id,
    title: place.name,
    where: placesAround(place, places)
      .map((each) => each.name)
      .join(', '),
    photos: sorted.filter((photo) => photo.locationId === place.id),
  }));
  const ids = new Set(places.map((place) => place.id));
  const rest = sorted.filter((photo) => photo.locationId === null || !ids.has(photo.locationId));
  return [...known, { key: 'none', title: 'No place yet', where: '', photos: rest }].filter(
    (group) => group.photos.length > 0,
  );
}

function NoPhotos({ filtered }: { filtered: boolean }) {
  return filtered ? (
    <EmptyState title="No photo fits these filters" />
  ) : (
    <EmptyState title="No photo yet">
      <p>The crew’s phones send them here. Photos that are already on this computer can be added above.</p>
    </EmptyState>
  );
}
