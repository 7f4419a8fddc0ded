import type { ChangeOrder, DocumentItem, Locale, Opening } from '@underlath/contract';
import { useState } from 'react';
import { photoThumbUrl } from '../../shared/api/photos.ts';
import { Elevation } from '../../shared/drawing/elevation.tsx';
import type { DrawnPlace } from '../../shared/drawing/framing.ts';
import { fillMessage } from '../../shared/i18n/define.ts';
import { client } from '../../shared/i18n/messages/letter.ts';
import { Money, WasIs } from '../../shared/ui/money.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { stageWord } from './words.ts';
import '../order.css';

/** The letter as the client will read it, in either language. The client's own page adds the review and the signature. */
export function LetterPreview({ order }: { order: ChangeOrder }) {
  const [locale, setLocale] = useState<Locale>('en');
  const { draft } = order;
  const { wording, contract, price } = draft;
  return (
    <article className="letter-sheet">
      <div className="letter-languages languages no-print">
        {(['en', 'es'] as const).map((each) => (
          <button key={each} type="button" lang={each} aria-pressed={locale === each} onClick={() => setLocale(each)}>
            {each === 'en' ? 'English' : 'Español'}
          </button>
        ))}
      </div>
      <header>
        <p>
          <b>{draft.company.name}</b>
          {draft.company.licenseNumber && <span className="soft">, license {draft.company.licenseNumber}</span>}
        </p>
        <p className="soft">
          {draft.project.clientName}, {draft.project.siteAddress}
        </p>
      </header>
      <div lang={locale} className="letter-words">
        <h2>{wording.headline[locale]}</h2>
        {[wording.found, wording.why, wording.ifNot, wording.note]
          .map((text) => text[locale])
          .filter(Boolean)
          .map((words) => (
            <p key={words}>{words}</p>
          ))}
        {draft.items.map((item) => (
          <LetterItem key={item.findingId} item={item} locale={locale} />
        ))}
        <BesidePrice order={order} locale={locale} />
      </div>
      <footer className="letter-foot">
        <p>
          <span>This change</span> <Money cents={price.totalCents} />
        </p>
        <p>
          <span>Contract sum</span>
          <WasIs was={<Money cents={contract.beforeCents} />} is={<Money cents={contract.afterCents} />} />
        </p>
        <p>
          <span>Days</span>
          <WasIs was={contract.daysBefore} is={contract.daysAfter} />
        </p>
        {(contract.payments ?? []).map(({ name, cents }) => (
          <p key={name.en}>
            <span lang={locale}>{name[locale]}</span> <Money cents={cents} sign />
          </p>
        ))}
      </footer>
      <div lang={locale} className="soft small stack">
        {draft.cautions.map((caution) => (
          <p key={caution.en}>{caution[locale]}</p>
        ))}
        <p>{draft.consent.text[locale]}</p>
      </div>
    </article>
  );
}

/** What the letter says beside its price: allowances, what is not covered, other ways. */
function BesidePrice({ order, locale }: { order: ChangeOrder; locale: Locale }) {
  const { items, price } = order.draft;
  const words = (key: keyof typeof client.en) => fillMessage(client[locale][key], locale);
  const allowances = price.lines.filter(({ kind }) => kind === 'allowance');
  const exclusions = items.flatMap((item) => item.exclusions ?? []);
  const alternates = items.flatMap((item) => item.alternates ?? []);
  return (
    <>
      {allowances.length > 0 && (
        <>
          <h3>{words('priceAllowances')}</h3>
          <ul className="plain-rows">
            {allowances.map(({ title, totalCents }) => (
              <li key={title.en}>
                {title[locale]} <Money cents={totalCents} />
              </li>
            ))}
          </ul>
        </>
      )}
      {exclusions.length > 0 && (
        <>
          <h3>{words('notCovered')}</h3>
          <ul>
            {exclusions.map((exclusion) => (
              <li key={exclusion.en}>{exclusion[locale]}</li>
            ))}
          </ul>
        </>
      )}
      {alternates.length > 0 && (
        <>
          <h3>{words('otherWays')}</h3>
          <ul className="plain-rows">
            {alternates.map(({ name, differenceCents }) => (
              <li key={name.en}>
                {name[locale]}{' '}
                {differenceCents === null ? words('otherWayUnknown') : <Money cents={differenceCents} sign />}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function LetterItem({ item, locale }: { item: DocumentItem; locale: Locale }) {
  return (
    <section className="letter-item">
      <h3>
        {item.number}. {item.title} <span className="soft">· {item.place.name}</span>
      </h3>
      <SeverityMark severity={item.severity} />
      <Elevation
        place={placeOf(item)}
        labels="none"
        maxHeightPx={220}
        findings={[
          { id: item.findingId, number: item.number, title: item.title, severity: item.severity, extent: item.extent },
        ]}
      />
      <p>{item.found[locale]}</p>
      <p>{item.why[locale]}</p>
      <p>{item.ifNot[locale]}</p>
      {item.repairs.length > 0 && <p>{item.repairs.map((repair) => repair[locale]).join(' ')}</p>}
      {item.photos.length > 0 && (
        <ul className="photo-row">
          {item.photos.map((photo) => (
            <li key={photo.id}>
              <figure className="photo-thumb">
                <img
                  src={photoThumbUrl(photo.id)}
                  alt={photo.caption || stageWord(photo.stage)}
                  loading="lazy"
                  width={160}
                  height={120}
                />
                <figcaption className="photo-words">{photo.caption || stageWord(photo.stage)}</figcaption>
              </figure>
            </li>
          ))}
        </ul>
      )}
      <p className="soft small">
        {item.sources.map((source) => `${source.title}, ${source.edition}, ${source.section}`).join('; ')}
      </p>
    </section>
  );
}

const placeOf = ({ place }: DocumentItem): DrawnPlace => ({
  ...place,
  kind: place.kind as DrawnPlace['kind'],
  memberDepthIn: null,
  openings: place.openings as Opening[],
});
