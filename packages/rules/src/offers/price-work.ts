import { formatCents, roundCents, sumCents, type Text, text } from '../kernel/index.ts';
import { type CostBook, restsOnInvented } from '../pricing/book/cost-book.ts';
import { percentsOnChange } from '../pricing/contract/contract.ts';
import { AmountError } from '../pricing/estimate/amounts.ts';
import { evaluateEstimate, type PricedLine } from '../pricing/estimate/estimate.ts';
import type { EstimateInput, EstimateLine } from '../pricing/estimate/estimate-input.ts';
import { markWords } from '../pricing/estimate/line-override.ts';
import { bareLine, type PriceGap, ratesOfWork, rateWork } from '../pricing/estimate/rate-work.ts';
import { amountText } from '../pricing/estimate/unit-words.ts';
import { groupBy, type WorkLine } from '../repairs/drawn.ts';
import { findOperation } from '../repairs/take-off.ts';
import type { ManualKind, ManualLine } from './document/estimate-content.ts';
import type { PricedScope, PriceLine } from './document/priced-scope.ts';
import { type FindingWork, setByHand } from './finding.ts';
import { uniteWork } from './united-work.ts';

/** A cost book and the number of its version; 0 is the starter book, which no company has saved. */
export interface NumberedBook {
  readonly version: number;
  readonly book: CostBook;
}

/** All that is to be paid for some findings: work by the book, and lines typed by hand, which need none. */
export interface OfferedWork {
  readonly work: readonly WorkLine[];
  readonly manual: readonly { readonly findingId: string; readonly line: ManualLine }[];
}

/** Work or a line that comes to more than a price may be; nothing that it stands in has a price. */
export class WorkAmountError extends Error {
  override readonly name = 'WorkAmountError';
  readonly words: Text;
  /** Which of the lines typed by hand it is, or null for work of a repair. */
  readonly manualLine: number | null;
  constructor(words: Text, manualLine: number | null) {
    super(words.en);
    this.words = words;
    this.manualLine = manualLine;
  }
}

/** Something to price that has all its rates, and how its price is told once it is known. */
interface Rated {
  readonly line: EstimateLine;
  readonly manualLine: number | null;
  readonly tell: (line: PricedLine) => PriceLine;
}

export const offeredWork = (works: readonly FindingWork[]): OfferedWork => ({
  work: uniteWork(works),
  manual: works.flatMap(({ finding, content }) => content.manualLines.map((line) => ({ findingId: finding.id, line }))),
});

/**
 * Prices work and manual lines with one book, as one visit: a trade's minimum is met once by all its lines together. A rate
 * that the book lacks is a gap: what it would price is left out and named, so that the total with gaps is the total of what
 * can be priced. Throws WorkAmountError for a line, or a total, that comes to more than can be kept.
 */
export function priceWork(offered: OfferedWork, { version, book }: NumberedBook): PricedScope {
  const { rated, lacking } = rate(offered, book);
  const priced = evaluate(rated, book);
  const lines = priced.lines.flatMap((line, at) => rated[at]?.tell(line) ?? []);
  return {
    currency: 'USD',
    costBookVersion: version,
    placeholder: restsOnInvented(book, new Set(lines.map(({ operation }) => operation))),
    lines,
    gaps: gapsOf(lacking),
    subtotalCents: priced.subtotalCents,
    overheadPct: book.overheadPct,
    overheadCents: priced.overheadCents,
    profitPct: book.profitPct,
    profitCents: priced.profitCents,
    stacking: book.stacking,
    totalCents: priced.totalCents,
    hours: hundredths(lines.reduce((sum, { hours }) => sum + hours, 0)),
  };
}

/** The price of a change order, with what the contract says of a net decrease. Throws WorkAmountError. */
export function priceChange(offered: OfferedWork, newest: NumberedBook, returnsOnDecrease: boolean): PricedScope {
  const scope = priceWork(offered, newest);
  const book = percentsOnChange(scope.subtotalCents, newest.book, returnsOnDecrease);
  return book === newest.book ? scope : priceWork(offered, { ...newest, book });
}

/** The same as an estimate to draw a range from; null where the book lacks a rate. */
export function estimateOf(offered: OfferedWork, { book }: NumberedBook): EstimateInput | null {
  const { rated, lacking } = rate(offered, book);
  return lacking.length > 0 ? null : inputOf(rated, book);
}

/** What its lines come to without overhead and profit; null where the book lacks a rate. */
export const linesCents = (scope: PricedScope): number | null =>
  scope.gaps.length > 0 ? null : sumCents(scope.lines.map(({ totalCents }) => totalCents));

interface Lacking {
  readonly work: WorkLine;
  readonly gaps: readonly PriceGap[];
}

