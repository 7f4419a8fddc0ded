import type { ReactNode } from 'react';
import { useT } from '../../shared/i18n/locale.tsx';
import { appWords } from '../../shared/i18n/messages/app.ts';
import { LanguageChoice } from '../../shared/ui/language-choice.tsx';
import { GateDrawing } from './gate-drawing.tsx';

/** The page before the house: one column of questions beside an opened wall. */
export function Gate({ title, lead, children }: { title: string; lead?: ReactNode; children: ReactNode }) {
  const t = useT(appWords);
  return (
    <div className="gate-page">
      <title>{`${title} · Underlath`}</title>
      <header className="gate-head">
        <p className="brand">Underlath</p>
        <LanguageChoice />
      </header>
      <main id="main" className="gate">
        <h1 tabIndex={-1}>{title}</h1>
        {lead && <div className="lead">{lead}</div>}
        {children}
      </main>
      <figure className="gate-figure">
        <GateDrawing />
        <figcaption className="soft">{t('tagline')}</figcaption>
      </figure>
    </div>
  );
}
