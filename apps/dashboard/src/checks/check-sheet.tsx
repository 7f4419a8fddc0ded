import { type Check, type CheckEvidence, rulesVersion } from '@underlath/rules';
import { useRef } from 'react';
import { useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { useAnnounce } from '../shared/ui/status.tsx';
import { Answers, Cautions, NotCovered, Rule, SheetSources } from './about.tsx';
import { Cases, inputsOf, type RunCase } from './cases.tsx';
import { Editions } from './editions.tsx';
import { MeasureList } from './measure-list.tsx';
import { TryCheck } from './try-check.tsx';
import { useShared } from './use-shared.ts';

type SheetProps = { check: Check; evidence: CheckEvidence; cases: readonly RunCase[] };

/** The sheet of a check: on one page what it is, on the facing one its form to try. */
export function CheckSheet({ check, evidence, cases }: SheetProps) {
  const t = useT(checksWords);
  const announce = useAnnounce();
  const { shared, change, troubles, link } = useShared(check);
  const tryHeading = useRef<HTMLHeadingElement>(null);
  const start = ({ one }: RunCase) => {
    change({ inputs: inputsOf(check, one), edition: one.edition, context: one.situation ?? {} });
    announce(t('filled', { name: one.name }));
    tryHeading.current?.focus();
    tryHeading.current?.scrollIntoView({ block: 'start' });
  };
  return (
    <>
      <Contents />
      <div className="spread">
        <div className="spread-measure">
          <MeasureList check={check} />
        </div>
        <section className="spread-try" aria-labelledby="try">
          <h2 id="try" ref={tryHeading} tabIndex={-1}>
            {t('tryIt')}
          </h2>
          <TryCheck
            check={check}
            evidence={evidence}
            cases={cases}
            shared={shared}
            onChange={change}
            onStart={start}
            troubles={troubles}
            link={link}
          />
        </section>
        <div className="spread-about">
          <Rule check={check} evidence={evidence} />
          <Answers evidence={evidence} />
          <Editions check={check} evidence={evidence} shared={shared} cases={cases} />
          <SheetSources check={check} />
          <Cases cases={cases} onStart={start} />
          <NotCovered check={check} />
          <Cautions check={check} />
        </div>
      </div>
    </>
  );
}

/** Ways down a sheet that is one long column on a phone. */
function Contents() {
  const t = useT(checksWords);
  const parts = { try: t('tryIt'), rule: t('rule'), sources: t('sources'), cases: t('cases'), limits: t('notCovered') };
  return (
    <nav className="sheet-contents no-print" aria-label={t('contents')}>
      <ul>
        {Object.entries(parts).map(([id, title]) => (
          <li key={id}>
            <a href={`#${id}`}>{title}</a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** What stands in the corner of a drawing sheet: which one it is, and how far it can be trusted. */
export function TitleBlock({ check, cases }: { check: Check; cases: readonly RunCase[] }) {
  const t = useT(checksWords);
  const pass = cases.filter(({ differences }) => differences.length === 0).length;
  return (
    <dl className="title-block">
      <div className="title-block-wide">
        <dt>{t('sheet')}</dt>
        <dd>{check.id}</dd>
      </div>
      <div>
        <dt>{t('casesCell')}</dt>
        <dd>{t('casesPass', { pass, count: cases.length })}</dd>
      </div>
      <div>
        <dt>{t('rules')}</dt>
        <dd>{rulesVersion}</dd>
      </div>
    </dl>
  );
}
