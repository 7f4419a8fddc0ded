import type { CapacityProposal, KeptSegment, LoadPathAnswer, StoredLoadPath } from '@underlath/contract';
import { LINK_ROLE_WORDS, type LinkRole, type Locale, type Outcome, say } from '@underlath/rules';
import { evaluateCheck, findCheck } from '@underlath/rules/all-checks';
import type { HangingFinding } from './load-paths.repository.ts';

/** Checks that work out in pounds what a link takes, and the link they speak of. */
const STRENGTH_OF: Readonly<Record<string, LinkRole>> = {
  'shear-wall.panel-capacity': 'panels',
  'anchor.sill-bolt-shear': 'sill-bolts',
  'bearing.seat': 'seat',
  'connection.toe-nail': 'hanger',
};

/** The strength a finding's check worked out, when it is one of a link. */
export function proposalsOf(
  { id, number, title, state, checkId }: HangingFinding,
  outcome: Outcome | undefined,
  locale: Locale,
): CapacityProposal[] {
  const role = STRENGTH_OF[checkId];
  const capacityLb = outcome?.values.capacityLb?.value;
  const check = findCheck(checkId);
  if (!role || !check || state === 'withdrawn' || typeof capacityLb !== 'number') return [];
  const why = `${say(check.title, locale)}, ${outcome?.edition ?? ''}`;
  return [{ findingId: id, number, title, role, intendedLb: capacityLb, why }];
}

/** For every link that stands for many like parts, and every role that occurs more than once, while some are closed: how many more to open. */
export function samplingOf(
  segments: readonly KeptSegment[],
  { likeParts }: LoadPathAnswer,
  locale: Locale,
): StoredLoadPath['sampling'] {
  const many = segments.flatMap(({ links }) => links.flatMap(({ name, parts }) => (parts ? [{ name, ...parts }] : [])));
  const alike = likeParts.map(({ role, total, seen, bad }) => ({
    name: say(LINK_ROLE_WORDS[role], locale),
    total,
    opened: seen,
    bad,
  }));
  return [...many, ...alike]
    .filter(({ total, opened }) => opened < total)
    .map((lot) => {
      const { total, opened, bad } = lot;
      const { values, reasons } = evaluateCheck('sample.finite-lot', { inputs: { total, opened, bad } });
      // The last reason speaks of a finding; here nothing was found, it is only counted.
      const told = reasons.slice(0, -1);
      return {
        ...lot,
        openMore: Number(values.openMore?.value ?? 0),
        words: told.map((reason) => say(reason, locale)).join(' '),
      };
    });
}
