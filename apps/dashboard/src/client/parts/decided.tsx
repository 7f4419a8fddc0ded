import type { ClientLetter, Decision } from '@underlath/contract';
import { formatCents, formatDate } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { client } from '../../shared/i18n/messages/letter.ts';
import { type Fact, Facts } from '../../shared/ui/facts.tsx';
import { WasIs } from '../../shared/ui/money.tsx';
import { type Chosen, inGroups } from '../letter-text.ts';
import { CopyButtons } from './keep-copy.tsx';
import { Titles } from './words.tsx';

/** What was decided, by whom and when, over the letter it was decided on. */
export function Decided({ letter, chosen }: { letter: ClientLetter; chosen: Chosen }) {
  return letter.decision && <Answer chosen={chosen} decision={letter.decision} />;
}

type AnswerProps = { chosen: Chosen; decision: Decision };

const answers = {
  approved: { title: 'approvedTitle', next: 'approvedNext' },
  part: { title: 'partApprovedTitle', next: 'partApprovedNext' },
  declined: { title: 'declinedTitle', next: 'declinedNext' },
} as const;

function Answer({ chosen, decision }: AnswerProps) {
  const t = useT(client);
  const { title, next } = answers[chosen.part ? 'part' : decision.kind];
  return (
    <section className="decided" aria-labelledby="decided">
      <h1 id="decided" tabIndex={-1} data-told>
        {t(title)}
      </h1>
      <p>{t(next)}</p>
      <AnswerFacts chosen={chosen} decision={decision} />
      <details className="more">
        <summary>{t('fingerprintFull')}</summary>
        <p className="hash">{inGroups(decision.sha256)}</p>
        <p>{t('fingerprintMeans')}</p>
      </details>
      <details className="more">
        <summary>{t('decidedConsent')}</summary>
        <p>{decision.consentText}</p>
      </details>
      <CopyButtons />
    </section>
  );
}

function AnswerFacts({ chosen: { part, left, letter }, decision }: AnswerProps) {
  const t = useT(client);
  const { tag } = useLocale();
  const approved = decision.kind === 'approved';
  const { document } = letter;
  const { contract } = document;
  const sum = (cents: number) => formatCents(cents, tag);
  const at = formatDate(decision.decidedAt, tag, 'long-day');
  const facts: Fact[] = [
    { name: t(approved ? 'decidedBy' : 'declinedBy'), value: decision.signerName },
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
    { name: t('fingerprint'), value: <code className="hash-short">{inGroups(decision.sha256.slice(0, 12))} …</code> },
  ];
  return <Facts facts={facts} />;
}
