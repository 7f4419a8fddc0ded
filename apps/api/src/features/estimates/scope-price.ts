import type { ManualLine, PricedScope, PriceLine } from '@underlath/contract';
import {
  amountText,
  type CostBook,
  type CostItem,
  type EstimateInput,
  estimateInputOf,
  findOperation,
  formatCents,
  type PriceGap,
  percentsOnChange,
  priceScope,
  restsOnInvented,
  roundCents,
  type ScopePriceLine,
  sumCents,
  type Text,
  text,
  type WorkLine,
} from '@underlath/rules';
import type { NewestBook } from '../cost-books/cost-books.service.ts';
import { refuseAmounts } from './amounts.ts';
import { setByHand } from './finding-work.ts';

export interface ManualWork {
  readonly findingId: string;
  readonly line: ManualLine;
}

/**
 * Prices work and manual lines with one book. A rate the book lacks is a gap: what it would price is left out and named, so
 * the total with gaps is the total of what can be priced. @throws ProblemError `invalid-input` for a line, or a total, that
 * comes to more than can be kept
 */
export function priceWork(
  work: readonly WorkLine[],
  manual: readonly ManualWork[],
  { version, book }: NewestBook,
): PricedScope {
  const byHand = manual.map(toWork);
  const withManual = bookWith(book, manual);
  const all = [...work, ...byHand];
  // One line of some work may have a rate typed over it that another still lacks.
  const lacking = all.filter((one) => estimateInputOf([one], withManual).input === null);
  const known = all.filter((one) => !lacking.includes(one));
  const price = refuseAmounts(
    () => priceScope(known, withManual),
    (line) => pointerOf(known[line]),
  );
  const lines = price.lines.map((line) => toLine(line, manual));
  return {
    currency: 'USD',
    costBookVersion: version,
    placeholder: restsOnInvented(book, new Set(lines.map(({ operation }) => operation))),
    lines,
    gaps: gapsOf(estimateInputOf(lacking, withManual).gaps, lacking),
    subtotalCents: price.estimate?.subtotalCents ?? 0,
    overheadPct: book.overheadPct,
    overheadCents: price.estimate?.overheadCents ?? 0,
    profitPct: book.profitPct,
    profitCents: price.estimate?.profitCents ?? 0,
    stacking: book.stacking,
    totalCents: price.estimate?.totalCents ?? 0,
    hours: Math.round(lines.reduce((sum, { hours }) => sum + hours, 0) * 100) / 100,
  };
}

/** The price of a change order, with what the contract says of a net decrease. */
export function priceChange(
  returnsOnDecrease: boolean,
  newest: NewestBook,
  price: (newest: NewestBook) => PricedScope,
): PricedScope {
  const scope = price(newest);
  const book = percentsOnChange(scope.subtotalCents, newest.book, returnsOnDecrease);
  return book === newest.book ? scope : price({ ...newest, book });
}

/** The same work as an estimate to draw a range from; null where the book lacks a rate. */
export const estimateOf = (
  work: readonly WorkLine[],
  manual: readonly ManualWork[],
  { book }: NewestBook,
): EstimateInput | null => estimateInputOf([...work, ...manual.map(toWork)], bookWith(book, manual)).input;

export const linesCents = (scope: PricedScope): number | null =>
  scope.gaps.length > 0 ? null : sumCents(scope.lines.map(({ totalCents }) => totalCents));

const isGapOf = (gap: PriceGap, work: WorkLine): boolean => gap.operation === work.operation && gap.unit === work.unit;

/** Each missing rate once, with every finding that needs it. */
function gapsOf(gaps: readonly PriceGap[], work: readonly WorkLine[]): PricedScope['gaps'] {
  const first = new Map(gaps.map((gap) => [`${gap.operation} ${gap.unit}`, gap]));
  return [...first.values()].map((gap) => ({
    operation: gap.operation,
    title: findOperation(gap.operation)?.title ?? gap.message,
    unit: gap.unit,
    findingIds: [...new Set(work.filter((one) => isGapOf(gap, one)).flatMap((one) => one.for ?? []))],
    quantity: work.filter((one) => isGapOf(gap, one)).reduce((sum, { quantity }) => sum + quantity, 0),
    lacks: [...new Set(gaps.filter((one) => isSameGap(one, gap)).map(({ kind }) => LACKS[kind]))],
  }));
}

