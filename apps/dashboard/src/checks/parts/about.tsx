import { type Check, type CheckEvidence, runCheck } from '@underlath/rules';
import { REFERRAL_WORDS, type Source, say } from '@underlath/rules/kernel';
import { useId } from 'react';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { checksWords } from '../../shared/i18n/messages/checks.ts';
import { measure } from '../../shared/i18n/messages/measure.ts';

/** A part of the sheet under its heading. */
export function SheetPart({ title, children }: { title: string; children: React.ReactNode }) {
  const id = useId();
  return (
    <section className="sheet-part" aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {children}
    </section>
  );
}

export function Rule({ check, evidence }: { check: Check; evidence: CheckEvidence }) {
  const t = useT(checksWords);
  const { locale } = useLocale();
  return (
    <SheetPart title={t('rule')}>
      {evidence.rule && <p className="sheet-rule">{say(evidence.rule, locale)}</p>}
      <dl className="sheet-pairs">
        <div>
          <dt>{t('whyItMatters')}</dt>
          <dd>{say(check.client.why, locale)}</dd>
        </div>
        <div>
          <dt>{t('ifLeft')}</dt>
          <dd>{say(check.client.ifNot, locale)}</dd>
        </div>
      </dl>
    </SheetPart>
  );
}

/** Every value it can answer, each with its formula in words. */
export function Answers({ evidence }: { evidence: CheckEvidence }) {
  const t = useT(checksWords);
  const { locale } = useLocale();
  return (
    <SheetPart title={t('answers')}>
      <dl className="sheet-pairs">
        {Object.entries(evidence.values).map(([name, { label, how }]) => (
          <div key={name}>
            <dt>{say(label, locale)}</dt>
            <dd>{say(how, locale)}</dd>
          </div>
        ))}
      </dl>
    </SheetPart>
  );
}

/** The documents, what was remembered or is habit said plainly. */
export function SheetSources({ check }: { check: Check }) {
  const t = useT(checksWords);
  return (
    <SheetPart title={t('sources')}>
      <SourceList sources={check.sources} />
    </SheetPart>
  );
}

export function SourceList({ sources }: { sources: readonly Source[] }) {
  const t = useT(checksWords);
  return (
    <ul className="sheet-sources">
      {sources.map((source) => (
        <li key={source.id}>
          <p lang="en">
            <b>{source.title}</b>
            {[source.edition, source.section].filter(Boolean).map((part) => `, ${part}`)}
          </p>
          <p className={source.basis === 'published' ? 'soft small' : 'small'}>
            {source.basis === 'published' ? t('published') : source.basis === 'memory' ? t('confirm') : t('practice')}
          </p>
        </li>
      ))}
    </ul>
  );
}

export function NotCovered({ check }: { check: Check }) {
  const t = useT(checksWords);
  const { locale } = useLocale();
  return (
    <SheetPart title={t('notCovered')}>
      <ul className="bulleted">
        {check.doesNotCover.map((words) => (
          <li key={words.en}>{say(words, locale)}</li>
        ))}
      </ul>
    </SheetPart>
  );
}

/** What stands with every verdict of this check, before anything is measured. */
export function Cautions({ check }: { check: Check }) {
  const t = useT(checksWords);
  const m = useT(measure);
  const { locale } = useLocale();
  const { cautions, referrals } = runCheck(check, { inputs: {} });
  return (
    <SheetPart title={t('cautions')}>
      <ul className="bulleted">
        {cautions.map((words) => (
          <li key={words.en}>{say(words, locale)}</li>
        ))}
      </ul>
      {referrals.length > 0 && (
        <p>
          <b>{m('refersTo', { who: referrals.map((who) => say(REFERRAL_WORDS[who], locale)).join(', ') })}</b>
        </p>
      )}
    </SheetPart>
  );
}
