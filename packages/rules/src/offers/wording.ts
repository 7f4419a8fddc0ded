import { type Text, text } from '../kernel/index.ts';
import type { SuggestedDays } from './days.ts';
import type { DocumentItem, Wording } from './document/change-order-document.ts';
import { placeOf, titleOf } from './document/document-words.ts';
import type { DraftWords } from './draft-words.ts';

/** What findings say by themselves; how the days were counted is only said while nobody typed them. */
export function wordsFromFindings(
  items: readonly DocumentItem[],
  { days, reason }: SuggestedDays,
  areDaysTyped: boolean,
): DraftWords {
  return { wording: startWording(items, areDaysTyped ? text('', '') : reason), days };
}

/** The contract takes 4,000 letters; some are left for the estimator. */
const roomLetters = 3000;

/** The letter's first words, from what the checks say of each finding; the estimator edits them. */
function startWording(items: readonly DocumentItem[], note: Text): Wording {
  return {
    headline: headlineOf(items),
    found: gather(items.map((item) => item.found)),
    why: gather(items.map((item) => item.why)),
    ifNot: gather(items.map((item) => item.ifNot)),
    note,
  };
}

function headlineOf(items: readonly DocumentItem[]): Text {
  const places = [...new Map(items.map(({ place }) => [place.locationId, placeOf(place)])).values()];
  const [first] = items;
  const shown = places.slice(0, 3);
  const more = places.length - shown.length;
  const [en, es] = [shown.map((place) => place.en), shown.map((place) => place.es)];
  // A Spanish headline without a Spanish place names none.
  const isNamed = es.every((place) => place !== '');
  if (items.length === 1 && first) {
    const title = titleOf(first).es || 'Algo que encontramos necesita su respuesta';
    return text(`${first.title}: ${en.join()}`, isNamed ? `${title}: ${es.join()}` : title);
  }
  const whereEs = isNamed ? `: ${es.join(', ')}${more > 0 ? ` y ${more} lugares más` : ''}` : '';
  return text(
    `${items.length} things we found need your answer: ${en.join(', ')}${more > 0 ? ` and ${more} more places` : ''}`,
    `${items.length} cosas que encontramos necesitan su respuesta${whereEs}`,
  );
}

/** Each sentence once, in the order of the findings; what does not fit is counted, each finding says it in full. */
function gather(texts: readonly Text[]): Text {
  const distinct = [...new Map(texts.map((words) => [words.en, words])).values()];
  const kept: Text[] = [];
  let letters = 0;
  for (const words of distinct) {
    letters += Math.max(words.en.length, words.es.length) + 1;
    if (letters > roomLetters) break;
    kept.push(words);
  }
  const left = distinct.length - kept.length;
  if (left > 0) kept.push(text(`And ${left} more, each below.`, `Y ${left} más, cada una abajo.`));
  return text(kept.map(({ en }) => en).join(' '), kept.map(({ es }) => es).join(' '));
}
