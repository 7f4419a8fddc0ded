import { type PhotoStage, photoCaps } from '@underlath/contract';
import { useEffect, useId, useMemo, useState } from 'react';
import { isTooLarge } from '../../shared/api/photos.ts';
import { formatNumber } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import type { ShownProblem } from '../../shared/ui/use-problem-words.ts';
import { useProblemWords } from '../../shared/ui/use-problem-words.ts';
import type { KeptPhoto } from '../outbox/draft.ts';
import { useOutbox, useOutboxState, useTakePhotos } from '../outbox/use-outbox.tsx';

type PhotoTakerProps = {
  projectId: string;
  draftId: string | null;
  findingId: string | null;
  locationId: string | null;
  stage: PhotoStage;
};

const bytesPerMb = 1024 * 1024;
/** What the server reads; the picker offers only these. */
const accepted = 'image/jpeg,image/png,image/webp,image/heic,image/heif';

/** Camera and picker, and what was taken so far with how far each photo is on its way. */
export function PhotoTaker(props: PhotoTakerProps) {
  const { draftId, findingId } = props;
  const t = useT(crewWords);
  const { tag } = useLocale();
  const { photos } = useOutboxState();
  const take = useTakePhotos();
  const [tooLarge, setTooLarge] = useState<File[]>([]);
  const mine = photos.filter((photo) => (draftId ? photo.draftId === draftId : photo.findingId === findingId));
  const mb = (bytes: number) => formatNumber(bytes / bytesPerMb, tag, 0);
  async function took(files: FileList | null) {
    const list = [...(files ?? [])];
    setTooLarge(list.filter(isTooLarge));
    await take(
      list.filter((file) => !isTooLarge(file)),
      props,
    );
  }
  return (
    <div className="photo-taker">
      <div className="photo-buttons">
        <FileButton
          label={t(mine.length > 0 ? 'morePhotos' : 'takePhoto')}
          go={mine.length === 0}
          camera
          onFiles={took}
        />
        <FileButton label={t('choosePhoto')} onFiles={took} />
      </div>
      {tooLarge.map((file) => (
        <p className="field-error" role="alert" key={file.name}>
          {t('photoTooLarge', { size: mb(file.size), most: mb(photoCaps.bytes) })}
        </p>
      ))}
      <ul className="photo-kept">
        {mine.map((photo, at) => (
          <KeptPhotoRow key={photo.id} photo={photo} number={at + 1} />
        ))}
      </ul>
    </div>
  );
}

type FileButtonProps = { label: string; go?: boolean; camera?: boolean; onFiles: (files: FileList | null) => void };

/** A label that is pressed like a button: the input in it stays reachable by keyboard and by voice. */
function FileButton({ label, go, camera, onFiles }: FileButtonProps) {
  return (
    <label className={`${buttonClass(go ? 'go' : 'plain', true)} file-button`}>
      {label}
      <input
        type="file"
        accept={accepted}
        multiple
        {...(camera ? { capture: 'environment' as const } : {})}
        onChange={(event) => {
          onFiles(event.target.files);
          // The same photo can be chosen again after it was removed.
          event.target.value = '';
        }}
      />
    </label>
  );
}

export function KeptPhotoRow({ photo, number }: { photo: KeptPhoto; number: number }) {
  const t = useT(crewWords);
  const c = useT(commonWords);
  const outbox = useOutbox();
  const { progress } = useOutboxState();
  const id = useId();
  const url = useObjectUrl(photo);
  const share = progress[photo.id];
  const state = photo.problem
    ? t('photoRefused')
    : photo.sentAs
      ? t('photoSent')
      : share === undefined
        ? t('photoKept')
        : t('photoSending');
  return (
    <li className="photo-row">
      {url ? <img src={url} alt={t('photoNumber', { number })} /> : <span className="photo-blank" aria-hidden="true" />}
      <div className="photo-row-words">
        <p id={id}>
          {t('photoNumber', { number })} <span className="soft">· {state}</span>
        </p>
        {share !== undefined && <progress aria-labelledby={id} max={1} value={share} />}
        {photo.problem && (
          <p role="alert">
            <ProblemSentence problem={photo.problem} />
          </p>
        )}
        <div className="row">
          {photo.problem && <Button onClick={() => outbox.retry(photo.id)}>{c('retry')}</Button>}
          <Button look="quiet" onClick={() => outbox.removePhoto(photo.id)} aria-label={t('removePhoto', { number })}>
            {share === undefined ? c('remove') : c('cancel')}
          </Button>
        </div>
      </div>
    </li>
  );
}

/** The photo's own bytes as an address for <img>; taken back when it leaves the screen. */
function useObjectUrl(photo: KeptPhoto): string | null {
  const { bytes, mediaType } = photo;
  const blob = useMemo(() => (bytes ? new Blob([bytes], { type: mediaType }) : null), [bytes, mediaType]);
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (!blob) return;
    const made = URL.createObjectURL(blob);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [blob]);
  return url;
}

/** A refusal on one line, in the reader's words. */
function ProblemSentence({ problem }: { problem: ShownProblem }) {
  const { title, lines } = useProblemWords(problem);
  return [`${title}.`, ...lines.map(({ words }) => words)].join(' ');
}
