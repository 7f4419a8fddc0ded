import type { ClientLetter, Decision } from '@underlath/contract';
import { formatMoney } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { useDate } from '../../shared/i18n/site-zone.tsx';
import { type Fact, Facts } from '../../shared/ui/facts.tsx';
import { WasIs } from '../../shared/ui/money.tsx';
import { Titles } from '../words.tsx';
import { CopyButtons } from './keep-copy.tsx';
import { type Chosen, inGroups } from './letter-text.ts';

/** What was decided, by whom and when, over the letter it was decided on. */
export function Decided({ letter, chosen }: { letter: ClientLetter; chosen: Chosen }) {
  return letter.decision && <Answer chosen={chosen} decision={letter.decision} isYours={letter.answeredHere} />;
}

type AnswerProps = { chosen: Chosen; decision: Decision };

const answers = {
  approved: { yours: 'approvedTitle', theirs: 'approvedByTitle', next: 'approvedNext' },
  part: { yours: 'partApprovedTitle', theirs: 'partApprovedByTitle', next: 'partApprovedNext' },
  declined: { yours: 'declinedTitle', theirs: 'declinedByTitle', next: 'declinedNext' },
} as const;

/** "You" is who signed, in the session that signed; everyone else who opens the letter reads the name. */
function Answer({ chosen, decision, isYours }: AnswerProps & { isYours: boolean }) {
  const t = useT(letterWords);
  const say = useDate();
  const { yours, theirs, next } = answers[chosen.part ? 'part' : decision.kind];
  const date = say(decision.decidedAt, 'long-day');
  return (
    <section className="decided" aria-labelledby="decided">
      <h1 id="decided" tabIndex={-1} data-told>
        {isYours ? t(yours) : t(theirs, { name: decision.signerName, date })}
      </h1>
      <p>{t(next)}</p>
      <AnswerFacts chosen={chosen} decision={decision} />
      <details className="more">
        <summary>{t('fingerprintFull')}</summary>
        <p className="hash">{inGroups(decision.sha256)}</p>
        <p>{t('fingerprintMeans')}</p>
      </details>
      <Ticked title={t('decidedConsent')} words={decision.consentText} lang={decision.locale} />
      <Ticked title={t('decidedUnderstood')} words={decision.acknowledged} lang={decision.locale} />
      <p>{t('decidedKeep')}</p>
      <CopyButtons />
    </section>
  );
}

/** Kept in the language it was shown in. */
function Ticked({ title, words, lang }: { title: string; words: string | null; lang: Decision['locale'] }) {
  return (
    words !== null && (
      <details className="more">
        <summary>{title}</summary>
        <p lang={lang}>{words}</p>
      </details>
    )
  );
}

function AnswerFacts({ chosen: { part, left, letter }, decision }: AnswerProps) {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const approved = decision.kind === 'approved';
  const { document } = letter;
  const { contract } = document;
  const sum = (cents: number) => formatMoney(cents, tag);
  const say = useDate();
  const day = (value: string) => say(value, 'long-day');
  const at = day(decision.decidedAt);
  const facts: Fact[] = [
    { name: t(approved ? 'decidedBy' : 'declinedBy'), value: decision.signerName },
    ...(decision.letterFor
      ? [{ name: t('decidedFor'), value: t('decidedForLine', { name: decision.letterFor }) }]
      : []),
    { name: t(approved ? 'decidedOn' : 'declinedOn'), value: <time dateTime={decision.decidedAt}>{at}</time> },
    ...(decision.reason ? [{ name: t('decidedReason'), value: decision.reason }] : []),
    ...(part
      ? [
          { name: t('decidedDone'), value: <Titles items={document.items} /> },
          { name: t('reviewLeft'), value: <Titles items={left} /> },
        ]
      : []),
    { name: t('decidedWhat'), value: t('orderVersion', { number: document.number, version: decision.version }) },
    {
      name: t('totalContract'),
      value: approved ? (
        <WasIs was={sum(contract.beforeCents)} is={sum(contract.afterCents)} />
      ) : (
        sum(contract.beforeCents)
      ),
    },
    ...(approved && contract.daysBefore !== contract.daysAfter
      ? [
          {
            name: t(contract.dayKind === 'calendar' ? 'contractCalendarDays' : 'contractDays'),
            value: <WasIs was={contract.daysBefore} is={contract.daysAfter} />,
          },
        ]
      : []),
    ...(contract.finishAfter ? [{ name: t('contractFinish'), value: day(contract.finishAfter) }] : []),
    { name: t('fingerprint'), value: <code className="hash-short">{inGroups(decision.sha256.slice(0, 12))} …</code> },
  ];
  return <Facts facts={facts} />;
}
