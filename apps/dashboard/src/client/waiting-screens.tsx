import { type ReactNode, useEffect, useRef } from 'react';
import { OfflineError, ProblemAnswer } from '../shared/api/errors.ts';
import { useT } from '../shared/i18n/locale.tsx';
import { commonWords } from '../shared/i18n/messages/common.ts';
import { letterWords } from '../shared/i18n/messages/letter.ts';
import { Button } from '../shared/ui/button.tsx';
import { ContactLines } from './contact-lines.tsx';
import { LanguageSwitch } from './language-switch.tsx';
import { type Block, blockWords } from './problem-words.ts';
import { usePageTitle } from './use-page-title.ts';

/** The letter's own layout in gray lines, so that nothing jumps when it comes. */
export function LoadingScreen() {
  const t = useT(letterWords);
  usePageTitle(t('pageTitleWaiting'));
  return (
    <>
      <div className="letter-body letter-loading" role="status">
        <h1 className="hidden-text">{t('loadingLetter')}</h1>
        <div className="ghosts" aria-hidden="true">
          <i className="ghost ghost-line" />
          <i className="ghost ghost-line ghost-short" />
          <i className="ghost ghost-title" />
          <i className="ghost ghost-picture" />
          <i className="ghost ghost-line" />
          <i className="ghost ghost-line" />
          <i className="ghost ghost-line ghost-short" />
        </div>
      </div>
      <div className="total-bar" aria-hidden="true">
        <div className="total-inner ghosts">
          <i className="ghost ghost-line" />
          <i className="ghost ghost-line" />
          <i className="ghost ghost-button" />
        </div>
      </div>
    </>
  );
}

/** There is no letter to show: says why, and what to do. */
export function BlockedScreen({ block, error }: { block: Block | 'closed'; error?: Error | null }) {
  const t = useT(letterWords);
  const [title, ...body] = blockWords[block];
  const contact = error instanceof ProblemAnswer ? error.problem.contact : undefined;
  return (
    <Plain title={t(title)}>
      {body.map((key) => (
        <p key={key}>{t(key)}</p>
      ))}
      {contact && <ContactLines company={contact} />}
    </Plain>
  );
}

/** The letter could not be fetched, but may be there. */
export function FailedScreen({ error, retry, retrying }: { error: Error; retry: () => void; retrying: boolean }) {
  const t = useT(letterWords);
  const tCommon = useT(commonWords);
  return (
    <Plain title={t('failedTitle')}>
      <p>{t(error instanceof OfflineError ? 'failedOffline' : 'failedServer')}</p>
      <Button look="go" onClick={retry} busy={retrying}>
        {tCommon('retry')}
      </Button>
    </Plain>
  );
}

function Plain({ title, children }: { title: string; children: ReactNode }) {
  const t = useT(letterWords);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  usePageTitle(t('pageTitleWaiting'));
  return (
    <div className="letter-body plain-state">
      <div className="letter-top">
        <span />
        <LanguageSwitch />
      </div>
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {children}
    </div>
  );
}
