import { type ClientLetter, type DocumentItem, partOf, sectionOf } from '@underlath/contract';
import { useState } from 'react';
import { formatMoney } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Lines } from '../section.tsx';
import { Inline, Titled } from '../words.tsx';
import type { Chosen } from './letter-text.ts';

type ChooseProps = {
  letter: ClientLetter;
  chosen: Chosen;
  leftOut: readonly string[];
  onChange: (leftOut: readonly string[]) => void;
};

/** Which findings are done, where the letter offers it: each tick shows at once what it does to the price. */
export function Choose({ letter, chosen, leftOut, onChange }: ChooseProps) {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const [refused, setRefused] = useState(false);
  const { document } = letter;
  if (!document.parts) return null;
  const now = chosen.letter.document;
  function set(id: string, isDone: boolean) {
    const next = isDone ? leftOut.filter((one) => one !== id) : [...leftOut, id];
    const isNone = document.items.every(({ findingId }) => next.includes(findingId));
    setRefused(isNone);
    if (!isNone) onChange(next);
  }
  /** What leaving it out, or doing it too, would change; the last one left says its price, for it can't be left out alone. */
  function detailOf({ findingId }: DocumentItem): string {
    const done = now.items.find((item) => item.findingId === findingId);
    if (done) {
      const others = now.items.filter((item) => item !== done).map((item) => item.findingId);
      const without = partOf(document, others);
      if (!without) return t('chooseShare', { total: formatMoney(done.shareCents, tag) });
      const change = without.price.totalCents - now.price.totalCents;
      return t('chooseLeave', { change: `${change > 0 ? '+' : ''}${formatMoney(change, tag)}` });
    }
    const ids = [...now.items.map((item) => item.findingId), findingId];
    const withIt = (partOf(document, ids) ?? document).price.totalCents - now.price.totalCents;
    return t(withIt < 0 ? 'chooseSaves' : 'chooseAdds', { total: formatMoney(Math.abs(withIt), tag) });
  }
  return (
    <section aria-labelledby="choose" className="choose no-print">
      <h2 id="choose">{t('chooseTitle')}</h2>
      <Lines lines={sectionOf(document, 'parts')?.lines ?? []} />
      <fieldset className="field">
        <legend className="hidden-text">{t('chooseFindings')}</legend>
        {document.items.map((item) => (
          <Checkbox
            key={item.findingId}
            label={<Titled item={item} />}
            detail={detailOf(item)}
            checked={!leftOut.includes(item.findingId)}
            onChange={(isDone) => set(item.findingId, isDone)}
          />
        ))}
      </fieldset>
      <p className="hidden-text" role="status">
        {leftOut.length > 0 && t('chooseStatus', { total: formatMoney(now.price.totalCents, tag) })}
      </p>
      {refused && <p role="alert">{t('chooseNone')}</p>}
      <PartCautions chosen={chosen} />
    </section>
  );
}

/** What leaving findings out means. */
export function PartCautions({ chosen: { part } }: { chosen: Chosen }) {
  if (!part || part.cautions.length === 0) return null;
  return (
    <div className="notice">
      {part.cautions.map((caution) => (
        <p key={caution.en}>
          <Inline text={caution} />
        </p>
      ))}
    </div>
  );
}
