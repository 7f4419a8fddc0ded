import type { ChangeOrderDocument } from '@underlath/contract';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { client } from '../../shared/i18n/messages/letter.ts';
import { useDate } from '../../shared/i18n/site-zone.tsx';
import { letterWords, tradeWordsIn } from '../glossary.ts';
import { numberList, stillOpen, whoChecked, wordsIn } from '../letter-text.ts';
import { Inline, Paragraphs } from './words.tsx';

/** Why it matters, what happens if it is not done, who checked, and the contractor's own note. */
export function Reasons({ document }: { document: ChangeOrderDocument }) {
  const t = useT(client);
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
  const t = useT(client);
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
  const t = useT(client);
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
              {item.title}
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

/** What stays open: prices that are missing, what an engineer decides, and what is not opened yet. */
export function NotKnown({ document }: { document: ChangeOrderDocument }) {
  const t = useT(client);
  const { locale, tag } = useLocale();
  const { gaps, engineerNumbers } = stillOpen(document);
  const engineer = { count: engineerNumbers.length, numbers: numberList(engineerNumbers, tag) };
  return (
    <section aria-labelledby="not-known">
      <h2 id="not-known">{t('notKnown')}</h2>
      <ul className="plain-list">
        {gaps.map((gap) => (
          <li key={gap.en}>{t('unknownGap', { title: wordsIn(gap, locale).words })}</li>
        ))}
        {engineerNumbers.length > 0 && <li>{t('unknownEngineer', engineer)}</li>}
        <li>{t('unknownClosed')}</li>
        <li>{t('unknownNewLetter')}</li>
      </ul>
    </section>
  );
}

/** Trade words that stand in this letter, each explained once. */
export function Glossary({ document }: { document: ChangeOrderDocument }) {
  const t = useT(client);
  const { locale } = useLocale();
  const entries = tradeWordsIn(letterWords(document, locale), locale);
  if (entries.length === 0) return null;
  return (
    <section aria-labelledby="words">
      <h2 id="words">{t('wordsTitle')}</h2>
      <dl className="glossary">
        {entries.map((entry) => (
          <div key={entry.word.en}>
            <dt>{entry.word[locale]}</dt>
            <dd>{entry.means[locale]}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
