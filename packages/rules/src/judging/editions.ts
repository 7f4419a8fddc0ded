import type { Check, Edition } from '../kernel/index.ts';

/** A document of which the checks know more than one edition, newest first. */
export interface EditionFamily {
  /** The edition ids without their year, `sdpws`. */
  readonly id: string;
  readonly editions: readonly Edition[];
}

const familyOf = (editionId: string): string => editionId.replace(/-\d{4}$/, '');

/** The documents whose editions a project chooses among, gathered from the checks themselves. */
export function editionFamilies(checks: readonly Pick<Check, 'editions'>[]): EditionFamily[] {
  const all = new Map(checks.flatMap((check) => check.editions).map((edition) => [edition.id, edition]));
  const families = new Map<string, Edition[]>();
  for (const edition of all.values())
    families.set(familyOf(edition.id), [...(families.get(familyOf(edition.id)) ?? []), edition]);
  return [...families]
    .filter(([, editions]) => editions.length > 1)
    .map(([id, editions]) => ({ id, editions: editions.toSorted((a, b) => b.id.localeCompare(a.id)) }))
    .toSorted((a, b) => a.id.localeCompare(b.id));
}

/**
 * The edition a check is held to under a project: the first of the project's that the check has. Undefined when it has
 * none of them, or when the inputs name a code, standard or year of their own: the check then chooses by them.
 */
export function editionUnder(
  check: Check,
  projectEditions: readonly string[],
  inputs: Readonly<Record<string, unknown>>,
): string | undefined {
  const chosen = projectEditions.find((wanted) => check.editions.some((edition) => edition.id === wanted));
  const isNamed =
    inputs.edition != null ||
    inputs.standard != null ||
    (inputs.code != null && !chosen?.startsWith(`${inputs.code}-`));
  return isNamed ? undefined : chosen;
}
