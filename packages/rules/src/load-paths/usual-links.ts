import { type Text, text } from '../kernel/index.ts';
import { LINK_ROLE_WORDS, type LinkRole, type LoadPathKind, type Segment } from './load-path.ts';

/** A link that a chain of its kind has, whether or not anybody listed it: one of its roles will do. */
interface UsualLink {
  readonly roles: readonly LinkRole[];
  /** Houses are built without it, so a person may say that there is none. */
  readonly mayBeAbsent?: true;
}

/** What a chain of each kind is made of, in the order the load runs. Common practice, no published list. */
export const USUAL_LINKS: Record<LoadPathKind, readonly UsualLink[]> = {
  // A wall end that only weight keeps down has its hold-down listed with no tension and that weight's moment.
  'wall-line': [
    { roles: ['top-plate'] },
    { roles: ['panels'] },
    { roles: ['posts'] },
    { roles: ['hold-down'] },
    { roles: ['sill-bolts'] },
    { roles: ['footing'] },
  ],
  'gravity-line': [
    // A line may begin at its beam.
    { roles: ['member'], mayBeAbsent: true },
    // What is carried hangs or sits; nothing floats.
    { roles: ['hanger', 'seat'] },
    // Joists may land on a wall, and a beam on the foundation.
    { roles: ['beam'], mayBeAbsent: true },
    { roles: ['post'], mayBeAbsent: true },
    { roles: ['footing'] },
  ],
  'floor-line': [{ roles: ['member'] }],
};

/** The roles that a person may say a chain of this kind has none of. */
export const mayBeWithout = (kind: LoadPathKind): LinkRole[] =>
  USUAL_LINKS[kind].flatMap(({ roles, mayBeAbsent }) => (mayBeAbsent ? roles : []));

/** Usual roles that the chain neither lists nor is said to do without; each counts as unseen. */
export function notListedIn(
  kind: LoadPathKind,
  { links, without = [] }: Pick<Segment, 'without'> & { links: readonly { role: LinkRole }[] },
): LinkRole[] {
  const settled = new Set<LinkRole>([...links.map(({ role }) => role), ...without]);
  return USUAL_LINKS[kind]
    .filter(({ roles }) => !roles.some((role) => settled.has(role)))
    .flatMap(({ roles }) => roles);
}

/** Roles in words, those of which one will do joined: "hanger or seat, footing". */
export function usualWords(kind: LoadPathKind, roles: readonly LinkRole[]): Text {
  const links = USUAL_LINKS[kind].filter((link) => link.roles.some((role) => roles.includes(role)));
  const told = (language: keyof Text, or: string) =>
    links.map((link) => link.roles.map((role) => LINK_ROLE_WORDS[role][language].toLowerCase()).join(or)).join(', ');
  return text(told('en', ' or '), told('es', ' o '));
}