/** What has all its rates, work before lines typed by hand, and what the book lacks for the rest. */
function rate({ work, manual }: OfferedWork, book: CostBook): { rated: Rated[]; lacking: Lacking[] } {
  const rated: Rated[] = [];
  const lacking: Lacking[] = [];
  for (const one of work) {
    const line = rateWork(one, book);
    // One line of some work may have a rate typed over it that another still lacks.
    if (Array.isArray(line)) lacking.push({ work: one, gaps: line });
    else rated.push({ line, manualLine: null, tell: (priced) => tellWork(priced, one, book) });
  }
  for (const [at, { findingId, line }] of manual.entries())
    rated.push({ line: lineOf(line), manualLine: at, tell: (priced) => tellManual(priced, line, findingId) });
  return { rated, lacking };
}

const inputOf = (rated: readonly Rated[], { overheadPct, profitPct, stacking }: CostBook): EstimateInput => ({
  lines: rated.map(({ line }) => line),
  overheadPct,
  profitPct,
  stacking,
});

function evaluate(rated: readonly Rated[], book: CostBook) {
  try {
    return evaluateEstimate(inputOf(rated, book));
  } catch (error) {
    if (!(error instanceof AmountError)) throw error;
    throw new WorkAmountError(error.words, rated[error.line]?.manualLine ?? null);
  }
}

/** Each missing rate once, with every finding that needs it. */
function gapsOf(lacking: readonly Lacking[]): PricedScope['gaps'] {
  const byRate = groupBy(lacking, ({ work }) => `${work.operation} ${work.unit}`);
  return [...byRate.values()].flatMap((same) => {
    const [first] = same;
    if (!first) return [];
    const { operation, unit, title } = first.work;
    return {
      operation,
      title: findOperation(operation)?.title ?? first.gaps[0]?.message ?? title,
      unit,
      findingIds: [...new Set(same.flatMap(({ work }) => work.for))],
      quantity: same.reduce((sum, { work }) => sum + work.quantity, 0),
      lacks: [...new Set(same.flatMap(({ gaps }) => gaps.map(({ kind }) => LACKS[kind])))],
    };
  });
}

const LACKS: Readonly<Record<PriceGap['kind'], NonNullable<PricedScope['gaps'][number]['lacks']>[number]>> = {
  'no-item': 'item',
  'no-trade': 'trade',
  'no-fee': 'fee',
  'no-hours': 'hours',
  'no-material-rate': 'material',
};

const hundredths = (hours: number): number => Math.round(hours * 100) / 100;

/** What every priced line says. What a minimum charge adds belongs to no other part; with it the parts add up to the line. */
const amountsOf = ({ minimumCents, steps: _steps, ...line }: PricedLine) => ({
  ...line,
  otherCents: line.otherCents + minimumCents,
});

function tellWork(priced: PricedLine, work: WorkLine, book: CostBook): PriceLine {
  const { operation, title, quantity, unit, quantityMark } = work;
  const { rates, typed } = ratesOfWork(work, book);
  const overrides = [...(quantityMark ? [quantityMark] : []), ...typed];
  return {
    ...amountsOf(priced),
    operation,
    title,
    findingIds: [...work.for],
    quantity,
    unit,
    hours: hundredths(quantity * (rates?.hoursPerUnit ?? 0)),
    steps: [work.how, ...typed.flatMap((mark) => [markWords(mark), setByHand(mark.why)]), ...priced.steps],
    ...(overrides.length > 0 && { overrides }),
    ...(rates && { rates }),
  };
}

/** A sum per unit, without hours, waste or tax. */
const lineOf = ({ title, quantity, unit, unitCents, kind }: ManualLine): EstimateLine => ({
  ...bareLine(title, quantity, unit),
  otherCents: roundCents(quantity * unitCents),
  ...(kind === 'credit' && { credit: true }),
});

function tellManual(priced: PricedLine, line: ManualLine, findingId: string): PriceLine {
  const { title, titleEs = '', quantity, unit, unitCents, kind = 'charge' } = line;
  return {
    ...amountsOf(priced),
    operation: 'manual',
    title: text(title, titleEs),
    findingIds: [findingId],
    quantity,
    unit,
    hours: 0,
    steps: manualSteps(line),
    kind,
    rates: {
      hoursPerUnit: 0,
      materialCentsPerUnit: 0,
      equipmentCentsPerUnit: 0,
      subcontractCentsPerUnit: 0,
      otherCentsPerUnit: unitCents,
    },
  };
}

function manualSteps({ why, quantity, unit, unitCents, kind = 'charge' }: ManualLine): Text[] {
  const { en, es } = amountText(quantity, unit);
  const steps = `x ${formatCents(unitCents)} = ${formatCents(roundCents(quantity * unitCents))}`;
  const typed = text(`Typed by the estimator: ${en} ${steps}.`, `Escrito por el estimador: ${es} ${steps}.`);
  return [setByHand(`${why}.`), typed, ...KIND_STEPS[kind]];
}

const KIND_STEPS: Readonly<Record<ManualKind, readonly Text[]>> = {
  charge: [],
  credit: [text('A credit: it lowers the price.', 'Un crédito: baja el precio.')],
  allowance: [
    text(
      'An allowance: it is reconciled with what is really spent.',
      'Una partida por definir: se ajusta a lo que realmente se gaste.',
    ),
  ],
};
