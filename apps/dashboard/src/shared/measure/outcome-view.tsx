import { type Basis, type Outcome, type Severity, say, type UnreadBasis, type Verdict } from '@underlath/rules/kernel';
import { formatShare } from '../i18n/format.ts';
import { useLocale, useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { measureWords } from '../i18n/messages/measure.ts';
import { SeverityMark, SeverityNote, VerdictWord } from '../ui/severity.tsx';
import './measure.css';

/** What the parts of this file show: an outcome already in one language. A stored judgment's answer has this shape too. */
export type SaidOutcome = {
  verdict: Verdict;
  restsOn?: readonly UnreadBasis[] | undefined;
  severity: Severity;
  remaining: number | null;
  reasons: readonly string[];
  /** Absent from judgments stored before it was said. */
  assumed?: readonly { input: string; text: string }[];
  cautions: readonly string[];
  referrals: readonly ('engineer' | 'official' | 'specialist')[];
  sources: readonly { id: string; title: string; edition: string; section: string; basis: Basis }[];
};

/** An outcome of the rules package in the reader's language. */
export function useSaid(outcome: Outcome | null): SaidOutcome | null {
  const { locale } = useLocale();
  if (!outcome) return null;
  return {
    ...outcome,
    reasons: outcome.reasons.map((reason) => say(reason, locale)),
    assumed: outcome.assumed?.map((one) => ({ input: one.input, text: say(one.text, locale) })) ?? [],
    cautions: outcome.cautions.map((caution) => say(caution, locale)),
  };
}

/** Under a question: severity, verdict, and the first reason. Announced when it changes. */
export function LiveVerdict({ outcome }: { outcome: Outcome | null }) {
  const said = useSaid(outcome);
  const t = useT(measureWords);
  return (
    <div className="live-verdict" aria-live="polite">
      {isTold(said) ? (
        <SeverityNote severity={said.severity}>
          <p>
            <VerdictWord verdict={said.verdict} restsOn={said.restsOn} />. {said.reasons[0]}
          </p>
        </SeverityNote>
      ) : (
        <p className="live-verdict-none soft">{t('measureMore')}</p>
      )}
    </div>
  );
}

/** One line that stays in sight over the action while the keys are pressed. Make-safe fills it. */
export function VerdictLine({ outcome }: { outcome: Outcome | null }) {
  const said = useSaid(outcome);
  const t = useT(measureWords);
  const told = isTold(said);
  return (
    <p
      className={
        told && said.severity === 'make-safe' ? 'verdict-line verdict-line-make-safe keeps-colour' : 'verdict-line'
      }
      aria-live="polite"
    >
      {told ? (
        <>
          <SeverityMark severity={said.severity} /> <VerdictWord verdict={said.verdict} restsOn={said.restsOn} />
        </>
      ) : (
        <span className="soft">{t('measureMore')}</span>
      )}
    </p>
  );
}

const isTold = (said: SaidOutcome | null): said is SaidOutcome =>
  said !== null && (said.verdict !== 'undetermined' || said.severity === 'make-safe');

/** The whole answer: make-safe steps first, then why, then the rule it was measured against. */
export function OutcomeView({
  outcome,
  sources = 'open',
}: {
  outcome: SaidOutcome;
  sources?: 'open' | 'folded' | 'none';
}) {
  const t = useT(measureWords);
  const { tag } = useLocale();
  const makeSafe = outcome.severity === 'make-safe';
  // The rules package puts what to do at once first among the cautions of a make-safe.
  const [first, ...others] = outcome.cautions;
  return (
    <div className="outcome stack">
      <SeverityNote severity={outcome.severity}>
        <p>
          <VerdictWord verdict={outcome.verdict} restsOn={outcome.restsOn} />. {outcome.reasons[0]}
        </p>
      </SeverityNote>
      {makeSafe && first && (
        <section className="do-now">
          <h3>{t('doNow')}</h3>
          <p>{first}</p>
        </section>
      )}
      {outcome.reasons.slice(1).map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
      {outcome.remaining !== null && outcome.remaining < 1 && (
        <p>
          {outcome.remaining === 0
            ? t('remainingNone')
            : t('remainingShare', { share: formatShare(outcome.remaining, tag) })}
        </p>
      )}
      <AssumedList assumed={outcome.assumed} />
      {outcome.referrals.length > 0 && (
        <p>
          <b>{t('refersTo', { who: outcome.referrals.map((who) => t(who)).join(', ') })}</b>
        </p>
      )}
      {(makeSafe ? others : outcome.cautions).length > 0 && (
        <ul className="bulleted soft">
          {(makeSafe ? others : outcome.cautions).map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      {sources !== 'none' && <Sources sources={outcome.sources} folded={sources === 'folded'} />}
    </div>
  );
}

/** What the answer takes for granted because nobody said it. */
export function AssumedList({ assumed = [] }: { assumed?: SaidOutcome['assumed'] }) {
  const t = useT(measureWords);
  if (assumed.length === 0) return null;
  return (
    <section>
      <h3>{t('assumed')}</h3>
      <ul className="bulleted">
        {assumed.map(({ input, text }) => (
          <li key={input}>{text}</li>
        ))}
      </ul>
    </section>
  );
}

const BASIS_KEYS = {
  published: 'basisPublished',
  'second-hand': 'basisSecondHand',
  memory: 'basisMemory',
  'common-practice': 'basisCommonPractice',
} as const;

/** The documents a verdict rests on, each with its edition, section and how it is known. */
export function Sources({ sources, folded }: { sources: SaidOutcome['sources']; folded?: boolean }) {
  const t = useT(measureWords);
  const c = useT(commonWords);
  const list = (
    <ul>
      {sources.map((source) => (
        <li key={source.id}>
          {[source.title, source.edition, source.section].filter(Boolean).join(', ')}
          <span className="soft"> · {c(BASIS_KEYS[source.basis])}</span>
        </li>
      ))}
    </ul>
  );
  if (folded) {
    return (
      <details className="sources">
        <summary>{t('sourcesCount', { count: sources.length })}</summary>
        {list}
      </details>
    );
  }
  return (
    <section className="sources">
      <h3>{t('sources')}</h3>
      {list}
    </section>
  );
}
