import { type CheckEvidence, type Outcome, REFERRAL_WORDS, say } from '@underlath/rules';
import { MeasureScale } from '../shared/drawing/scales.tsx';
import { formatShare } from '../shared/i18n/format.ts';
import { useLocale, useT } from '../shared/i18n/locale.tsx';
import { checksWords } from '../shared/i18n/messages/checks.ts';
import { measureWords } from '../shared/i18n/messages/measure.ts';
import { AssumedList, Sources } from '../shared/measure/outcome-view.tsx';
import { quantityText, splitName, valueLabel } from '../shared/measure/quantity.ts';
import { distinct } from './about.tsx';

type WorkingProps = { outcome: Outcome; evidence: CheckEvidence; edition: string };

/** Everything behind the verdict: how far off, why, every value with its formula and number, the rule, the cautions. */
export function Working({ outcome, evidence, edition }: WorkingProps) {
  const t = useT(checksWords);
  const m = useT(measureWords);
  const { locale, tag } = useLocale();
  const makeSafe = outcome.severity === 'make-safe';
  // The rules package puts what to do at once first among the cautions of a make-safe.
  const cautions = distinct(outcome.cautions);
  const [first, ...others] = cautions;
  return (
    <div className="working stack">
      {makeSafe && first && (
        <section className="do-now">
          <h3>{m('doNow')}</h3>
          <p>{say(first, locale)}</p>
        </section>
      )}
      {outcome.ratio !== null && (
        <section>
          <MeasureScale
            value={outcome.ratio}
            limit={1}
            moreIsBetter={false}
            format={(value) => value.toFixed(2)}
            limitName={t('limit1')}
            from={0}
          />
          <p className="soft small">{t('ratioLead')}</p>
        </section>
      )}
      <ul className="bulleted">
        {distinct(outcome.reasons.slice(1)).map((reason) => (
          <li key={reason.en}>{say(reason, locale)}</li>
        ))}
        {outcome.remaining !== null && outcome.remaining < 1 && (
          <li>
            {outcome.remaining === 0
              ? m('remainingNone')
              : m('remainingShare', { share: formatShare(outcome.remaining, tag) })}
          </li>
        )}
      </ul>
      <AssumedList assumed={outcome.assumed?.map(({ input, text }) => ({ input, text: say(text, locale) }))} />
      {outcome.referrals.length > 0 && (
        <p>
          <b>{m('refersTo', { who: outcome.referrals.map((who) => say(REFERRAL_WORDS[who], locale)).join(', ') })}</b>
        </p>
      )}
      <section>
        <h3>{t('working')}</h3>
        <WorkedValues outcome={outcome} evidence={evidence} />
      </section>
      <p>{t('judgedUnder', { edition })}</p>
      <Sources sources={outcome.sources} />
      <section>
        <h3>{m('cautions')}</h3>
        <ul className="bulleted">
          {(makeSafe ? others : cautions).map((caution) => (
            <li key={caution.en}>{say(caution, locale)}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

/** Each value with its number and, in words, how it came about. */
function WorkedValues({ outcome, evidence }: Omit<WorkingProps, 'edition'>) {
  const t = useT(checksWords);
  const { locale } = useLocale();
  const values = Object.entries(outcome.values);
  if (values.length === 0) return <p className="soft">{t('workingNone')}</p>;
  return (
    <dl className="working-values">
      {values.map(([name, quantity]) => {
        const how = evidence.values[splitName(name).declared]?.how;
        return (
          <div key={name}>
            <dt>
              {valueLabel(name, evidence.values, locale) ?? name}
              {how && <span className="soft small">{say(how, locale)}</span>}
            </dt>
            <dd>{quantityText(quantity, locale)}</dd>
          </div>
        );
      })}
    </dl>
  );
}
