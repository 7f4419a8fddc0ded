import type { ChangeOrderDocument, DocumentItem, Severity } from '@underlath/contract';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { client } from '../../shared/i18n/messages/client.ts';
import { Facts } from '../../shared/ui/facts.tsx';
import { SeverityMark } from '../../shared/ui/severity.tsx';
import { byPlace, saysAlready, wordsIn } from '../letter-text.ts';
import type { ClientKey } from '../problem-words.ts';
import { Photos } from './photos.tsx';
import { Paragraphs } from './words.tsx';

const meanings: Record<Severity, ClientKey> = {
  'make-safe': 'meaningMakeSafe',
  engineer: 'meaningEngineer',
  repair: 'meaningRepair',
  record: 'meaningRecord',
};

/** What was found: first in one piece as the contractor worded it, then finding by finding with its photos. */
export function Findings({ document }: { document: ChangeOrderDocument }) {
  const t = useT(client);
  const manyPlaces = byPlace(document.items).length > 1;
  return (
    <section aria-labelledby="found">
      <h2 id="found">{t('whatWeFound')}</h2>
      <Paragraphs text={document.wording.found} />
      <ol className="findings">
        {document.items.map((item) => (
          <Finding key={item.findingId} item={item} document={document} showPlace={manyPlaces} />
        ))}
      </ol>
    </section>
  );
}

type FindingProps = { item: DocumentItem; document: ChangeOrderDocument; showPlace: boolean };

function Finding({ item, document, showPlace }: FindingProps) {
  const t = useT(client);
  const { locale } = useLocale();
  const { wording } = document;
  return (
    <li className="finding">
      <h3>
        <span className="number-disc" aria-hidden="true">
          {item.number}
        </span>
        <span className="hidden-text">{t('findingNumber', { number: item.number })}: </span>
        {item.title}
      </h3>
      <p className="finding-severity">
        <SeverityMark severity={item.severity} /> <span>{t(meanings[item.severity])}</span>
      </p>
      {showPlace && <p className="soft">{t('findingAt', { place: item.place.name })}</p>}
      {!saysAlready(wording.found, item.found) && <Paragraphs text={item.found} />}
      <Photos item={item} />
      {item.measured.length > 0 && (
        <>
          <h4>{t('measuredTitle')}</h4>
          <Facts
            facts={item.measured.map((each) => ({ name: wordsIn(each.label, locale).words, value: each.value }))}
          />
        </>
      )}
      {!saysAlready(wording.why, item.why) && <Paragraphs text={item.why} />}
      {!saysAlready(wording.ifNot, item.ifNot) && <Paragraphs text={item.ifNot} />}
    </li>
  );
}
