import { type ChangeOrderDocument, type PriceLine, sectionOf } from '@underlath/contract';
import type { ReactNode } from 'react';
import { formatMoney, formatNumber } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Money } from '../../shared/ui/money.tsx';
import { Lines } from '../section.tsx';
import { Inline, Paragraphs, Titled } from '../words.tsx';
import { Allowances } from './beside-price.tsx';
import { type Chosen, numberList } from './letter-text.ts';

/** The price in one sentence; every line and how it came about on demand. */
export function Price({ chosen: { left, letter } }: { chosen: Chosen }) {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const { document } = letter;
  const { price } = document;
  const numbers = left.map(({ number }) => number);
  return (
    <section aria-labelledby="price">
      <h2 id="price">{t('thePrice')}</h2>
      <p>{t('priceIs', { total: formatMoney(price.totalCents, tag) })}</p>
      {left.length > 0 && <p>{t('priceWithout', { count: left.length, numbers: numberList(numbers, tag) })}</p>}
      <AboutPrice document={document} />
      <Allowances document={document} />
      <details className="more">
        <summary>{t('priceOpen')}</summary>
        <PriceLines document={document} />
        {document.items.length > 1 && <Shares document={document} />}
      </details>
    </section>
  );
}

/** What to know of the price; what is said again above the name stands out. */
function AboutPrice({ document }: { document: ChangeOrderDocument }) {
  const lines = sectionOf(document, 'price')?.lines ?? [];
  const loud = lines.filter(({ atSigning }) => atSigning);
  const rest = lines.filter(({ atSigning }) => !atSigning);
  return (
    <>
      {loud.map(({ words }) => (
        <p key={words.en} className="notice">
          <Inline text={words} />
        </p>
      ))}
      {rest.length > 0 && <Lines lines={rest} />}
    </>
  );
}

function PriceLines({ document }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const { price } = document;
  const pct = (value: number) => `${formatNumber(value, tag)}%`;
  return (
    <>
      <ol className="price-lines">
        {price.lines.map((line, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two lines may have one name, and those of a sent letter never move
          <Line key={at} line={line} />
        ))}
      </ol>
      <dl className="price-foot">
        <FootRow name={t('priceSubtotal')} cents={price.subtotalCents} />
        {price.overheadCents !== 0 && (
          <FootRow
            name={t('priceOverhead', { pct: pct(price.overheadPct) })}
            cents={price.overheadCents}
            means={t('priceOverheadMeans')}
          />
        )}
        {price.profitCents !== 0 && (
          <FootRow name={t('priceProfit', { pct: pct(price.profitPct) })} cents={price.profitCents} />
        )}
        <FootRow name={t('priceTotal')} cents={price.totalCents} total />
      </dl>
    </>
  );
}

function Line({ line }: { line: PriceLine }) {
  const t = useT(letterWords);
  return (
    <li>
      <div className="price-line">
        <span>
          <Inline text={line.title} />
          {line.kind === 'allowance' && <span className="soft means">{t('priceAllowance')}</span>}
          {line.kind === 'credit' && <span className="soft means">{t('priceCredit')}</span>}
        </span>
        <Money cents={line.totalCents} />
      </div>
      {line.steps.length > 0 && (
        <details className="more more-small">
          <summary>
            {t('priceHow')}
            <span className="hidden-text">
              {': '}
              <Inline text={line.title} />
            </span>
          </summary>
          <div className="steps">
            {line.steps.map((step) => (
              <Paragraphs key={step.en} text={step} />
            ))}
          </div>
        </details>
      )}
    </li>
  );
}

type FootRowProps = { name: ReactNode; cents: number; means?: string; total?: boolean };

function FootRow({ name, cents, means, total }: FootRowProps) {
  return (
    <div className={total ? 'foot-total' : undefined}>
      <dt>
        {name}
        {means && <span className="soft means">{means}</span>}
      </dt>
      <dd>
        <Money cents={cents} />
      </dd>
    </div>
  );
}

/** What each finding's part of the total is; the parts add up to it to the cent. */
function Shares({ document }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
  return (
    <>
      <h3 className="shares-title">{t('priceShares')}</h3>
      <dl className="price-foot">
        {document.items.map((item) => (
          <FootRow key={item.findingId} name={<Titled item={item} />} cents={item.shareCents} />
        ))}
        <FootRow name={t('priceTotal')} cents={document.price.totalCents} total />
      </dl>
    </>
  );
}
