import { useT } from '../../shared/i18n/locale.tsx';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { Button } from '../../shared/ui/button.tsx';
import { CrewFrame } from '../crew-frame.tsx';
import { useOutboxState } from '../outbox/use-outbox.tsx';
import { PhotoTaker } from './photo-taker.tsx';
import type { StepProps } from './step.ts';

export function PhotoStep({ draft, go, back }: StepProps) {
  const t = useT(crewWords);
  const c = useT(commonWords);
  const { photos } = useOutboxState();
  const any = photos.some((photo) => photo.draftId === draft.id);
  return (
    <CrewFrame
      back={back}
      foot={
        <Button look={any ? 'go' : 'plain'} wide onClick={() => go('where')}>
          {any ? c('next') : t('noPhotoNow')}
        </Button>
      }
    >
      <div className="question">
        <h1>{t('photoTitle')}</h1>
        <p className="soft">{t('photoLead')}</p>
      </div>
      <PhotoTaker
        projectId={draft.projectId}
        draftId={draft.id}
        findingId={null}
        locationId={draft.locationId}
        stage="found"
      />
    </CrewFrame>
  );
}
