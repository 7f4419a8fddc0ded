import { decimal, joinTexts, percent, pounds, type Text, text } from '../kernel/index.ts';
import { momentWords } from './hold-down.ts';
import type { LoadPath } from './load-path.ts';
import { combinedWords } from './shares.ts';
import type { LineWorth, LinkWorth, SegmentWorth } from './strength.ts';
import { usualWords } from './usual-links.ts';

interface Found {
  readonly ratio: number | null;
  readonly known: boolean;
}

export const listNames = (names: readonly string[]): string => names.join(', ');

/** What the line is worth and why, gravest first; the severity row comes after it. */
export function lineReasons(
  path: LoadPath,
  line: LineWorth,
  segments: readonly SegmentWorth[],
  { ratio, known }: Found,
): Text[] {
  const several = segments.length > 1;
  return [
    worthWords(line, known),
    ...demandWords(path, line, ratio, known),
    ...segments.flatMap((segment) => governingWords(segment, several)),
    ...path.segments.flatMap(({ name, links }) =>
      links.flatMap(combinedWords).map((words) => at(several, name, words)),
    ),
    ...momentWords(
      linksOf(segments, ({ usedUp }) => usedUp),
      linksOf(segments, ({ momentOpen }) => momentOpen),
    ),
    ...notSeenWords(segments),
    ...notListedWords(path, segments),
  ];
}

/** The sentence with its segment before it, where there are several. */
const at = (several: boolean, segment: string, words: Text): Text =>
  several ? joinTexts([text(`${segment}:`, `${segment}:`), words]) : words;

/** Names of the links of the line that are so, with their segment where there are several. */
export const linksOf = (segments: readonly SegmentWorth[], which: (link: LinkWorth) => boolean): string[] =>
  segments.flatMap(({ name, links }) =>
    links.filter(which).map((link) => (segments.length > 1 ? `${name} ${link.name}` : link.name)),
  );

function worthWords({ intendedLb, atMostLb, remaining }: LineWorth, known: boolean): Text {
  if (remaining === null) return text('Nothing of this line is known yet.', 'Aún no se sabe nada de esta línea.');
  const whole = intendedLb === null ? null : pounds(intendedLb);
  if (remaining === 0)
    return whole === null || intendedLb === 0
      ? text('None of its strength can be counted.', 'No se puede contar nada de su resistencia.')
      : text(`None of its ${whole} can be counted.`, `No se puede contar nada de sus ${whole}.`);
  const left = atMostLb === null || whole === null ? percent(remaining) : pounds(atMostLb);
  const [most, mucho] = known ? ['', ''] : ['At most ', 'Cuando mucho '];
  if (whole === null)
    return text(`${most}${left} of its strength can be counted.`, `${mucho}${left} de su resistencia se puede contar.`);
  return text(`${most}${left} of its ${whole} can be counted.`, `${mucho}${left} de sus ${whole} se pueden contar.`);
}

function demandWords(
  { demandLb }: LoadPath,
  { atMostLb, intendedLb }: LineWorth,
  ratio: number | null,
  known: boolean,
): Text[] {
  if (demandLb === undefined) return [];
  const demand = pounds(demandLb);
  if (atMostLb === null && intendedLb !== null) {
    const meant = pounds(intendedLb);
    return [
      text(
        `It is asked for ${demand} and was meant for ${meant}.`,
        `Se le piden ${demand}; estaba prevista para ${meant}.`,
      ),
    ];
  }
  if (atMostLb === null)
    return [
      text(
        `It is asked for ${demand}; nothing in pounds is known to hold against that.`,
        `Se le piden ${demand}; no se sabe en libras qué lo resiste.`,
      ),
    ];
  if (ratio === null && demandLb === 0) return [];
  if (ratio === null) return [text(`It is asked for ${demand}.`, `Se le piden ${demand}.`)];
  const times = decimal(ratio, 2);
  const [least, minimo] = known ? ['', ''] : ['at least ', 'al menos '];
  return [
    text(
      `It is asked for ${demand}, ${least}${times} times what can be counted.`,
      `Se le piden ${demand}, ${minimo}${times} veces lo que se puede contar.`,
    ),
  ];
}

function governingWords({ name, governing, links }: SegmentWorth, several: boolean): Text[] {
  const link = links.find((one) => one.name === governing);
  if (!link) return [];
  return [at(several, name, governsHow(link))];
}

function governsHow({ name, state, remaining }: LinkWorth): Text {
  if (state === 'unseen')
    return text(
      `The weakest link as it was meant to be, seen by nobody: ${name}.`,
      `La parte más débil según lo previsto, que nadie ha visto: ${name}.`,
    );
  if (remaining === null || remaining === 1) return text(`The weakest link: ${name}.`, `La parte más débil: ${name}.`);
  const left = percent(remaining);
  return text(`The weakest link, with ${left} left: ${name}.`, `La parte más débil, con ${left} restante: ${name}.`);
}

function notSeenWords(segments: readonly SegmentWorth[]): Text[] {
  const unseen = linksOf(segments, ({ state }) => state === 'unseen');
  const unmeasured = linksOf(segments, (link) => link.unmeasured);
  return [
    ...(unseen.length > 0 ? [text(`Not seen: ${listNames(unseen)}.`, `Sin ver: ${listNames(unseen)}.`)] : []),
    ...(unmeasured.length > 0
      ? [
          text(
            `Seen, with findings that do not tell what is left: ${listNames(unmeasured)}.`,
            `Vistos, con hallazgos que no dicen cuánto queda: ${listNames(unmeasured)}.`,
          ),
        ]
      : []),
  ];
}

function notListedWords({ kind }: LoadPath, segments: readonly SegmentWorth[]): Text[] {
  return segments
    .filter(({ notListed }) => notListed.length > 0)
    .map(({ name, notListed }) => {
      const { en, es } = usualWords(kind, notListed);
      return at(
        segments.length > 1,
        name,
        text(`Not listed, so not seen: ${en}.`, `Sin anotar, así que sin ver: ${es}.`),
      );
    });
}
