import { type Check, type CheckEvidence, runCheck } from '@underlath/rules';
import { REFERRAL_WORDS, say, type Text } from '@underlath/rules/kernel';
import { type ReactNode, useId } from 'react';
import { useLocale, useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { measureWords } from '../shared/i18n/messages/measure.ts';

/** Sentences without repeats: several editions of one section are said alike. */
export const distinct = (texts: readonly Text[]): Text[] => [
  ...new Map(texts.map((words) => [words.en, words])).values(),
];

/** A part of the sheet under its heading. */
export function SheetPart({ id, title, children }: { id?: string; title: string; children: ReactNode }) {
  const own = useId();
  const heading = id ?? own;
  return (
    <section className="sheet-part" aria-labelledby={heading}>
      <h2 id={heading}>{title}</h2>
      {children}
    </section>
  );
}

export function Rule({ check, evidence }: { check: Check; evidence: CheckEvidence }) {
  const t = useT(checksWords);
  const { locale } = useLocale();
  return (
    <SheetPart id="rule" title={t('rule')}>
      <p className="sheet-rule">{say(evidence.rule, locale)}</p>
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

const UNREAD = { 'second-hand': 'secondHand', memory: 'confirm', 'common-practice': 'practice' } as const;

/** The documents, what was not read in print said plainly. */
export function SheetSources({ check }: { check: Check }) {
  const t = useT(checksWords);
  return (
    <SheetPart id="sources" title={t('sources')}>
      <ul className="sheet-sources">
        {check.sources.map((source) => (
          <li key={source.id}>
            <span lang="en">
              <b>{source.title}</b>
              {[source.edition, source.section].filter(Boolean).map((part) => `, ${part}`)}
            </span>{' '}
            {source.basis === 'published' ? (
              <span className="soft">{t('published')}.</span>
            ) : (
              <b className="not-in-print">{t(UNREAD[source.basis])}</b>
            )}
          </li>
        ))}
      </ul>
    </SheetPart>
  );
}

export function NotCovered({ check }: { check: Check }) {
  const t = useT(checksWords);
  const { locale } = useLocale();
  return (
    <SheetPart id="limits" title={t('notCovered')}>
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
  const m = useT(measureWords);
  const { locale } = useLocale();
  const { cautions, referrals } = runCheck(check, { inputs: {} });
  return (
    <SheetPart title={t('cautions')}>
      <ul className="bulleted">
        {distinct(cautions).map((words) => (
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
