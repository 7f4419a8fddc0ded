import {
  type ElementRole,
  type MemberKind,
  rateSeverity,
  SEVERITIES,
  type SeverityAnswer,
  type SeverityFacts,
  type Text,
  text,
  type Verdict,
} from '../kernel/index.ts';
import type { LinkRole, LoadPath } from './load-path.ts';
import type { LineWorth, LinkWorth, SegmentWorth } from './strength.ts';
import { usualWords } from './usual-links.ts';

/** What the severity table says of the gravest thing in the line, and of what thing. */
export interface LineRating extends SeverityAnswer {
  readonly role: ElementRole;
  /** The link it was said of, or the usual one that is not listed; null when it is the line as a whole. */
  readonly link: Text | null;
}

export interface LineFinding {
  readonly verdict: Verdict;
  /** Demand over the most it could take. */
  readonly ratio: number | null;
  /** A load is asked for and so little is left that no ratio can be told. */
  readonly nothingLeft: boolean;
  /** More is asked for than it could take at most. */
  readonly overloaded: boolean;
  /** All that keeps it from meeting is that it hangs on segments too narrow to count. */
  readonly onPiers: boolean;
}

const MEMBER_KINDS: Partial<Record<LinkRole, MemberKind>> = {
  member: 'joist',
  hanger: 'hanger',
  seat: 'seat',
  beam: 'beam',
  post: 'post',
};

/** Rates every link, each usual one that is not listed, and the line as a whole by the one table; the gravest counts, of equals the first. */
export function rateLine(
  path: LoadPath,
  line: LineWorth,
  segments: readonly SegmentWorth[],
  found: LineFinding,
): LineRating {
  const role: ElementRole = path.kind === 'wall-line' ? 'lateral' : 'gravity';
  const place = { role, storiesAbove: path.storiesAbove, shored: path.shored };
  const ratings = segments.flatMap((segment, at) => {
    const storyShare = path.storyShare === undefined ? undefined : path.storyShare * (line.weights[at] ?? 0);
    const rate = (link: Text, facts: Omit<SeverityFacts, 'role'>): LineRating => ({
      ...rateSeverity({ ...place, ...facts, storyShare }),
      role,
      link,
    });
    return [
      ...segment.links.map((link) => rate(text(link.name, link.name), factsOfLink(link))),
      ...segment.notListed.map((missing) => rate(capital(usualWords(path.kind, [missing])), notSeen(missing))),
    ];
  });
  const whole = { ...place, ...factsOfLine(line, found), storyShare: path.storyShare };
  ratings.push({ ...rateSeverity(whole), role, link: null });
  return ratings.reduce((gravest, rating) =>
    SEVERITIES.indexOf(rating.severity) < SEVERITIES.indexOf(gravest.severity) ? rating : gravest,
  );
}

const capital = ({ en, es }: Text): Text => text(upper(en), upper(es));
const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const notSeen = (role: LinkRole): Omit<SeverityFacts, 'role'> => ({
  verdict: 'undetermined',
  ratio: null,
  remaining: null,
  memberKind: MEMBER_KINDS[role],
});

function factsOfLink({ role, remaining, usedUp, momentOpen }: LinkWorth): Omit<SeverityFacts, 'role'> {
  if (usedUp) return { ...notSeen(role), verdict: 'fails', remaining: 0 };
  if (remaining === null) return notSeen(role);
  const verdict = remaining < 1 ? 'fails' : momentOpen ? 'undetermined' : 'meets';
  return { ...notSeen(role), verdict, remaining };
}

function factsOfLine({ remaining }: LineWorth, found: LineFinding): Omit<SeverityFacts, 'role'> {
  const { verdict, ratio, nothingLeft, overloaded, onPiers } = found;
  const always = overloaded ? OVERLOADED : onPiers ? ON_PIERS : undefined;
  return { verdict, ratio, remaining, nothingHolds: nothingLeft, engineerAlways: always };
}

const OVERLOADED = text(
  'The line is asked for more than can be counted: an engineer decides.',
  'A la línea se le pide más de lo que se puede contar: decide un ingeniero.',
);

const ON_PIERS = text(
  'It is enough only with segments over 3.5 times as high as long, which do not count as panel walls: an engineer decides.',
  'Solo alcanza con tramos más de 3.5 veces más altos que largos, que no cuentan como paredes de paneles: decide un ingeniero.',
);

/** The deciding row in words, with the link it was said of; with nothing to do it is said of the whole line. */
export const ratingWords = ({ link, severity, reason }: LineRating): Text => {
  const words = reason();
  return link === null || severity === 'record' ? words : text(`${link.en}: ${words.en}`, `${link.es}: ${words.es}`);
};
