import { Link, useNavigate, useSearch } from '@tanstack/react-router';
import { checkEntries, checksByElement } from '@underlath/rules';
import { say } from '@underlath/rules/kernel';
import { useState } from 'react';
import { CheckPicture } from '../shared/drawing/check-picture.tsx';
import { useLocale, useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { useAllChecks } from '../shared/measure/use-check.ts';
import { TextInput } from '../shared/ui/field.tsx';
import { EmptyState } from '../shared/ui/states.tsx';
import { type Findable, findChecks } from './find-checks.ts';
import { SheetFrame } from './sheet-frame.tsx';

/** Every check there is, by element, each with its drawing. They come with the program, so nothing is read from the server. */
export function ChecksScreen() {
  const t = useT(checksWords);
  const { locale } = useLocale();
  const { q = '' } = useSearch({ from: '/checks' });
  const navigate = useNavigate();
  const [typed, setTyped] = useState(q);
  // Until all are read, the names and questions are searched.
  const { checks = checkEntries }: { checks?: readonly Findable[] | undefined } = useAllChecks();
  const shown = findChecks(checks, typed);
  const look = (next: string) => {
    setTyped(next);
    void navigate({ to: '/checks', search: next.trim() ? { q: next.trim() } : {}, replace: true, resetScroll: false });
  };
  return (
    <SheetFrame title={t('title')}>
      <div className="index-head">
        <div>
          <h1 tabIndex={-1}>{t('title')}</h1>
          <p className="lead">{t('lead')}</p>
        </div>
        <search>
          <TextInput
            type="search"
            label={t('search')}
            hint={t('searchHint')}
            value={typed}
            onChange={look}
            autoComplete="off"
          />
          <p role="status" className="small">
            {typed.trim() === ''
              ? t('found', { count: checks.length })
              : t('foundOf', { count: shown.length, all: checks.length })}
          </p>
        </search>
      </div>
      {shown.length === 0 && (
        <EmptyState title={t('noneFound')}>
          <p>{t('noneFoundHelp')}</p>
        </EmptyState>
      )}
      {checksByElement(shown).map(({ id, name, checks: group }) => (
        <section key={id} className="index-part">
          <h2>{say(name, locale)}</h2>
          <ul>
            {group.map((check) => (
              <li key={check.id} className="index-line">
                <CheckPicture checkId={check.id} />
                <div>
                  <h3>
                    <Link to="/checks/$checkId" params={{ checkId: check.id }}>
                      {say(check.title, locale)}
                    </Link>
                  </h3>
                  <p>{say(check.question, locale)}</p>
                </div>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </SheetFrame>
  );
}
