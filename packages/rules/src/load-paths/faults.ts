import { type InputIssue, refuseLonger, type Text, text } from '../kernel/index.ts';
import { LINK_ROLE_WORDS, LINK_ROLES, type Link, type LinkRole, type LoadPath, type Segment } from './load-path.ts';
import { mayBeWithout } from './usual-links.ts';

type Path = readonly (string | number)[];
/** A person reads the sentence without the name of the input before it. */
const sentence = (message: string): string => {
  const said = message.replace(/^\w+: /, '');
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
};
const issue = (path: Path, message: Text): InputIssue => ({
  path,
  message,
  words: text(sentence(message.en), sentence(message.es)),
});

const HOLD_DOWN_ONLY = ['tensionLb', 'leverFt', 'momentAboveFtLb', 'resistingFtLb'] as const;

/** Everything wrong with a load path whose numbers are each possible alone; empty when it can be evaluated. */
export function faultsOf(path: LoadPath): InputIssue[] {
  return [
    ...oneSegmentInSeries(path),
    ...repeatedNames(path.segments, ['segments']),
    ...path.segments.flatMap((segment, at) => [
      ...repeatedNames(segment.links, ['segments', at, 'links']),
      ...withoutFaults(path, segment, ['segments', at, 'without']),
      ...segment.links.flatMap((link, place) => faultsOfLink(path, segment, link, ['segments', at, 'links', place])),
    ]),
  ];
}

function oneSegmentInSeries({ kind, segments }: LoadPath): InputIssue[] {
  if (kind !== 'gravity-line' || segments.length === 1) return [];
  return [
    issue(
      ['segments'],
      text(
        `segments: got ${segments.length}; a gravity line is one segment, its links in series.`,
        `segments: llegaron ${segments.length}; una línea de gravedad es un solo tramo con sus partes en serie.`,
      ),
    ),
  ];
}

function repeatedNames(items: readonly { readonly name: string }[], path: Path): InputIssue[] {
  const seen = new Set<string>();
  return items.flatMap(({ name }, at) => {
    if (!seen.has(name)) {
      seen.add(name);
      return [];
    }
    return [
      issue(
        [...path, at, 'name'],
        text(
          `name: "${name}" is there already; each needs a name of its own.`,
          `name: "${name}" ya existe; cada uno necesita un nombre propio.`,
        ),
      ),
    ];
  });
}

function faultsOfLink({ kind }: LoadPath, segment: Segment, link: Link, path: Path): InputIssue[] {
  const roles: readonly LinkRole[] = LINK_ROLES[kind];
  const found: InputIssue[] = [];
  if (!roles.includes(link.role)) {
    const allowed = roles.join(', ');
    found.push(
      issue(
        [...path, 'role'],
        text(
          `role: got "${link.role}"; a ${kind} takes one of ${allowed}.`,
          `role: llegó "${link.role}"; en ${kind} se permite uno de ${allowed}.`,
        ),
      ),
    );
  }
  return [...found, ...contradictions(link, path), ...tieFaults(segment, link, path)];
}

/** Only a link that such a chain can do without may be said not to be there, and none that is listed. */
function withoutFaults({ kind }: LoadPath, { links, without = [] }: Segment, path: Path): InputIssue[] {
  const allowed = mayBeWithout(kind);
  return without.flatMap((role, at) => {
    const words = LINK_ROLE_WORDS[role];
    if (links.some((link) => link.role === role))
      return [
        issue(
          [...path, at],
          text(
            `without: "${words.en}" is among the links; take it from one of the two lists.`,
            `without: "${words.es}" está entre las partes; quítelo de una de las dos listas.`,
          ),
        ),
      ];
    if (allowed.includes(role)) return [];
    return [
      issue(
        [...path, at],
        text(
          `without: no such line stands without its ${words.en.toLowerCase()}; list it as not seen.`,
          `without: ninguna línea así se sostiene sin ${words.es.toLowerCase()}; anótelo como no visto.`,
        ),
      ),
    ];
  });
}

/** A link that was not seen has no findings; one that was seen sound has lost nothing. */
function contradictions({ name, state, remaining = [] }: Link, path: Path): InputIssue[] {
  if (state === 'findings' || remaining.length === 0) return [];
  const shares = remaining.map((left) => (typeof left === 'number' ? left : left.share));
  if (state === 'sound' && shares.every((share) => share === 1)) return [];
  return [
    issue(
      [...path, 'remaining'],
      text(
        `remaining: "${name}" is ${state} and has a share left of ${shares.join(', ')}; say "findings", or leave it out.`,
        `remaining: "${name}" está como ${state} y trae ${shares.join(', ')}; ponga "findings" o no lo ponga.`,
      ),
    ),
  ];
}

function tieFaults(segment: Segment, link: Link, path: Path): InputIssue[] {
  const stray = link.role === 'hold-down' ? undefined : HOLD_DOWN_ONLY.find((name) => link[name] !== undefined);
  if (stray)
    return [
      issue(
        [...path, stray],
        text(`${stray}: only a hold-down has one.`, `${stray}: solo un anclaje de extremo lo tiene.`),
      ),
    ];
  return refuseLonger([...path, 'leverFt'], {
    what: text('Lever of the hold-down', 'Palanca del anclaje'),
    came: link.leverFt,
    most: segment.lengthFt,
    ofWhat: text('the length of the segment', 'el largo del tramo'),
    unit: 'ft',
  });
}
