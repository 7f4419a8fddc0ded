import type { ClientLetter } from '@underlath/contract';
import { formatMoney } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { useDate } from '../../shared/i18n/site-zone.tsx';
import { Facts } from '../../shared/ui/facts.tsx';
import { Money, WasIs } from '../../shared/ui/money.tsx';
import type { ClientKey } from '../problem-words.ts';
import { ContractMoved, ContractWaiting } from './contract-moved.tsx';
import { type Chosen, wordsIn } from './letter-text.ts';

const afterKeys: Record<ClientLetter['state'], ClientKey> = {
  open: 'contractAfterAsk',
  approved: 'contractAfterDone',
  'part-approved': 'contractAfterDone',
  declined: 'contractAfterDeclined',
};

/** What the change does to the contract as it stands now: sum, days and finish; after a decline, that it does nothing. */
export function ContractChange({ chosen: { letter, withWaiting } }: { chosen: Chosen }) {
  const t = useT(letterWords);
  const { contract } = letter.document;
  const declined = letter.state === 'declined';
  const sums = [
    { name: t('contractOriginal'), value: <Money cents={contract.originalSumCents} /> },
    { name: t('contractPrevious'), value: <Money cents={contract.previousChangesCents} sign /> },
    ...(contract.allowancesCents
      ? [{ name: t('contractAllowances'), value: <Money cents={contract.allowancesCents} sign /> }]
      : []),
    ...(declined ? [] : [{ name: t('contractThis'), value: <Money cents={contract.thisChangeCents} sign /> }]),
  ];
  const after = declined ? contract.beforeCents : contract.afterCents;
  return (
    <section aria-labelledby="contract">
      <h2 id="contract">{t('yourContract')}</h2>
      <p>{t('contractSumMeans')}</p>
      <ContractMoved letter={letter} />
      <div className="contract-sums keep-together">
        <Facts facts={sums} />
        <dl className="price-foot">
          <div className="foot-total">
            <dt>{t(afterKeys[letter.state])}</dt>
            <dd>
              <Money cents={after} />
            </dd>
          </div>
        </dl>
        {!declined && <ContractTime letter={letter} />}
        {!declined && <ContractPayments letter={letter} />}
        <ContractSince letter={letter} />
        <ContractWaiting letter={letter} all={withWaiting} />
      </div>
    </section>
  );
}

/** After an answer: that other changes came, where they did; the sums above stay those of the answer. */
function ContractSince({ letter }: { letter: ClientLetter }) {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const now = letter.contract.whole.contract.beforeCents;
  if (letter.state === 'open' || now === letter.document.contract.afterCents) return null;
  return <p>{t('contractSince', { total: formatMoney(now, tag) })}</p>;
}

/** What is added to each payment still to come, where the contract's payments are written down. */
function ContractPayments({ letter }: { letter: ClientLetter }) {
  const t = useT(letterWords);
  const { locale } = useLocale();
  const { payments = [] } = letter.document.contract;
  if (payments.length === 0) return null;
  return (
    <>
      <h3>{t('contractPayments')}</h3>
      <Facts
        facts={payments.map(({ name, cents }) => {
          const { words, lang } = wordsIn(name, locale);
          return { name: words, lang, value: <Money cents={cents} sign /> };
        })}
      />
    </>
  );
}

function ContractTime({ letter }: { letter: ClientLetter }) {
  const t = useT(letterWords);
  const day = useDate();
  const { contract } = letter.document;
  const { finishBefore, finishAfter } = contract;
  return (
    <Facts
      facts={[
        {
          name: t(contract.dayKind === 'calendar' ? 'contractCalendarDays' : 'contractDays'),
          value: <WasIs was={contract.daysBefore} is={contract.daysAfter} />,
        },
        {
          name: t('contractFinish'),
          value:
            finishBefore && finishAfter ? (
              <WasIs was={day(finishBefore)} is={day(finishAfter)} />
            ) : (
              t('contractFinishNone')
            ),
        },
      ]}
    />
  );
}
