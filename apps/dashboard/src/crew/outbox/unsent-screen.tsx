import { Link } from '@tanstack/react-router';
import { useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { Button } from '../../shared/ui/button.tsx';
import { EmptyState } from '../../shared/ui/states.tsx';
import { BackWords, CrewFrame } from '../crew-frame.tsx';
import { KeptPhotoRow } from '../finding/photo-taker.tsx';
import { DraftLine } from './draft-line.tsx';
import { useOutbox, useOutboxState, useUnsentCount } from './use-outbox.tsx';

/** Everything that is on this phone only, with what can be done about each. */
export function UnsentScreen() {
  const t = useT(crewWords);
  const outbox = useOutbox();
  const { drafts, photos, posting, progress } = useOutboxState();
  const count = useUnsentCount();
  const extra = photos.filter((photo) => photo.findingId !== null);
  const canSend =
    extra.length > 0 || drafts.some((draft) => draft.ready) || photos.some((photo) => photo.sentAs === null);
  const busy = posting.length > 0 || Object.keys(progress).length > 0;
  return (
    <CrewFrame
      back={
        <Link to="/crew" className="crew-back">
          <BackWords>{t('myProjects')}</BackWords>
        </Link>
      }
      foot={
        canSend ? (
          <Button look="go" wide onClick={() => outbox.send()} busy={busy} busyLabel={t('sending')}>
            {t('sendNow')}
          </Button>
        ) : undefined
      }
    >
      <h1>{t('unsentTitle')}</h1>
      {count === 0 ? (
        <EmptyState title={t('unsentNone')}>
          <p>{t('unsentNoneHelp')}</p>
        </EmptyState>
      ) : (
        <p className="soft">{t('unsentLead')}</p>
      )}
      <ul className="lines">
        {drafts.map((draft) => (
          <DraftLine key={draft.id} draft={draft} />
        ))}
      </ul>
      <ul className="photo-kept">
        {extra.map((photo, at) => (
          <KeptPhotoRow key={photo.id} photo={photo} number={at + 1} />
        ))}
      </ul>
    </CrewFrame>
  );
}
