import type { Locale, Text } from '../../kernel/index.ts';
import type { ChangeOrderDocument, DocumentItem, LetterLine, LetterSection } from './change-order-document.ts';

/*
 * Titles, places and captions are typed in English on site. Their Spanish is typed before the letter goes out; where it was
 * not, it is empty here, and whoever shows the English in its place marks it as English.
 */

export const titleOf = ({ title, titleEs = '' }: Pick<DocumentItem, 'title' | 'titleEs'>): Text => ({
  en: title,
  es: titleEs,
});

export const placeOf = ({ name, nameEs = '' }: Pick<DocumentItem['place'], 'name' | 'nameEs'>): Text => ({
  en: name,
  es: nameEs,
});

export const captionOf = ({
  caption,
  captionEs = '',
}: Pick<DocumentItem['photos'][number], 'caption' | 'captionEs'>): Text => ({ en: caption, es: captionEs });

/** A section of the letter by its id; undefined where the letter has none. */
export const sectionOf = (
  { sections = [] }: Pick<ChangeOrderDocument, 'sections'>,
  id: LetterSection['id'],
): LetterSection | undefined => sections.find((section) => section.id === id);

/** A line as it is said where it stands alone: "Joist: one of the boards that carry a floor." */
export const lineWords = ({ term, words }: LetterLine, locale: Locale): string =>
  term ? `${term[locale]}: ${words[locale]}` : words[locale];

/** The lines said once more above the signature. */
export const linesAtSigning = ({ sections = [] }: Pick<ChangeOrderDocument, 'sections'>): LetterLine[] =>
  sections.flatMap(({ lines }) => lines.filter(({ atSigning }) => atSigning));

/** What is ticked before a letter with an unsafe or undecided place is declined, in the words that are kept; else null. */
export function understoodAtDeclining({ items }: Pick<ChangeOrderDocument, 'items'>): Text | null {
  const has = (severity: DocumentItem['severity']) => items.some((item) => item.severity === severity);
  const said = [...(has('make-safe') ? [unsafeUntil] : []), ...(has('engineer') ? [undecidedUntil] : [])];
  if (said.length === 0) return null;
  return { en: said.map(({ en }) => en).join(' '), es: said.map(({ es }) => es).join(' ') };
}

const unsafeUntil: Text = {
  en: 'I understand this place is not safe until it has been made safe.',
  es: 'Entiendo que este lugar no es seguro hasta que lo aseguren.',
};
const undecidedUntil: Text = {
  en: 'I understand no engineer has said yet that this place is strong enough.',
  es: 'Entiendo que ningún ingeniero ha dicho todavía que este lugar resiste lo suficiente.',
};
