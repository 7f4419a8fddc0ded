import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useT } from '../shared/i18n/locale.tsx';
import { crewWords } from '../shared/i18n/messages/crew.ts';
import { useOutboxState, useUnsentCount } from './outbox/use-outbox.tsx';
import './crew.css';

type CrewFrameProps = {
  /** The way back: a <Link className="crew-back">, or a button where going back is a step of a form. */
  back?: ReactNode;
  /** How far along, in a form of several questions. */
  progress?: string;
  children: ReactNode;
  /** Actions at the bottom, under the thumb. */
  foot?: ReactNode;
};

/** Every crew screen: where it came from and what waits on the phone above, the actions below. */
export function CrewFrame({ back, progress, children, foot }: CrewFrameProps) {
  const t = useT(crewWords);
  const { offline, storageError } = useOutboxState();
  const unsent = useUnsentCount();
  return (
    <div className="field-screen crew">
      <header className="crew-top">
        <div className="crew-back-slot">{back ?? <span className="crew-name">Underlath</span>}</div>
        {progress && <p className="soft small">{progress}</p>}
        <Link to="/crew/unsent" className="crew-unsent">
          {unsent > 0 ? <b>{t('unsent', { count: unsent })}</b> : t('allSent')}
        </Link>
      </header>
      <div role="status">
        {offline && <p className="crew-strip">{t('offline')}</p>}
        {storageError && <p className="crew-strip">{t('storageFailed', { reason: storageError })}</p>}
      </div>
      <main id="main" className="crew-main">
        {children}
      </main>
      {foot && <div className="crew-foot">{foot}</div>}
    </div>
  );
}

/** An arrow and the name of where it leads. */
export function BackWords({ children }: { children: ReactNode }) {
  return (
    <>
      <span aria-hidden="true">← </span>
      {children}
    </>
  );
}
