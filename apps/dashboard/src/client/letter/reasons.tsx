import { type ChangeOrderDocument, sectionOf, titleOf } from '@underlath/contract';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { useDate } from '../../shared/i18n/site-zone.tsx';
import { Inline, Paragraphs } from '../words.tsx';
import { numberList, whoChecked } from './letter-text.ts';

/** Why it matters, what happens if it is not done, who checked, and the contractor's own note. */
export function Reasons({ document }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
  const { wording } = document;
  return (
    <>
      <section aria-labelledby="why">
        <h2 id="why">{t('whyItMatters')}</h2>
        <Paragraphs text={wording.why} />
      </section>
      <section aria-labelledby="if-not">
        <h2 id="if-not">{t('ifNotDone')}</h2>
        <Paragraphs text={wording.ifNot} />
      </section>
      <WhoChecked document={document} />
      {(wording.note.en.trim() || wording.note.es.trim()) && (
        <section aria-labelledby="note">
          <h2 id="note">{t('noteTitle')}</h2>
          <Paragraphs text={wording.note} />
        </section>
      )}
    </>
  );
}

function WhoChecked({ document }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
  const { tag } = useLocale();
  const say = useDate();
  const dayOf = (at: string) => say(at, 'long-day');
  return (
    <section aria-labelledby="checked">
      <h2 id="checked">{t('whoChecked')}</h2>
      {whoChecked(document.items, dayOf).map((line) => (
        <p key={`${line.name}${line.at}${line.seenAt}`}>
          {line.seenAt &&
            `${t('seen', { count: line.numbers.length, numbers: numberList(line.numbers, tag), date: dayOf(line.seenAt) })} `}
          {t('checked', {
            count: line.numbers.length,
            name: line.name,
            numbers: numberList(line.numbers, tag),
            date: dayOf(line.at),
          })}
        </p>
      ))}
    </section>
  );
}

/** The repair of each finding, in the order of the findings. */
export function Repairs({ document }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
  const one = document.items.length === 1;
  return (
    <section aria-labelledby="repair">
      <h2 id="repair">{t('theRepair')}</h2>
      {document.items.map((item) => (
        <div key={item.findingId} className="repair">
          {!one && (
            <h3>
              <span className="number-disc" aria-hidden="true">
                {item.number}
              </span>
              <span className="hidden-text">{t('repairFor', { number: item.number })}: </span>
              <Inline text={titleOf(item)} />
            </h3>
          )}
          {item.repairs.length === 0 ? (
            <p>{t('repairNone')}</p>
          ) : (
            <ul className="plain-list">
              {item.repairs.map((repair) => (
                <li key={repair.en}>
                  <Inline text={repair} />
                </li>
              ))}
            </ul>
          )}
        </div>
      ))}
    </section>
  );
}

/** Trade words that stand in this letter, each explained once. */
export function Glossary({ document }: { document: ChangeOrderDocument }) {
  const section = sectionOf(document, 'words');
  if (!section) return null;
  return (
    <section aria-labelledby="words">
      <h2 id="words">
        <Inline text={section.title} />
      </h2>
      <dl className="glossary">
        {section.lines.map(({ term, words }) => (
          <div key={words.en}>
            <dt>{term && <Inline text={term} />}</dt>
            <dd>
              <Inline text={words} />
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
