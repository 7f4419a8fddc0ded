import { Link } from '@tanstack/react-router';
import { rulesVersion } from '@underlath/rules';
import type { ReactNode } from 'react';
import { useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { commonWords } from '../shared/i18n/messages/common.ts';
import { LanguageChoice } from '../shared/ui/language-choice.tsx';
import './checks.css';

/** The line above and below every page of the checks. Nobody needs to be signed in, and nothing is asked of the server. */
export function SheetFrame({ title, children }: { title: string; children: ReactNode }) {
  const t = useT(checksWords);
  const c = useT(commonWords);
  return (
    <div className="handbook">
      <title>{`${title} · Underlath`}</title>
      <header className="handbook-line no-print">
        <Link to="/checks" className="brand">
          Underlath
        </Link>
        <nav aria-label={t('title')}>
          <Link to="/checks" activeOptions={{ exact: true }}>
            {t('allChecks')}
          </Link>
          <Link to="/">{t('projects')}</Link>
        </nav>
        <LanguageChoice />
      </header>
      <main id="main" className="handbook-main">
        {children}
      </main>
      <footer className="handbook-foot soft">
        <p>{c('screeningOnly')}</p>
        <p>
          {t('rules')} {rulesVersion}
        </p>
      </footer>
    </div>
  );
}
