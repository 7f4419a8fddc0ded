import { useNavigate } from '@tanstack/react-router';
import { findEntry } from '@underlath/rules';
import { say } from '@underlath/rules/kernel';
import { useState } from 'react';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { FailState } from '../../shared/ui/states.tsx';
import type { FindingDraft } from './draft.ts';
import { useOutbox, useOutboxState } from './use-outbox.tsx';

/** A finding that is on this phone only: unfinished, waiting, on its way, or refused with the reason. */
export function DraftLine({ draft }: { draft: FindingDraft }) {
  const t = useT(crewWords);
  const { locale } = useLocale();
  const outbox = useOutbox();
  const { posting, photos } = useOutboxState();
  const navigate = useNavigate();
  const [asking, setAsking] = useState(false);
  const check = draft.checkId ? findEntry(draft.checkId) : undefined;
  const sending = posting.includes(draft.id);
  const refusedPhoto = draft.ready && photos.some((photo) => photo.draftId === draft.id && photo.problem !== null);
  const refused = draft.problem !== null || refusedPhoto;
  const state = refused ? 'refused' : sending ? 'sending' : draft.ready ? 'waiting' : 'unfinished';
  const open = () => navigate({ to: '/crew/new/$draftId', params: { draftId: draft.id } });
  return (
    <li className="draft-line">
      <p>
        <b>{check ? say(check.title, locale) : t('unnamed')}</b> <span className="soft">· {t(state)}</span>
      </p>
      {draft.problem && <FailState problem={draft.problem} />}
      <div className="row">
        {draft.problem && <Button onClick={() => outbox.retry(draft.id)}>{t('sendNow')}</Button>}
        {(!draft.ready || refused) && <Button onClick={open}>{t(draft.ready ? 'fix' : 'goOn')}</Button>}
        <Button look="quiet" onClick={() => setAsking(true)} disabled={sending}>
          {t('discard')}
        </Button>
      </div>
      <Dialog
        open={asking}
        title={t('discardTitle')}
        onClose={() => setAsking(false)}
        actions={
          <>
            <Button onClick={() => outbox.removeDraft(draft.id)}>{t('discardYes')}</Button>
            <Button look="go" onClick={() => setAsking(false)}>
              {t('keepIt')}
            </Button>
          </>
        }
      >
        <p>{t('discardLead')}</p>
      </Dialog>
    </li>
  );
}
