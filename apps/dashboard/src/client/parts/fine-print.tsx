import type { ChangeOrderDocument } from '@underlath/contract';
import { BASIS_WORDS, say } from '@underlath/rules/kernel';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { client } from '../../shared/i18n/messages/letter.ts';
import { allSources, numberList, quietCautions } from '../letter-text.ts';
import { Inline } from './words.tsx';

/** Every caution once, and the rules the measurements were held against on demand. */
export function FinePrint({ document }: { document: ChangeOrderDocument }) {
  const t = useT(client);
  const cautions = quietCautions(document);
  return (
    <section aria-labelledby="cautions" className="fine-print">
      {cautions.length > 0 && (
        <>
          <h2 id="cautions">{t('cautionsTitle')}</h2>
          <ul className="plain-list soft">
            {cautions.map((caution) => (
              <li key={caution.en}>
                <Inline text={caution} />
              </li>
            ))}
          </ul>
        </>
      )}
      <Sources document={document} />
    </section>
  );
}

function Sources({ document }: { document: ChangeOrderDocument }) {
  const t = useT(client);
  const { locale, tag } = useLocale();
  const versions = [...new Set(document.items.map((item) => item.rulesVersion))];
  return (
    <details className="more">
      <summary>{t('sourcesOpen')}</summary>
      <ul className="sources">
        {allSources(document.items).map((source) => (
          <li key={`${source.id}${source.edition}${source.section}`}>
            <b lang="en">{source.title}</b>,{' '}
            <span lang="en">{[source.edition, source.section].filter(Boolean).join(', ')}</span>
            <span className="soft means">
              {say(BASIS_WORDS[source.basis], locale)}.{' '}
              {t('sourceFor', { count: source.numbers.length, numbers: numberList(source.numbers, tag) })}.
            </span>
          </li>
        ))}
      </ul>
      <p className="soft">{t('rulesVersion', { version: versions.join(', ') })}</p>
    </details>
  );
}
