import { type Photo, routes } from '@underlath/contract';
import type { KeyboardEvent } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { photoOriginalUrl, photoViewUrl } from '../../shared/api/photos.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { type Fact, Facts } from '../../shared/ui/facts.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import { stageWord } from '../desk/words.ts';
import { PhotoWords } from './words.tsx';
import './photos.css';

type PhotoViewerProps = {
  photos: readonly Photo[];
  at: number;
  onMove: (at: number) => void;
  onClose: () => void;
};

/** One photo large, with what is known about it and what is not. Arrow keys go to the next. */
export function PhotoViewer({ photos, at, onMove, onClose }: PhotoViewerProps) {
  const photo = photos[at];
  if (!photo) return null;
  const move = (step: number) => {
    const next = at + step;
    if (next >= 0 && next < photos.length) onMove(next);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const typing = event.target instanceof HTMLElement && event.target.closest('input, textarea, select');
    if (typing) return;
    if (event.key === 'ArrowLeft') move(-1);
    if (event.key === 'ArrowRight') move(1);
  };
  return (
    <Dialog
      open
      title={photo.caption || stageWord(photo.stage)}
      onClose={onClose}
      actions={
        <>
          <span className="soft viewer-count">
            {at + 1} of {photos.length}
          </span>
          <Button disabled={at === 0} onClick={() => move(-1)}>
            Previous
          </Button>
          <Button disabled={at === photos.length - 1} onClick={() => move(1)}>
            Next
          </Button>
        </>
      }
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the arrow keys only repeat what the two buttons do */}
      <div className="viewer" onKeyDown={onKeyDown}>
        <LargePicture photo={photo} />
        <Facts facts={photoFacts(photo)} />
        <PhotoWords key={photo.id} photo={photo} />
        <p>
          <a className={buttonClass('quiet')} href={photoOriginalUrl(photo.id)} download>
            Download the untouched original
          </a>
        </p>
      </div>
    </Dialog>
  );
}

function LargePicture({ photo }: { photo: Photo }) {
  if (photo.derivative.state === 'ready') {
    return (
      <img
        className="viewer-picture"
        src={photoViewUrl(photo.id)}
        alt={photo.caption || `Photo, ${stageWord(photo.stage)}`}
        width={photo.widthPx}
        height={photo.heightPx}
      />
    );
  }
  return (
    <div className="viewer-blank">
      {photo.derivative.state === 'waiting' ? (
        <p>The smaller pictures are being made. The original is stored.</p>
      ) : (
        <DeriveAgain photo={photo} />
      )}
    </div>
  );
}

/** A picture that could not be made: why, that the original is safe, and the way to try again. */
export function DeriveAgain({ photo }: { photo: Photo }) {
  const again = useChange(routes.derivePhotoAgain, {
    invalidates: [routes.listPhotos, routes.getFinding, routes.projectOverview],
  });
  return (
    <div className="stack">
      <p>
        <b>No picture could be made:</b> {photo.derivative.reason ?? 'reason unknown'}. The original is stored,
        untouched.
      </p>
      <Button busy={again.isPending} onClick={() => again.mutate({ params: { photoId: photo.id } })}>
        Try again
      </Button>
      {again.error && <FailState problem={problemOf(again.error)} doing="Making the smaller pictures" />}
    </div>
  );
}

const mebibyte = 1024 * 1024;

const sizeWords = (bytes: number): string =>
  bytes < mebibyte / 10 ? `${Math.ceil(bytes / 1024)} KB` : `${(bytes / mebibyte).toFixed(1)} MB`;

function photoFacts(photo: Photo): Fact[] {
  return [
    {
      name: 'Camera’s clock',
      value: photo.deviceTime ? photo.deviceTime.replace('T', ' ') : 'not known',
      note: photo.deviceTime
        ? photo.deviceOffset
          ? `zone ${photo.deviceOffset}, as the camera wrote it`
          : 'zone not known'
        : undefined,
    },
    {
      name: 'Received here',
      value: <Stamp at={photo.receivedAt} look="day-time" />,
      note: `${photo.receivedAt}, by ${photo.uploadedBy.name}`,
    },
    {
      name: 'Size',
      value: `${photo.widthPx.toLocaleString('en-US')} × ${photo.heightPx.toLocaleString('en-US')} px`,
      note: `${sizeWords(photo.byteCount)}, ${photo.mediaType.replace('image/', '').toUpperCase()}`,
    },
    { name: 'SHA-256', value: <span className="hash">{photo.sha256}</span>, note: 'of the untouched original' },
  ];
}
