import type { ChangeOrderDocument, ClientLetter, Decision } from '@underlath/contract';
import { formatCents, formatDate } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { client } from '../../shared/i18n/messages/client.ts';
import { type Fact, Facts } from '../../shared/ui/facts.tsx';
import { WasIs } from '../../shared/ui/money.tsx';
import { inGroups } from '../letter-text.ts';
import { CopyButtons } from './keep-copy.tsx';

/** What was decided, by whom and when, over the letter it was decided on. */
export function Decided({ letter }: { letter: ClientLetter }) {
  return letter.decision && <Answer document={letter.document} decision={letter.decision} />;
}

type AnswerProps = { document: ChangeOrderDocument; decision: Decision };

function Answer({ document, decision }: AnswerProps) {
  const t = useT(client);
  const approved = decision.kind === 'approved';
  return (
    <section className="decided" aria-labelledby="decided">
      <h1 id="decided" tabIndex={-1} data-told>
        {t(approved ? 'approvedTitle' : 'declinedTitle')}
      </h1>
      <p>{t(approved ? 'approvedNext' : 'declinedNext')}</p>
      <AnswerFacts document={document} decision={decision} />
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

function AnswerFacts({ document, decision }: AnswerProps) {
  const t = useT(client);
  const { tag } = useLocale();
  const approved = decision.kind === 'approved';
  const { contract } = document;
  const sum = (cents: number) => formatCents(cents, tag);
  const at = formatDate(decision.decidedAt, tag, 'long-day');
  const facts: Fact[] = [
    { name: t(approved ? 'decidedBy' : 'declinedBy'), value: decision.signerName },
    { name: t(approved ? 'decidedOn' : 'declinedOn'), value: <time dateTime={decision.decidedAt}>{at}</time> },
    ...(decision.reason ? [{ name: t('decidedReason'), value: decision.reason }] : []),
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
