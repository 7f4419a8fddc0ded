import { Link } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import type { Locale } from '@underlath/rules/kernel';
import { SEVERITIES } from '@underlath/rules/kernel';
import { countKeptMeasures } from '../../shared/account/kept-here.ts';
import { SignOut } from '../../shared/account/sign-out.tsx';
import { problemOf } from '../../shared/api/errors.ts';
import { usePages } from '../../shared/api/hooks.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { accountWords } from '../../shared/i18n/messages/account.ts';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { RadioGroup } from '../../shared/ui/choice.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { EmptyState, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { CrewFrame } from '../crew-frame.tsx';
import { useUnsentCount } from '../outbox/use-outbox.tsx';

/** The crew's first screen: their projects, the worst of each in words. */
export function CrewProjectsScreen() {
  const t = useT(crewWords);
  const c = useT(commonWords);
  const projects = usePages(routes.listProjects, {});
  const problem = projects.error && projects.items.length === 0 ? problemOf(projects.error) : null;
  return (
    <CrewFrame>
      <h1>{t('myProjects')}</h1>
      {problem && (
        <FailState
          problem={problem}
          doing={t('reading', { what: t('theProjects') })}
          onRetry={() => projects.refetch()}
          retrying={projects.isFetching}
        />
      )}
      {projects.isPending && <LoadingRows rows={3} tall />}
      {projects.isSuccess && projects.items.length === 0 && (
        <EmptyState title={t('noProjects')}>
          <p>{t('noProjectsHelp')}</p>
        </EmptyState>
      )}
      <ul className="lines">
        {projects.items.map((project) => {
          const open = SEVERITIES.reduce((sum, severity) => sum + project.open[severity], 0);
          const worst = SEVERITIES.find((severity) => project.open[severity] > 0);
          return (
            <li key={project.id}>
              <Link to="/crew/$projectId" params={{ projectId: project.id }} className="line">
                <span className="line-words">
                  <b>{project.name}</b>
                  <span className="soft">{project.siteAddress}</span>
                  <span>
                    {worst && <SeverityMark severity={worst} />}{' '}
                    <span className="soft">{open > 0 ? t('openFindings', { count: open }) : t('nothingOpen')}</span>
                  </span>
                </span>
                <span aria-hidden="true">→</span>
              </Link>
            </li>
          );
        })}
      </ul>
      {projects.hasNextPage && (
        <Button wide onClick={() => projects.fetchNextPage()} busy={projects.isFetchingNextPage}>
          {c('next')}
        </Button>
      )}
      <Settings />
    </CrewFrame>
  );
}

function Settings() {
  const c = useT(commonWords);
  const a = useT(accountWords);
  const { locale, setLocale } = useLocale();
  const unsent = useUnsentCount() + countKeptMeasures();
  return (
    <section className="crew-settings stack">
      <RadioGroup<Locale>
        label={c('language')}
        layout="row"
        value={locale}
        onChange={setLocale}
        options={[
          { value: 'en', label: c('english') },
          { value: 'es', label: c('spanish') },
        ]}
      />
      <Link to="/crew/account" className={buttonClass('quiet')}>
        {a('toAccount')}
      </Link>
      <SignOut
        unsent={unsent}
        seeUnsent={
          <p>
            <Link to="/crew/unsent">{a('signOutSee')}</Link>
          </p>
        }
      />
    </section>
  );
}
