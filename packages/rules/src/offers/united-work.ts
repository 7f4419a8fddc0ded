import type { WorkLine } from '../repairs/drawn.ts';
import { type LineOverride, mergeRates, type OverrideMark } from '../repairs/overrides.ts';
import { splitExisting } from '../repairs/scope.ts';
import { findOperation } from '../repairs/take-off.ts';
import { uniteTakeOffs } from '../repairs/unite.ts';
import { type FindingWork, setByHand } from './finding.ts';
import { drawnTakeOff, existingOf, groundsOf } from './work.ts';

/**
 * What is to be paid for these findings together: drawn work once as its union, shared work once, the base contract's
 * own work left out. Rates that a finding's estimator typed hold for the lines that the finding needs.
 */
export function uniteWork(works: readonly FindingWork[]): WorkLine[] {
  const byHand = unite(works);
  const measured = works.some(setsQuantity) ? unite(works.map(asMeasured)) : byHand;
  return [...byHand, ...leftOut(works, byHand, measured)].map((line) => {
    const overrides = overridesOn(line, works);
    const quantityMark = markOf(line, measured, works);
    return {
      ...line,
      ...(overrides.length > 0 && { typed: mergeRates(overrides) }),
      ...(quantityMark && { quantityMark }),
    };
  });
}

function unite(works: readonly FindingWork[]): WorkLine[] {
  const findings = works.map(({ finding }) => finding);
  return splitExisting(uniteTakeOffs(works.map(drawnTakeOff), groundsOf(findings)), existingOf(findings)).lines;
}

/** Every quantity that is set by hand, in a repair or over a line. */
const quantitiesOf = ({ content: { choices, overrides } }: FindingWork) => [
  ...choices.flatMap(({ quantities }) =>
    Object.entries(quantities).map(([operation, { value, why }]) => ({ operation, value, why })),
  ),
  ...overrides.flatMap(({ operation, quantity, why }) =>
    quantity === undefined ? [] : [{ operation, value: quantity, why }],
  ),
];

const setsQuantity = (work: FindingWork): boolean => quantitiesOf(work).length > 0;

/** The same without any quantity set by hand. */
const asMeasured = ({ finding, content }: FindingWork): FindingWork => ({
  finding,
  content: { ...content, choices: content.choices.map((choice) => ({ ...choice, quantities: {} })), overrides: [] },
});

const overridesOn = (line: WorkLine, works: readonly FindingWork[]): LineOverride[] =>
  works
    .filter(({ finding }) => line.for.includes(finding.id))
    .flatMap(({ content }) => content.overrides.filter(({ operation }) => operation === line.operation));

const sameWork = (one: WorkLine, other: WorkLine): boolean =>
  one.operation === other.operation && one.place === other.place;
const isSame = (one: WorkLine, other: WorkLine): boolean =>
  sameWork(one, other) && one.for.some((finding) => other.for.includes(finding));

function markOf(
  line: WorkLine,
  measured: readonly WorkLine[],
  works: readonly FindingWork[],
): OverrideMark | undefined {
  const set = works
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
function leftOut(
  works: readonly FindingWork[],
  byHand: readonly WorkLine[],
  measured: readonly WorkLine[],
): WorkLine[] {
  const lines = works.flatMap(({ finding, content }) =>
    content.overrides.flatMap(({ operation, quantity, why }): WorkLine[] => {
      const known = measured.find((line) => line.operation === operation && line.for.includes(finding.id));
      const place = known?.place;
      if (quantity !== 0 || byHand.some((line) => line.operation === operation && line.place === place)) return [];
      const { title, unit, phase } = known ?? requireOperation(operation);
      const how = setByHand(`Left out by the estimator: ${why}`);
      return [
        {
          ...(place !== undefined && { place }),
          ...{ operation, title, unit, phase, how, quantity: 0, assumed: false, set: true, holdPoint: false },
          for: [finding.id],
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
