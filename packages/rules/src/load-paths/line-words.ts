import { decimal, percent, pounds, type Text, text } from '../kernel/index.ts';
import type { LoadPath } from './load-path.ts';
import type { LineWorth, SegmentWorth } from './strength.ts';

interface Found {
  readonly ratio: number | null;
  readonly known: boolean;
}

const list = (names: readonly string[]): string => names.join(', ');

/** What the line is worth and why, gravest first; the severity row comes after it. */
export function lineReasons(
  path: LoadPath,
  line: LineWorth,
  segments: readonly SegmentWorth[],
  { ratio, known }: Found,
): Text[] {
  return [
    worthWords(line, known),
    ...demandWords(path, line, ratio, known),
    ...segments.flatMap((segment) => governingWords(segment, segments.length > 1)),
    ...notSeenWords(segments),
  ];
}

function worthWords({ intendedLb, atMostLb, remaining }: LineWorth, known: boolean): Text {
  if (remaining === null) return text('Nothing of this line is known yet.', 'Aún no se sabe nada de esta línea.');
  const whole = intendedLb === null ? null : pounds(intendedLb);
  if (remaining === 0)
    return whole === null
      ? text('None of its strength can be counted.', 'No se puede contar nada de su resistencia.')
      : text(`None of its ${whole} can be counted.`, `No se puede contar nada de sus ${whole}.`);
  const left = atMostLb === null || whole === null ? percent(remaining) : pounds(atMostLb);
  const [most, mucho] = known ? ['', ''] : ['At most ', 'Cuando mucho '];
  if (whole === null)
    return text(`${most}${left} of its strength can be counted.`, `${mucho}${left} de su resistencia se puede contar.`);
  return text(`${most}${left} of its ${whole} can be counted.`, `${mucho}${left} de sus ${whole} se pueden contar.`);
}

function demandWords({ demandLb }: LoadPath, { atMostLb }: LineWorth, ratio: number | null, known: boolean): Text[] {
  if (demandLb === undefined || atMostLb === null) return [];
  const demand = pounds(demandLb);
  if (ratio === null) {
    if (demandLb === 0) return [];
    return [text(`It is asked for ${demand}.`, `Se le piden ${demand}.`)];
  }
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
  if (!link || link.remaining === null) return [];
  const at = several ? `${name}: ` : '';
  if (link.remaining === 1)
    return [text(`${at}${link.name} is the weakest link.`, `${at}${link.name} es la parte más débil.`)];
  const left = percent(link.remaining);
  return [text(`${at}${link.name} governs with ${left} left.`, `${at}Gobierna ${link.name}, con ${left} restante.`)];
}

function notSeenWords(segments: readonly SegmentWorth[]): Text[] {
  const label = (of: (segment: SegmentWorth) => readonly string[]) =>
    segments.flatMap((segment) => of(segment).map((link) => (segments.length > 1 ? `${segment.name} ${link}` : link)));
  const unseen = label((segment) => segment.unseen);
  const unmeasured = label((segment) => segment.unmeasured);
  return [
    ...(unseen.length > 0 ? [text(`Not seen: ${list(unseen)}.`, `Sin ver: ${list(unseen)}.`)] : []),
    ...(unmeasured.length > 0
      ? [
          text(
            `Seen, with findings that do not tell what is left: ${list(unmeasured)}.`,
            `Vistos, con hallazgos que no dicen cuánto queda: ${list(unmeasured)}.`,
          ),
        ]
      : []),
  ];
}

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
        'Every figure is "at most" while a link is unseen: unseen is unknown, never sound.',
        'Toda cifra es "cuando mucho" mientras falte ver una parte: lo no visto es desconocido, nunca sano.',
      ),
    );
  if (path.demandLb === undefined)
    cautions.push(
      text(
        'No demand was given: this says what is left, not whether it is enough.',
        'No se dio la demanda: esto dice cuánto queda, no si alcanza.',
      ),
    );
  cautions.push(...borrowedWords(segments), ...openTieWords(path), ...sumWords(path, line));
  return cautions;
}

function borrowedWords(segments: readonly SegmentWorth[]): Text[] {
  const names = segments
    .filter(({ intendedLb }) => intendedLb !== null)
    .flatMap(({ links }) => links.filter(({ intendedLb }) => intendedLb === null).map(({ name }) => name));
  if (names.length === 0) return [];
  const shown = list([...new Set(names)]);
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
  const shown = list([...new Set(names)]);
  return [
    text(
      `Its tension is not turned into a load of the wall; lever or height is missing: ${shown}.`,
      `Su tensión no se convierte en carga del muro; falta la palanca o la altura: ${shown}.`,
    ),
  ];
}

function sumWords({ segments }: LoadPath, { weighedBy }: LineWorth): Text[] {
  if (segments.length < 2) return [];
  const words = [
    text(
      'Adding segments takes it that they give way together; a stiffer one takes more and may go first.',
      'Sumar tramos supone que ceden juntos; uno más rígido toma más y puede fallar antes.',
    ),
  ];
  if (weighedBy === 'length')
    words.push(text('Segments are weighed by their length.', 'Los tramos se pesan por su largo.'));
  if (weighedBy === 'count')
    words.push(
      text(
        'Segments count alike, for want of capacities and lengths.',
        'Los tramos cuentan por igual, a falta de capacidades y largos.',
      ),
    );
  return words;
}
