import type { ClientLetter, ContractStanding } from '@underlath/contract';
import { formatMoney } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { useDate } from '../../shared/i18n/site-zone.tsx';
import { type Fact, Facts } from '../../shared/ui/facts.tsx';
import { Money, WasIs } from '../../shared/ui/money.tsx';

type Move = ClientLetter['contract']['moves'][number];

/** That the contract is no longer the one of the letter's day, by what, and that the sums shown are those of now. */
export function ContractMoved({ letter }: { letter: ClientLetter }) {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const say = useDate();
  const moveFact = useMoveFact();
  const { contract, sentAt } = letter.document;
  const { hasMoved, moves, isTimeCountedAnew, told } = letter.contract;
  if (!hasMoved || letter.state !== 'open') return null;
  return (
    <div className="notice keep-together">
      <p>
        <b>{t('movedTitle')}</b>
      </p>
      <p>{t('movedSince', { date: say(sentAt, 'long-day') })}</p>
      <Facts
        facts={[
          ...moves.map(moveFact),
          ...(told.sumCents === contract.beforeCents
            ? []
            : [
                {
                  name: t('totalContract'),
                  value: <WasIs was={formatMoney(told.sumCents, tag)} is={formatMoney(contract.beforeCents, tag)} />,
                },
              ]),
        ]}
      />
      {isTimeCountedAnew && <p>{t('movedTime')}</p>}
    </div>
  );
}

function useMoveFact(): (move: Move) => Fact {
  const t = useT(letterWords);
  const say = useDate();
  return ({ kind, number, name, on, cents, days }) => {
    const date = say(on, 'long-day');
    const what =
      kind === 'change'
        ? t('movedChange', { number: number ?? 0, date })
        : t(kind === 'allowance' ? 'movedAllowance' : 'movedTakenBack', { name, date });
    return {
      name: what,
      value: <Money cents={cents} sign />,
      ...(days !== 0 && { note: t('movedDays', { count: days }) }),
    };
  };
}

/** Other change orders that wait for an answer, and where the contract would be with all of them. */
export function ContractWaiting({ letter, all }: { letter: ClientLetter; all: ContractStanding }) {
  const t = useT(letterWords);
  const say = useDate();
  const { waiting } = letter.contract;
  if (waiting.length === 0 || letter.state !== 'open') return null;
  const finish = all.finishOn && say(all.finishOn);
  return (
    <div className="keep-together">
      <h3>{t('waitingTitle', { count: waiting.length })}</h3>
      <p>{t('waitingMeans')}</p>
      <Facts
        facts={[
          ...waiting.map(({ number, cents, days }) => ({
            name: t('waitingOrder', { number }),
            value: <Money cents={cents} sign />,
            ...(days !== 0 && { note: t('movedDays', { count: days }) }),
          })),
          {
            name: t('waitingAll', { count: waiting.length }),
            value: (
              <b>
                <Money cents={all.sumCents} />
              </b>
            ),
            ...(finish && { note: t('waitingFinish', { date: finish }) }),
          },
        ]}
      />
    </div>
  );
}
