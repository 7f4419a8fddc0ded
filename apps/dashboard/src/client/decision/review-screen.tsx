import { type ChangeOrderDocument, type ClientLetter, type DocumentItem, linesAtSigning } from '@underlath/contract';
import type { ReactNode } from 'react';
import { formatDate, formatMoney } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Button } from '../../shared/ui/button.tsx';
import { PartCautions } from '../letter/choose.tsx';
import { ContractMoved, ContractWaiting } from '../letter/contract-moved.tsx';
import { type Chosen, numberList, uniqueTexts } from '../letter/letter-text.ts';
import { MakeSafe } from '../make-safe.tsx';
import { Lines } from '../section.tsx';
import { StepFrame } from '../step-frame.tsx';
import { Trouble } from '../trouble.tsx';
import { Inline, Titled } from '../words.tsx';
import { NameQuestion } from './name-question.tsx';
import { Signature } from './signature.tsx';
import { useDecision } from './use-decision.tsx';
import type { DecisionDraft } from './use-draft.ts';

export type AnswerProps = {
  letter: ClientLetter;
  chosen: Chosen;
  draft: DecisionDraft;
  change: (part: Partial<DecisionDraft>) => void;
  onBack: () => void;
  onDecided: () => void;
};

/** What is being agreed in a line each, the consent text, the name and the tick, then the signature. */
export function ReviewScreen({ letter, chosen, draft, change, onBack, onDecided }: AnswerProps) {
  const t = useT(letterWords);
  const findingIds = chosen.part?.findingIds;
  const decision = useDecision(letter, { kind: 'approved', findingIds }, draft, onDecided);
  const { document } = letter;
  const lines = useLines(chosen);
  return (
    <StepFrame title={t('reviewTitle')} onBack={onBack} onSubmit={decision.send}>
      <MakeSafe document={document} brief />
      <ContractMoved letter={chosen.letter} />
      <p>{t('reviewIntro')}</p>
      <dl className="agreed keep-together">
        {lines.map(({ name, line }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{line}</dd>
          </div>
        ))}
      </dl>
      <PartCautions chosen={chosen} />
      <ContractWaiting letter={chosen.letter} all={chosen.withWaiting} />
      <BeforeSigning document={chosen.letter.document} />
      <p>{t('reviewWrong')}</p>
      <Signature
        consent={document.consent}
        tick={t('consentTick')}
        name={draft.name}
        agreed={decision.agreed}
        errors={decision.errors}
        onName={(name) => change({ name })}
        onAgreed={decision.setAgreed}
      />
      <NameQuestion
        {...decision.nameQuestion}
        letterFor={letter.document.project.clientName}
        typed={draft.name.trim()}
      />
      {decision.error && <Trouble error={decision.error} />}
      {/* The new sum stands above, out of sight of who pressed the button below. */}
      {decision.hasMoved && !decision.agreed && (
        <p>
          <b>{lines.find(({ name }) => name === t('reviewPrice'))?.line}</b>
        </p>
      )}
      <div className="step-actions">
        <Button look="go" type="submit" busy={decision.sending} busyLabel={t('signing')}>
          {t('sign')}
        </Button>
        <Button onClick={onBack}>{t('backToLetter')}</Button>
      </div>
    </StepFrame>
  );
}

/** What may still change or has to be confirmed, said once more; the place to keep out of stands above all. */
function BeforeSigning({ document }: { document: ChangeOrderDocument }) {
  const lines = linesAtSigning({ sections: document.sections?.filter(({ id }) => id !== 'make-safe') });
  if (lines.length === 0) return null;
  return (
    <div className="notice">
      <Lines lines={lines} />
    </div>
  );
}

function useLines({ part, left, letter: { document } }: Chosen): { name: string; line: ReactNode }[] {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const { contract, items, number, version } = document;
  const numbers = numberList(
    items.map((item) => item.number),
    tag,
  );
  const sum = (cents: number) => formatMoney(cents, tag);
  const less = contract.thisChangeCents < 0;
  return [
    { name: t('reviewWork'), line: <Work document={document} isPart={part !== undefined} /> },
    ...(part ? [{ name: t('reviewLeft'), line: <Names items={left} /> }] : []),
    {
      name: t('reviewPrice'),
      line: t(less ? 'reviewPriceLineLess' : 'reviewPriceLine', {
        total: sum(Math.abs(contract.thisChangeCents)),
        before: sum(contract.beforeCents),
        after: sum(contract.afterCents),
      }),
    },
    { name: t('reviewTime'), line: useTimeLine(document) },
    {
      name: t('reviewWhat'),
      line: part
        ? t('reviewWhatLinePart', { count: items.length, number, version, numbers })
        : t('reviewWhatLine', { number, version }),
    },
  ];
}

/** The headline, or the findings of a part, and each repair once, so that the line says what will be done. */
function Work({ document, isPart }: { document: ChangeOrderDocument; isPart: boolean }) {
  return (
    <>
      {isPart ? <Names items={document.items} /> : <Inline text={document.wording.headline} />}
      <ul className="plain-list agreed-repairs">
        {uniqueTexts(document.items.flatMap((item) => item.repairs)).map((repair) => (
          <li key={repair.en}>
            <Inline text={repair} />
          </li>
        ))}
      </ul>
    </>
  );
}

function Names({ items }: { items: readonly DocumentItem[] }) {
  return (
    <ul className="plain-list">
      {items.map((item) => (
        <li key={item.findingId}>
          <Titled item={item} />
        </li>
      ))}
    </ul>
  );
}

function useTimeLine(document: ChangeOrderDocument): string {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const { finishBefore, finishAfter, daysBefore, daysAfter } = document.contract;
  const inCalendarDays = document.contract.dayKind === 'calendar';
  const [none, some] = inCalendarDays
    ? (['noAddedCalendarDays', 'addedCalendarDays'] as const)
    : (['noAddedDays', 'addedDays'] as const);
  const added = document.days === 0 ? t(none) : t(some, { count: document.days });
  const days = added.charAt(0).toLocaleUpperCase(tag) + added.slice(1);
  if (!finishBefore || !finishAfter) {
    const key = inCalendarDays ? 'reviewTimeCalendarDays' : 'reviewTimeDays';
    return t(key, { days, before: daysBefore, after: daysAfter });
  }
  const day = (value: string) => formatDate(value, tag, 'long-day');
  return t('reviewTimeFinish', { days, before: day(finishBefore), after: day(finishAfter) });
}
