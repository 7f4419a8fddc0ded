import { type ChangeOrderDocument, type DocumentItem, placeOf, titleOf, type Wording } from '@underlath/contract';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Facts } from '../../shared/ui/facts.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { Inline, Paragraphs } from '../words.tsx';
import { groupByPlace, isOnly, saysAlready, wordsIn } from './letter-text.ts';
import { Photos } from './photos.tsx';

/** What was found: first in one piece as the contractor worded it, then finding by finding with its photos. */
export function Findings({ document }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
  const { items, wording } = document;
  const manyPlaces = groupByPlace(items).length > 1;
  // As long as the wording is only the findings' own words, each stands with its photos instead of in one run before them.
  const inFindings =
    items.length > 1 &&
    isOnly(
      wording.found,
      items.map((item) => item.found),
    );
  return (
    <section aria-labelledby="found">
      <h2 id="found">{t('whatWeFound')}</h2>
      {!inFindings && <Paragraphs text={wording.found} />}
      <ol className="findings">
        {items.map((item) => (
          <Finding
            key={item.findingId}
            item={item}
            wording={wording}
            showFound={inFindings || !saysAlready(wording.found, item.found)}
            showPlace={manyPlaces}
          />
        ))}
      </ol>
    </section>
  );
}

type FindingProps = { item: DocumentItem; wording: Wording; showFound: boolean; showPlace: boolean };

function Finding({ item, wording, showFound, showPlace }: FindingProps) {
  const t = useT(letterWords);
  const { locale } = useLocale();
  return (
    <li className="finding">
      <h3>
        <span className="number-disc" aria-hidden="true">
          {item.number}
        </span>
        <span className="hidden-text">{t('findingNumber', { number: item.number })}: </span>
        <Inline text={titleOf(item)} />
      </h3>
      <p className="finding-severity">
        <SeverityMark severity={item.severity} />
        {item.consequence && <Inline text={item.consequence} />}
      </p>
      {showPlace && (
        <p className="soft">
          {t('findingAt')} <Inline text={placeOf(item.place)} />
        </p>
      )}
      {showFound && <Paragraphs text={item.found} />}
      <Photos item={item} />
      {item.measured.length > 0 && (
        <div className="measured">
          <h4>{t('measuredTitle')}</h4>
          <Facts
            facts={item.measured.map((each) => ({ name: wordsIn(each.label, locale).words, value: each.value }))}
          />
        </div>
      )}
      {!saysAlready(wording.why, item.why) && <Paragraphs text={item.why} />}
      {!saysAlready(wording.ifNot, item.ifNot) && <Paragraphs text={item.ifNot} />}
    </li>
  );
}
