import { joinTexts, type Text, text } from '../kernel/index.ts';
import { linksOf, listNames } from './line-words.ts';
import { LINK_ROLE_WORDS, type LoadPath } from './load-path.ts';
import type { LineWorth, SegmentWorth } from './strength.ts';
import { anySlender, isPier } from './weights.ts';

/** What the figures take for granted. */
export function lineCautions(
  path: LoadPath,
  line: LineWorth,
  segments: readonly SegmentWorth[],
  known: boolean,
): Text[] {
  const cautions: Text[] = [];
  if (!known)
    cautions.push(
      text(
        'Every figure is "at most" while a link is not seen, not listed or not told: that is unknown, never sound.',
        'Toda cifra es "cuando mucho" mientras una parte no se vea, anote o diga: eso es desconocido, nunca sano.',
      ),
    );
  if (path.demandLb === undefined)
    cautions.push(
      text(
        'No demand was given: this says what is left, not whether it is enough.',
        'No se dio la demanda: esto dice cuánto queda, no si alcanza.',
      ),
    );
  cautions.push(
    ...aboveWords(path, segments),
    ...withoutWords(path),
    ...borrowedWords(segments),
    ...openTieWords(path),
    ...pierWords(path),
    ...sumWords(path, line),
  );
  return cautions;
}

function aboveWords({ storiesAbove }: LoadPath, segments: readonly SegmentWorth[]): Text[] {
  if (linksOf(segments, ({ momentOpen }) => momentOpen).length === 0) return [];
  const ask = text(
    'Give the hold-downs the moment from above, or say which line stands on this one.',
    'Dé a los anclajes el momento de arriba, o diga qué línea se apoya en esta.',
  );
  const why =
    storiesAbove === undefined
      ? text(
          'Nobody said how many stories stand above; if any does, it lifts the ends of this wall too.',
          'Nadie dijo cuántos pisos hay arriba; si hay alguno, también levanta los extremos de esta pared.',
        )
      : text(
          'What stands above lifts the ends of this wall too, before this story adds its own.',
          'Lo que está arriba también levanta los extremos de esta pared, antes de sumar este piso.',
        );
  return [joinTexts([why, ask])];
}

/** Usual links that a person said are not there: the answer rests on that word. */
function withoutWords({ segments }: LoadPath): Text[] {
  const roles = [...new Set(segments.flatMap(({ without = [] }) => without))];
  if (roles.length === 0) return [];
  const told = (language: keyof Text) => listNames(roles.map((role) => LINK_ROLE_WORDS[role][language].toLowerCase()));
  return [
    text(`Taken as said, there is none of its own: ${told('en')}.`, `Según lo dicho, no tiene propio: ${told('es')}.`),
  ];
}

function borrowedWords(segments: readonly SegmentWorth[]): Text[] {
  const names = segments
    .filter(({ intendedLb }) => intendedLb !== null)
    .flatMap(({ links }) => links.filter(({ intendedLb }) => intendedLb === null).map(({ name }) => name));
  if (names.length === 0) return [];
  const shown = listNames([...new Set(names)]);
  return [
    text(
      `Taken as meant for no less than its segment, for want of a capacity: ${shown}.`,
      `A falta de capacidad, se toma como prevista para su tramo: ${shown}.`,
    ),
  ];
}

/** A hold-down whose tension is known but not its lever, or whose segment has no height. */
function openTieWords({ segments }: LoadPath): Text[] {
  const names = segments.flatMap(({ heightFt, links }) =>
    links
      .filter(({ tensionLb, leverFt }) => tensionLb !== undefined && (leverFt === undefined || heightFt === undefined))
      .map(({ name }) => name),
  );
  if (names.length === 0) return [];
  const shown = listNames([...new Set(names)]);
  return [
    text(
      `Its tension is not turned into a load of the wall; lever or height is missing: ${shown}.`,
      `Su tensión no se convierte en carga de la pared; falta la palanca o la altura: ${shown}.`,
    ),
  ];
}

/** Panel walls over the limit of the standard, which count for nothing; and those nobody measured, which may be. */
function pierWords({ kind, segments }: LoadPath): Text[] {
  if (kind !== 'wall-line') return [];
  const open = segments.filter(({ lengthFt, heightFt }) => lengthFt === undefined || heightFt === undefined);
  const unmeasured = listNames(open.map(({ name }) => name));
  const untold = text(
    `Taken to be no more than 3.5 times as high as long, for want of a length or height: ${unmeasured}.`,
    `A falta de largo o altura, se toma que no es más de 3.5 veces más alto que largo: ${unmeasured}.`,
  );
  return [...overLimitWords(segments), ...(open.length > 0 ? [untold] : [])];
}

function overLimitWords(segments: LoadPath['segments']): Text[] {
  const names = segments.filter(isPier).map(({ name }) => name);
  if (names.length === 0) return [];
  return [
    text(
      `Over 3.5 times as high as long, which does not count as a panel wall: ${listNames(names)}.`,
      `Más de 3.5 veces más alto que largo, no cuenta como pared de paneles: ${listNames(names)}.`,
    ),
  ];
}

function lengthWords(kind: LoadPath['kind'], segments: LoadPath['segments']): Text[] {
  const slender = kind === 'wall-line' && anySlender(segments);
  const low = kind === 'wall-line' ? segments.filter(({ heightFt }) => heightFt === undefined) : [];
  const words = [
    slender
      ? text(
          'Segments are weighed by their length, narrow ones for less: 2 x length / height over twice as high as long.',
          'Los tramos se pesan por su largo, los angostos por menos: 2 x largo / alto si miden más del doble de alto.',
        )
      : text('Segments are weighed by their length.', 'Los tramos se pesan por su largo.'),
  ];
  if (low.length > 0)
    words.push(
      text(
        `Without a height a narrow segment counts for its whole length: ${listNames(low.map(({ name }) => name))}.`,
        `Sin su altura, un tramo angosto cuenta por todo su largo: ${listNames(low.map(({ name }) => name))}.`,
      ),
    );
  return words;
}

function sumWords({ kind, segments }: LoadPath, { weighedBy }: LineWorth): Text[] {
  if (segments.length < 2) return [];
  const words = [
    text(
      'Adding segments takes it that they give way together; a stiffer one takes more and may go first.',
      'Sumar tramos supone que ceden juntos; uno más rígido toma más y puede fallar antes.',
    ),
  ];
  if (weighedBy === 'length') words.push(...lengthWords(kind, segments));
  if (weighedBy === 'count')
    words.push(
      text(
        'Segments count alike, for want of capacities and lengths.',
        'Los tramos cuentan por igual, a falta de capacidades y largos.',
      ),
    );
  return words;
}
