import type { Text } from '@underlath/contract';
import { useLocale } from '../../shared/i18n/locale.tsx';
import { wordsIn } from '../letter-text.ts';

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
