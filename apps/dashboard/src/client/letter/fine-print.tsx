import type { ChangeOrderDocument } from '@underlath/contract';
import { BASIS_WORDS, say } from '@underlath/rules/kernel';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Section } from '../section.tsx';
import { allSources, numberList } from './letter-text.ts';

/** Every caution once, and the rules the measurements were held against on demand. */
export function FinePrint({ document }: { document: ChangeOrderDocument }) {
  return (
    <div className="fine-print">
      <Section document={document} id="cautions" />
      <Sources document={document} />
    </div>
  );
}

function Sources({ document }: { document: ChangeOrderDocument }) {
  const t = useT(letterWords);
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
