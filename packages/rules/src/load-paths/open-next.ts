import { percent, pounds, type Text, text } from '../kernel/index.ts';
import { LINK_ROLE_WORDS, LINK_ROLES, type LinkRole, type LoadPathKind } from './load-path.ts';
import { contributionLb, type LineWorth, type LinkWorth, type SegmentWorth } from './strength.ts';

/** A link to look at next, and how far the line could fall if nothing of it can be counted. */
export interface OpenNext {
  readonly segment: string;
  readonly link: string;
  readonly couldLowerToLb: number | null;
  readonly couldLowerToShare: number | null;
  readonly why: Text;
}

/** How the links of one role stand in the whole line. */
export interface LikeParts {
  readonly role: LinkRole;
  readonly total: number;
  /** Seen and measured. */
  readonly seen: number;
  readonly bad: number;
}

/** The roles that occur more than once, in the order the load runs. */
export function likePartsOf(kind: LoadPathKind, segments: readonly SegmentWorth[]): LikeParts[] {
  const links = segments.flatMap((segment) => segment.links);
  return LINK_ROLES[kind].flatMap((role): LikeParts[] => {
    const alike = links.filter((link) => link.role === role);
    const seen = alike.filter(({ remaining }) => remaining !== null);
    const bad = seen.filter(({ remaining }) => remaining !== null && remaining < 1).length;
    return alike.length > 1 ? [{ role, total: alike.length, seen: seen.length, bad }] : [];
  });
}

interface Candidate extends OpenNext {
  readonly drop: number;
  readonly badShare: number;
  readonly order: number;
}

/** Links that still can change the answer, those that could change it most first; of equals, those whose like failed elsewhere. */
export function openNextOf(kind: LoadPathKind, line: LineWorth, segments: readonly SegmentWorth[]): OpenNext[] {
  const alike = new Map(likePartsOf(kind, segments).map((part) => [part.role, part]));
  const roles: readonly LinkRole[] = LINK_ROLES[kind];
  const candidates = segments.flatMap((segment, at) =>
    segment.links
      .filter(({ remaining, unmeasured }) => remaining === null || unmeasured)
      .map((link): Candidate => {
        const part = alike.get(link.role);
        const badShare = part && part.seen > 0 ? part.bad / part.seen : 0;
        const fall = fallOf(line, segment, line.weights[at] ?? 0);
        const why = whyOpen(segment, link, fall, badShare > 0 ? part : undefined);
        const { drop, couldLowerToLb, couldLowerToShare } = fall;
        const found = { segment: segment.name, link: link.name, couldLowerToLb, couldLowerToShare, why };
        return { ...found, drop, badShare, order: roles.indexOf(link.role) };
      }),
  );
  candidates.sort(
    (a, b) =>
      b.drop - a.drop ||
      b.badShare - a.badShare ||
      a.order - b.order ||
      compare(a.segment, b.segment) ||
      compare(a.link, b.link),
  );
  return candidates.map(({ drop: _drop, badShare: _bad, order: _order, ...found }) => found);
}

const compare = (a: string, b: string): number => (a === b ? 0 : a < b ? -1 : 1);

interface Fall {
  readonly drop: number;
  readonly couldLowerToLb: number | null;
  readonly couldLowerToShare: number | null;
}

/** How far the line falls when this segment counts for nothing. The drop is in shares of the line, so that it can be compared. */
function fallOf(line: LineWorth, segment: SegmentWorth, weight: number): Fall {
  const { atMostLb, remaining } = line;
  const drop = (segment.remaining ?? 1) * weight;
  return {
    drop,
    couldLowerToLb: atMostLb === null ? null : Math.max(0, atMostLb - contributionLb(segment)),
    couldLowerToShare: remaining === null ? null : Math.max(0, remaining - drop),
  };
}

function whyOpen(segment: SegmentWorth, link: LinkWorth, fall: Fall, alike: LikeParts | undefined): Text {
  const told = [fallWords(segment, fall), ...(alike ? [alikeWords(alike)] : [])];
  const state =
    link.state === 'unseen'
      ? text('Not seen.', 'Sin ver.')
      : text(
          'Seen, but its findings do not all tell what is left.',
          'Visto, pero no todos sus hallazgos dicen cuánto queda.',
        );
  return text([state, ...told].map(({ en }) => en).join(' '), [state, ...told].map(({ es }) => es).join(' '));
}

function fallWords({ name }: SegmentWorth, { drop, couldLowerToLb, couldLowerToShare }: Fall): Text {
  if (drop === 0)
    return text(
      `${name} counts for nothing already; this cannot lower it further.`,
      `${name} ya no cuenta nada; esto no puede bajarlo más.`,
    );
  const left =
    couldLowerToLb !== null ? pounds(couldLowerToLb) : couldLowerToShare !== null ? percent(couldLowerToShare) : null;
  if (left === null) return text('Nothing of the line is known yet.', 'Aún no se sabe nada de la línea.');
  return text(
    `If it holds nothing, ${name} counts for nothing and the line falls to ${left}.`,
    `Si no resiste nada, ${name} no cuenta y la línea baja a ${left}.`,
  );
}

function alikeWords({ role, seen, bad }: LikeParts): Text {
  const words = LINK_ROLE_WORDS[role];
  return text(
    `Of its kind (${words.en.toLowerCase()}) ${bad} of ${seen} seen in this line ${bad === 1 ? 'has' : 'have'} lost strength.`,
    `De su clase (${words.es.toLowerCase()}) ${bad} de ${seen} vistos en esta línea ${bad === 1 ? 'perdió' : 'perdieron'} resistencia.`,
  );
}
