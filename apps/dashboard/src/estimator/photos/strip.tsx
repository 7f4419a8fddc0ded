import type { Photo } from '@underlath/contract';
import { useState } from 'react';
import { photoThumbUrl } from '../../shared/api/photos.ts';
import { stageWord } from '../desk/words.ts';
import { PhotoViewer } from './viewer.tsx';
import './photos.css';

/** Small pictures in a row; each opens large with its facts. */
export function PhotoStrip({ photos }: { photos: readonly Photo[] }) {
  const [openAt, setOpenAt] = useState<number | null>(null);
  if (photos.length === 0) return <p className="soft">No photo yet.</p>;
  return (
    <>
      <ul className="photo-row">
        {photos.map((photo, at) => (
          <li key={photo.id}>
            <PhotoThumbButton photo={photo} onOpen={() => setOpenAt(at)} />
          </li>
        ))}
      </ul>
      {openAt !== null && (
        <PhotoViewer photos={photos} at={openAt} onMove={setOpenAt} onClose={() => setOpenAt(null)} />
      )}
    </>
  );
}

export function PhotoThumbButton({ photo, onOpen }: { photo: Photo; onOpen: () => void }) {
  const words = `${stageWord(photo.stage)}${photo.caption ? `: ${photo.caption}` : ''}`;
  return (
    <button type="button" className="photo-thumb" onClick={onOpen} aria-label={`Open photo, ${words}`}>
      <PhotoPicture photo={photo} />
      <span className="photo-words">{words}</span>
    </button>
  );
}

/** The small picture, or in its place what became of it. */
function PhotoPicture({ photo }: { photo: Photo }) {
  if (photo.derivative.state === 'ready') {
    return <img src={photoThumbUrl(photo.id)} alt="" loading="lazy" width={160} height={120} />;
  }
  if (photo.derivative.state === 'waiting') {
    return <span className="photo-blank soft">Being made smaller…</span>;
  }
  return (
    <span className="photo-blank photo-failed">
      <b>No picture</b>
      <span>{photo.derivative.reason ?? 'reason unknown'}</span>
    </span>
  );
}
