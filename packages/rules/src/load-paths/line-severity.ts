import {
  type MemberKind,
  type Role,
  rateSeverity,
  SEVERITIES,
  type SeverityAnswer,
  type SeverityFacts,
  type Text,
  text,
  type Verdict,
} from '../kernel/index.ts';
import type { Link, LinkRole, LoadPath } from './load-path.ts';
import type { LineWorth, SegmentWorth } from './strength.ts';

/** What the severity table says of the gravest thing in the line, and of what thing. */
export interface LineRating extends SeverityAnswer {
  readonly role: Role;
  /** The link it was said of; null when it is the line as a whole. */
  readonly link: string | null;
}

export interface LineFinding {
  readonly verdict: Verdict;
  readonly ratio: number | null;
  /** A load is asked for and so little is left that no ratio can be told. */
  readonly nothingLeft: boolean;
}

const MEMBER_KINDS: Partial<Record<LinkRole, MemberKind>> = {
  member: 'joist',
  hanger: 'hanger',
  seat: 'seat',
  beam: 'beam',
  post: 'post',
};

/** Rates every link and the line as a whole by the one severity table; the gravest counts, of equals the first link. */
export function rateLine(
  path: LoadPath,
  line: LineWorth,
  segments: readonly SegmentWorth[],
  found: LineFinding,
): LineRating {
  const role: Role = path.kind === 'wall-line' ? 'lateral' : 'gravity';
  const place = { role, storiesAbove: path.storiesAbove, shored: path.shored };
  const ratings = path.segments.flatMap((segment, at) =>
    segment.links.map((link, order): LineRating => {
      const share = segments[at]?.links[order]?.remaining ?? null;
      const hangsOn = path.storyShare === undefined ? undefined : path.storyShare * (line.weights[at] ?? 0);
      const facts = { ...place, ...factsOfLink(link, share), storyShare: hangsOn };
      return { ...rateSeverity(facts), role, link: link.name };
    }),
  );
  const whole = { ...place, ...factsOfLine(line, found), storyShare: path.storyShare };
  ratings.push({ ...rateSeverity(whole), role, link: null });
  return ratings.reduce((gravest, rating) =>
    SEVERITIES.indexOf(rating.severity) < SEVERITIES.indexOf(gravest.severity) ? rating : gravest,
  );
}

function factsOfLink(link: Link, remaining: number | null): Omit<SeverityFacts, 'role'> {
  const verdict = remaining === null ? 'undetermined' : remaining < 1 ? 'fails' : 'meets';
  return {
    verdict,
    ratio: null,
    remaining,
    memberKind: MEMBER_KINDS[link.role],
  };
}

function factsOfLine({ remaining }: LineWorth, found: LineFinding): Omit<SeverityFacts, 'role'> {
  const { verdict, ratio, nothingLeft } = found;
  const overloaded = nothingLeft || (ratio !== null && verdict === 'fails' && ratio > 1);
  return { verdict, ratio, remaining, nothingHolds: nothingLeft, ...(overloaded && { engineerAlways: OVERLOADED }) };
}

const OVERLOADED = text(
  'The line is asked for more than can be counted: an engineer decides.',
  'A la línea se le pide más de lo que se puede contar: decide un ingeniero.',
);

/** The deciding row in words, with the link it was said of. */
export const ratingWords = ({ link, reason }: LineRating): Text => {
  const words = reason();
  return link === null ? words : text(`${link}: ${words.en}`, `${link}: ${words.es}`);
};
