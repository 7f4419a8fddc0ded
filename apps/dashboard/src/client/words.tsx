import { type DocumentItem, type Text, titleOf } from '@underlath/contract';
import { Fragment } from 'react';
import { useLocale } from '../shared/i18n/locale.tsx';
import { wordsIn } from './letter/letter-text.ts';

/** A wording of the letter as paragraphs; one that exists in the other language only is marked as that language. */
export function Paragraphs({ text }: { text: Text }) {
  const { locale } = useLocale();
  const { words, lang } = wordsIn(text, locale);
  return words
    .split(/\n+/)
    .filter((paragraph) => paragraph.trim() !== '')
    .map((paragraph) => (
      <p key={paragraph} lang={lang === locale ? undefined : lang}>
        {paragraph}
      </p>
    ));
}

/** The same inside a line. */
export function Inline({ text }: { text: Text }) {
  const { locale } = useLocale();
  const { words, lang } = wordsIn(text, locale);
  return <span lang={lang === locale ? undefined : lang}>{words}</span>;
}

/** "3. Cut top plate" */
export function Titled({ item }: { item: Pick<DocumentItem, 'number' | 'title' | 'titleEs'> }) {
  return (
    <>
      {item.number}. <Inline text={titleOf(item)} />
    </>
  );
}

/** The same of several findings, in one line. */
export function Titles({ items }: { items: readonly DocumentItem[] }) {
  return items.map((item, at) => (
    <Fragment key={item.findingId}>
      {at > 0 && '; '}
      <Titled item={item} />
    </Fragment>
  ));
}