const isSameGap = (one: PriceGap, other: PriceGap): boolean =>
  one.operation === other.operation && one.unit === other.unit;

const LACKS: Readonly<Record<PriceGap['kind'], NonNullable<PricedScope['gaps'][number]['lacks']>[number]>> = {
  'no-item': 'item',
  'no-trade': 'trade',
  'no-fee': 'fee',
  'no-hours': 'hours',
  'no-material-rate': 'material',
};

const manualPrefix = 'manual:';

/** Where in the content of an estimate a line comes from: typed by hand, or the work of a chosen repair. */
const pointerOf = (line: WorkLine | undefined): string =>
  line?.operation.startsWith(manualPrefix) ? `/manualLines/${line.operation.slice(manualPrefix.length)}` : '/choices';

const toWork = ({ findingId, line }: ManualWork, at: number): WorkLine => ({
  operation: `${manualPrefix}${at}`,
  title: text(line.title, line.titleEs ?? ''),
  quantity: line.quantity,
  unit: 'each',
  how: manualStep(line),
  for: [findingId],
  ...(line.kind === 'credit' && { credit: true }),
});

/** For this one price the book also knows the lines typed by hand: a sum per unit, without hours, waste or tax. */
function bookWith(book: CostBook, manual: readonly ManualWork[]): CostBook {
  const trade = { id: 'by-hand', name: 'By hand', wageCentsPerHour: 0, burdenPct: 0 };
  const items = manual.map(
    ({ line }, at): CostItem => ({
      operation: `${manualPrefix}${at}`,
      unit: 'each',
      trade: trade.id,
      hoursPerUnit: { low: 0, likely: 0, high: 0 },
      materialCentsPerUnit: 0,
      wastePct: 0,
      wholeUnits: false,
      materialTaxPct: 0,
      equipmentCentsPerUnit: 0,
      subcontractCentsPerUnit: 0,
      otherCentsPerUnit: line.unitCents,
      minimumCents: 0,
    }),
  );
  return { ...book, trades: [...book.trades, trade], items: [...book.items, ...items] };
}

function manualStep({ quantity, unit, unitCents }: ManualLine): Text {
  const sum = formatCents(roundCents(quantity * unitCents));
  const { en, es } = amountText(quantity, unit);
  const steps = `x ${formatCents(unitCents)} = ${sum}`;
  return text(`Typed by the estimator: ${en} ${steps}.`, `Escrito por el estimador: ${es} ${steps}.`);
}

const manualSteps = (line: ManualLine): Text[] => [
  setByHand(`${line.why}.`),
  manualStep(line),
  ...KIND_STEPS[line.kind ?? 'charge'],
];

const KIND_STEPS: Readonly<Record<NonNullable<ManualLine['kind']>, readonly Text[]>> = {
  charge: [],
  credit: [text('A credit: it lowers the price.', 'Un crédito: baja el precio.')],
  allowance: [
    text(
      'An allowance: it is reconciled with what is really spent.',
      'Una partida por definir: se ajusta a lo que realmente se gaste.',
    ),
  ],
};

function toLine(line: ScopePriceLine, manual: readonly ManualWork[]): PriceLine {
  const operation = line.operation ?? 'fee';
  const byHand = operation.startsWith(manualPrefix)
    ? manual[Number(operation.slice(manualPrefix.length))]?.line
    : undefined;
  return {
    name: line.title.en,
    operation: byHand ? 'manual' : operation,
    title: line.title,
    findingIds: [...line.for],
    quantity: line.quantity,
    unit: byHand?.unit ?? line.unit,
    hours: Math.round(line.quantity * (line.rates?.hoursPerUnit ?? 0) * 100) / 100,
    laborCents: line.laborCents,
    materialCents: line.materialCents,
    taxCents: line.taxCents,
    equipmentCents: line.equipmentCents,
    subcontractCents: line.subcontractCents,
    // What a minimum charge adds belongs to no other part; with it the parts add up to the line.
    otherCents: line.otherCents + line.minimumCents,
    totalCents: line.totalCents,
    steps: byHand ? manualSteps(byHand) : [...line.steps],
    ...(byHand && { kind: byHand.kind ?? 'charge' }),
    ...(line.overrides.length > 0 && { overrides: [...line.overrides] }),
    ...(line.rates && { rates: line.rates }),
  };
}
