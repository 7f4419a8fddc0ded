import { type ErrorComponentProps, Link } from '@tanstack/react-router';
import { problemOf } from '../shared/api/errors.ts';
import { useT } from '../shared/i18n/locale.tsx';
import { appWords } from '../shared/i18n/messages/app.ts';
import { buttonClass } from '../shared/ui/button.tsx';
import { FailState } from '../shared/ui/states.tsx';

export function NotFoundScreen() {
  const t = useT(appWords);
  return (
    <main id="main" className="gate lost">
      <title>{`${t('notFoundTitle')} · Underlath`}</title>
      <h1 tabIndex={-1}>{t('notFoundTitle')}</h1>
      <p className="lead">{t('notFoundLead')}</p>
      <p>
        <Link to="/" className={buttonClass('go')}>
          {t('toStart')}
        </Link>
      </p>
    </main>
  );
}

/** Last line of defense: a screen that broke while it was drawn. */
export function ErrorScreen({ error, reset }: ErrorComponentProps) {
  const t = useT(appWords);
  return (
    <main id="main" className="gate lost">
      <title>{`${t('errorTitle')} · Underlath`}</title>
      <h1 tabIndex={-1}>{t('errorTitle')}</h1>
      <FailState problem={problemOf(error)} onRetry={reset} />
      <p>
        <a href="/">{t('toStart')}</a>
      </p>
    </main>
  );
}
