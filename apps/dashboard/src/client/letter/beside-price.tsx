import { type ChangeOrderDocument, type DocumentAlternate, type DocumentItem, titleOf } from '@underlath/contract';
import { formatMoney } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Money } from '../../shared/ui/money.tsx';
import type { ClientKey } from '../problem-words.ts';
import { Inline } from '../words.tsx';
import { wordsIn } from './letter-text.ts';

/** Sums set aside in the price until their real cost is known. */
export function Allowances({ document: { price } }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
  const lines = price.lines.filter(({ kind }) => kind === 'allowance');
  if (lines.length === 0) return null;
  return (
    <div className="allowances">
      <h3>{t('priceAllowances')}</h3>
      {price.overheadCents + price.profitCents !== 0 && <p className="soft">{t('priceAllowanceAlone')}</p>}
      <dl className="price-foot">
        {lines.map((line, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a sent letter never move
          <div key={at}>
            <dt>
              <Inline text={line.title} />
            </dt>
            <dd>
              <Money cents={line.totalCents} />
            </dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

type ForFindingProps = { item: Pick<DocumentItem, 'number' | 'title' | 'titleEs'> };

function ForFinding({ item }: ForFindingProps) {
  const t = useT(letterWords);
  return (
    <h3>
      {t('findingNumber', { number: item.number })}: <Inline text={titleOf(item)} />
    </h3>
  );
}

/** What the price does not cover, by finding where there are several. */
export function NotInPrice({ document: { items } }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
  const some = items.filter(({ exclusions = [] }) => exclusions.length > 0);
  if (some.length === 0) return null;
  return (
    <section aria-labelledby="not-covered">
      <h2 id="not-covered">{t('notCovered')}</h2>
      {some.map(({ exclusions = [], ...item }) => (
        <div key={item.findingId}>
          {items.length > 1 && <ForFinding item={item} />}
          <ul className="plain-list">
            {exclusions.map((words) => (
              <li key={words.en}>
                <Inline text={words} />
              </li>
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

type OtherWaysProps = {
  document: ChangeOrderDocument;
  /** Starts a question about a way; undefined where nothing can be asked. */
  onAskFor?: ((question: string) => void) | undefined;
};

/** Other ways to do it; none of them is in the price or can be signed here, but each can be asked for. */
export function OtherWays({ document: { items }, onAskFor }: OtherWaysProps) {
  const t = useT(letterWords);
  const some = items.filter(({ alternates = [] }) => alternates.length > 0);
  if (some.length === 0) return null;
  return (
    <section aria-labelledby="other-ways">
      <h2 id="other-ways">{t('otherWays')}</h2>
      {some.map(({ alternates = [], ...item }) => (
        <div key={item.findingId}>
          {items.length > 1 && <ForFinding item={item} />}
          <ul className="other-ways">
            {alternates.map((way) => (
              <Way key={way.name.en} way={way} number={item.number} onAskFor={onAskFor} />
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}

const kindKeys: Record<DocumentAlternate['kind'], ClientKey> = {
  repair: 'otherWayRepair',
  replace: 'otherWayReplace',
  better: 'otherWayBetter',
};

type WayProps = Pick<OtherWaysProps, 'onAskFor'> & { way: DocumentAlternate; number: number };

function Way({ way, number, onAskFor }: WayProps) {
  const t = useT(letterWords);
  const { locale, tag } = useLocale();
  const { differenceCents: cents } = way;
  const key: ClientKey =
    cents === null ? 'otherWayUnknown' : cents === 0 ? 'otherWaySame' : cents > 0 ? 'otherWayMore' : 'otherWayLess';
  return (
    <li>
      <p>
        <b>
          <Inline text={way.name} />
        </b>
        <span className="soft other-way-kind">{t(kindKeys[way.kind])}</span>
      </p>
      {way.what.map((what) => (
        <p key={what.en}>
          <Inline text={what} />
        </p>
      ))}
      <p>
        <b>{t(key, { total: formatMoney(Math.abs(cents ?? 0), tag) })}</b>
      </p>
      {onAskFor && (
        <p className="no-print">
          <Button onClick={() => onAskFor(t('otherWayQuestion', { number, name: wordsIn(way.name, locale).words }))}>
            {t('otherWayAsk')}
            <span className="hidden-text">
              {': '}
              <Inline text={way.name} />
            </span>
          </Button>
        </p>
      )}
    </li>
  );
}
