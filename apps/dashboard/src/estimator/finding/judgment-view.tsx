import { Link } from '@tanstack/react-router';
import type { Judgment } from '@underlath/contract';
import { REFERRAL_WORDS } from '@underlath/rules/kernel';
import { MeasureScale } from '../../shared/drawing/scales.tsx';
import { AssumedList, Sources } from '../../shared/measure/outcome-view.tsx';
import { toSearch } from '../../shared/measure/share-link.ts';
import { useCheck } from '../../shared/measure/use-check.ts';
import { SeverityMark, SeverityNote, VerdictWord } from '../../shared/ui/severity.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { AnswerFacts } from '../desk/check-values.tsx';
import { InputFacts } from './input-facts.tsx';

const percent = (share: number): string => `${Math.round(share * 100)}%`;

/** What the newest judgment says: the verdict, and how far off it is. */
export function JudgmentView({ judgment }: { judgment: Judgment }) {
  const { answer } = judgment;
  const makeSafe = answer.severity === 'make-safe';
  return (
    <div className="judgment stack">
      <SeverityNote severity={answer.severity}>
        <p>
          <VerdictWord verdict={answer.verdict} restsOn={answer.restsOn} />. {answer.reasons[0]}
        </p>
        {makeSafe && (
          <ol className="numbered">
            {answer.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ol>
        )}
      </SeverityNote>
      <section>
        <h3>Measured against the rule</h3>
        {answer.ratio !== null && (
          <MeasureScale
            value={answer.ratio}
            limit={1}
            moreIsBetter={false}
            format={percent}
            limitName="100%"
            from={0}
          />
        )}
        <AnswerFacts answer={answer} />
      </section>
    </div>
  );
}

/** The rest of the judgment: reasons, whose decision it is, the rule's sources, cautions, and what went in. */
export function JudgmentGrounds({ judgment }: { judgment: Judgment }) {
  const { answer } = judgment;
  const withCautions = answer.severity !== 'make-safe';
  return (
    <div className="judgment stack">
      {answer.reasons.length > 1 && (
        <section>
          <h3>Why</h3>
          <ul className="bulleted">
            {answer.reasons.slice(1).map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </section>
      )}
      <AssumedList assumed={answer.assumed} />
      {answer.referrals.length > 0 && (
        <p>
          <b>Belongs to: {answer.referrals.map((who) => REFERRAL_WORDS[who].en).join(', ')}.</b>
        </p>
      )}
      <Sources sources={answer.sources} />
      {withCautions && answer.cautions.length > 0 && (
        <ul className="bulleted soft">
          {answer.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      <details>
        <summary>What was measured</summary>
        <InputFacts checkId={judgment.checkId} inputs={judgment.inputs} />
      </details>
      <WorkingLink judgment={judgment} />
    </div>
  );
}

/** To the sheet of the check, filled with what was measured; nothing where this version no longer has the check. */
function WorkingLink({ judgment: { checkId, inputs, context, answer } }: { judgment: Judgment }) {
  const { check } = useCheck(checkId);
  if (!check) return null;
  return (
    <p>
      <Link
        to="/checks/$checkId"
        params={{ checkId }}
        search={toSearch(check, { inputs, context, edition: answer.edition })}
      >
        See the working on the sheet of this check
      </Link>
    </p>
  );
}

/** Every judgment the finding ever had, newest first. None is ever edited or taken away. */
export function JudgmentHistory({ judgments }: { judgments: readonly Judgment[] }) {
  if (judgments.length === 0) return null;
  const inOrder = judgments.toSorted((a, b) => b.seq - a.seq);
  return (
    <details className="history">
      <summary>{judgments.length === 1 ? 'One judgment so far' : `All ${judgments.length} judgments`}</summary>
      <ol className="history-list">
        {inOrder.map((judgment) => (
          <li key={judgment.id}>
            <p className="history-head">
              <b>{judgment.seq}</b>
              <SeverityMark severity={judgment.answer.severity} />
              <VerdictWord verdict={judgment.answer.verdict} restsOn={judgment.answer.restsOn} />
            </p>
            <p className="soft small">
              <Stamp at={judgment.judgedAt} look="day-time" /> by {judgment.judgedBy.name} · {judgment.edition} · rules{' '}
              {judgment.rulesVersion}
            </p>
            <p>{judgment.answer.reasons[0]}</p>
            <InputFacts checkId={judgment.checkId} inputs={judgment.inputs} />
          </li>
        ))}
      </ol>
    </details>
  );
}
