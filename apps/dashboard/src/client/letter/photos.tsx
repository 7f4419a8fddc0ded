import { captionOf, type DocumentItem, type PhotoStage, titleOf } from '@underlath/contract';
import { useState } from 'react';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import type { ClientKey } from '../problem-words.ts';
import { Inline } from '../words.tsx';
import { wordsIn } from './letter-text.ts';
import { usePhotoAddress } from './photo-address.ts';

type Photo = DocumentItem['photos'][number];

const stageKeys: Record<PhotoStage, ClientKey> = {
  found: 'stageFound',
  opened: 'stageOpened',
  during: 'stageDuring',
  repaired: 'stageRepaired',
  'before-cover': 'stageBeforeCover',
};

/** The photos of a finding. Each opens large with its caption; the buttons there go on to the next. */
export function Photos({ item }: { item: DocumentItem }) {
  const t = useT(letterWords);
  const { locale } = useLocale();
  const addressOf = usePhotoAddress();
  const [open, setOpen] = useState<number | null>(null);
  const { photos } = item;
  if (photos.length === 0) return null;
  const stage = (photo: Photo) => t(stageKeys[photo.stage]);
  const caption = (photo: Photo) => (photo.caption ? <Inline text={captionOf(photo)} /> : stage(photo));
  const title = wordsIn(titleOf(item), locale).words;
  const alt = (photo: Photo, at: number) =>
    wordsIn(captionOf(photo), locale).words ||
    t('photoAlt', { at: at + 1, number: item.number, title, stage: stage(photo) });
  const large = open === null ? undefined : photos[open];
  return (
    <>
      <ul
        className={photos.length === 1 ? 'photos photos-one' : 'photos'}
        aria-label={t('photosOf', { number: item.number })}
      >
        {photos.map((photo, at) => (
          <li key={photo.id}>
            <figure>
              <button
                type="button"
                className="photo-open"
                aria-label={`${t('photoLarge', { at: at + 1, of: photos.length })}: ${alt(photo, at)}`}
                onClick={() => setOpen(at)}
              >
                <Picture src={addressOf(photo.id, photos.length === 1 ? 'view' : 'thumb')} alt={alt(photo, at)} />
              </button>
              <figcaption className="caption">{caption(photo)}</figcaption>
            </figure>
          </li>
        ))}
      </ul>
      <Dialog
        open={large !== undefined}
        title={t('photoTitle', { at: (open ?? 0) + 1, of: photos.length })}
        onClose={() => setOpen(null)}
        actions={
          photos.length > 1 && (
            <>
              <Button onClick={() => setOpen(((open ?? 0) + photos.length - 1) % photos.length)}>
                {t('photoPrevious')}
              </Button>
              <Button onClick={() => setOpen(((open ?? 0) + 1) % photos.length)}>{t('photoNext')}</Button>
            </>
          )
        }
      >
        {large && (
          <figure className="photo-large">
            <Picture key={large.id} src={addressOf(large.id, 'view')} alt={alt(large, open ?? 0)} />
            <figcaption>{caption(large)}</figcaption>
          </figure>
        )}
      </Dialog>
    </>
  );
}

function Picture({ src, alt }: { src: string; alt: string }) {
  const t = useT(letterWords);
  const [failed, setFailed] = useState(false);
  if (failed) return <span className="photo-failed">{t('photoFailed')}</span>;
  return <img src={src} alt={alt} loading="lazy" decoding="async" onError={() => setFailed(true)} />;
}
