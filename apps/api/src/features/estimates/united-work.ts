import type { LineOverride } from '@underlath/contract';
import {
  findOperation,
  mergeRates,
  type OverrideMark,
  type ScopeLine,
  splitExisting,
  uniteTakeOffs,
  type WorkLine,
} from '@underlath/rules';
import { drawnTakeOff, existingOf, groundsOf } from './drawn-work.ts';
import { type Part, setByHand } from './finding-work.ts';
import type { ManualWork } from './scope-price.ts';

/** A line of united work with what was set by hand on it. */
export type UnitedLine = ScopeLine & Pick<WorkLine, 'typed' | 'quantityMark'>;

/**
 * What is to be paid for these findings together: drawn work once as its union, shared work once, the base contract's
 * own work left out. Rates that a finding's estimator typed hold for the lines that the finding needs.
 */
export function unitedWork(parts: readonly Part[]): UnitedLine[] {
  const byHand = unite(parts);
  const measured = parts.some(setsQuantity) ? unite(parts.map(asMeasured)) : byHand;
  return [...byHand, ...leftOut(parts, byHand, measured)].map((line) => {
    const overrides = overridesOn(line, parts);
    const quantityMark = markOf(line, measured, parts);
    return {
      ...line,
      ...(overrides.length > 0 && { typed: mergeRates(overrides) }),
      ...(quantityMark && { quantityMark }),
    };
  });
}

export const manualOf = (parts: readonly Part[]): ManualWork[] =>
  parts.flatMap(({ finding, content }) => content.manualLines.map((line) => ({ findingId: finding.id, line })));

function unite(parts: readonly Part[]): ScopeLine[] {
  const findings = parts.map(({ finding }) => finding);
  return splitExisting(uniteTakeOffs(parts.map(drawnTakeOff), groundsOf(findings)), existingOf(findings)).lines;
}

/** Every quantity that a part sets by hand, in a repair or over a line. */
const quantitiesOf = ({ content: { choices, overrides } }: Part) => [
  ...choices.flatMap(({ quantities }) =>
    Object.entries(quantities).map(([operation, { value, why }]) => ({ operation, value, why })),
  ),
  ...overrides.flatMap(({ operation, quantity, why }) =>
    quantity === undefined ? [] : [{ operation, value: quantity, why }],
  ),
];

const setsQuantity = (part: Part): boolean => quantitiesOf(part).length > 0;

/** The same without any quantity set by hand. */
const asMeasured = ({ finding, content }: Part): Part => ({
  finding,
  content: { ...content, choices: content.choices.map((choice) => ({ ...choice, quantities: {} })), overrides: [] },
});

const overridesOn = (line: ScopeLine, parts: readonly Part[]): LineOverride[] =>
  parts
    .filter(({ finding }) => line.for.includes(finding.id))
    .flatMap(({ content }) => content.overrides.filter(({ operation }) => operation === line.operation));

const sameWork = (one: ScopeLine, other: ScopeLine): boolean =>
  one.operation === other.operation && one.place === other.place;
const isSame = (one: ScopeLine, other: ScopeLine): boolean =>
  sameWork(one, other) && one.for.some((finding) => other.for.includes(finding));

function markOf(line: ScopeLine, measured: readonly ScopeLine[], parts: readonly Part[]): OverrideMark | undefined {
  const set = parts
    .filter(({ finding }) => line.for.includes(finding.id))
    .flatMap(quantitiesOf)
    .filter(({ operation }) => operation === line.operation);
  const counted = set.find(({ value }) => value === line.quantity) ?? set[0];
  const was = measured.find((one) => isSame(one, line))?.quantity ?? 0;
  // Where another finding needs more of shared work, that is what stands.
  if (!counted || was === line.quantity) return undefined;
  return { field: 'quantity', was, is: line.quantity, why: counted.why };
}

/** Work whose quantity was set to nothing stays as a line, so that it is seen to be left out, and why. */
function leftOut(parts: readonly Part[], byHand: readonly ScopeLine[], measured: readonly ScopeLine[]): ScopeLine[] {
  const lines = parts.flatMap((part) =>
    part.content.overrides.flatMap(({ operation, quantity, why }): ScopeLine[] => {
      const known = measured.find((line) => line.operation === operation && line.for.includes(part.finding.id));
      const place = known?.place;
      if (quantity !== 0 || byHand.some((line) => line.operation === operation && line.place === place)) return [];
      const { title, unit, phase } = known ?? requireOperation(operation);
      const how = setByHand(`Left out by the estimator: ${why}`);
      return [
        {
          ...(place !== undefined && { place }),
          ...{ operation, title, unit, phase, how, quantity: 0, assumed: false, set: true, holdPoint: false },
          for: [part.finding.id],
        },
      ];
    }),
  );
  return lines.filter((line, at) => lines.findIndex((one) => sameWork(one, line)) === at);
}

function requireOperation(id: string) {
  const operation = findOperation(id);
  if (!operation) throw new RangeError(`An estimate names an operation that is not there: ${id}`);
  return operation;
}
