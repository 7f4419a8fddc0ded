import {
  allocate,
  decimal,
  formatCents,
  percentOf,
  roundCents,
  sumCents,
  type Text,
  text,
  wholeUp,
} from '../../kernel/index.ts';
import { assertLines, assertTotals } from './amounts.ts';
import { type EstimateInput, type EstimateLine, PERCENT_PARTS, type PercentPart } from './estimate-input.ts';
import { amountText } from './unit-words.ts';

export interface PricedLine {
  readonly name: string;
  readonly laborCents: number;
  readonly materialCents: number;
  readonly taxCents: number;
  readonly subcontractCents: number;
  readonly equipmentCents: number;
  readonly otherCents: number;
  /** What a minimum charge adds to this line. */
  readonly minimumCents: number;
  readonly totalCents: number;
  /** How the line came about, one sentence per part. */
  readonly steps: readonly Text[];
}

export interface Estimate {
  readonly lines: readonly PricedLine[];
  readonly subtotalCents: number;
  readonly overheadCents: number;
  readonly profitCents: number;
  readonly totalCents: number;
}

const same = (words: string): Text => text(words, words);

function laborOf(line: EstimateLine): { cents: number; step: Text } {
  const hours = line.quantity * line.hoursPerUnit.likely;
  const laborCents = roundCents(hours * line.rateCents);
  const { en, es } = amountText(line.quantity, line.unit);
  const work = `x ${decimal(line.hoursPerUnit.likely, 4)} h = ${decimal(hours)} h`;
  const money = `${formatCents(line.rateCents)}/h = ${formatCents(laborCents)}`;
  const step = text(`Labor: ${en} ${work} x ${money}`, `Mano de obra: ${es} ${work} x ${money}`);
  return { cents: laborCents, step };
}

function materialOf(line: EstimateLine): { cents: number; step: Text } {
  const wasted = line.quantity * (1 + line.wastePct / 100);
  const bought = line.wholeUnits ? wholeUp(wasted) : wasted;
  const materialCents = roundCents(bought * line.materialCentsPerUnit);
  const { en, es } = amountText(line.quantity, line.unit);
  const waste = `+ ${decimal(line.wastePct)}% = ${decimal(wasted, 3)}`;
  const money = `x ${formatCents(line.materialCentsPerUnit)} = ${formatCents(materialCents)}`;
  const whole = line.wholeUnits ? text(`, whole ${bought}`, `, enteros ${bought}`) : same('');
  return {
    cents: materialCents,
    step: text(`Material: ${en} ${waste}${whole.en} ${money}`, `Material: ${es} ${waste}${whole.es} ${money}`),
  };
}

function sumStep(label: Text, amountCents: number): Text[] {
  if (amountCents === 0) return [];
  const money = formatCents(amountCents);
  return [text(`${label.en}: ${money}`, `${label.es}: ${money}`)];
}

/** A line before any minimum: each part is rounded once and the total is the sum of the printed parts. */
function priceLine(line: EstimateLine, saleFactor: number): PricedLine {
  const priced = priceWork(line, saleFactor);
  return line.credit ? giveBack(priced) : priced;
}

const giveBack = (line: PricedLine): PricedLine => ({
  name: line.name,
  laborCents: 0 - line.laborCents,
  materialCents: 0 - line.materialCents,
  taxCents: 0 - line.taxCents,
  subcontractCents: 0 - line.subcontractCents,
  equipmentCents: 0 - line.equipmentCents,
  otherCents: 0 - line.otherCents,
  minimumCents: 0,
  totalCents: 0 - line.totalCents,
  steps: [
    ...line.steps,
    text(
      `Left out, so ${formatCents(line.totalCents)} is given back`,
      `No se hace, así que se devuelven ${formatCents(line.totalCents)}`,
    ),
  ],
});

/** The tax on a line's material: on what it cost, or on what it sells for. */
function taxOf(line: EstimateLine, materialCents: number, saleFactor: number): { cents: number; step: Text } {
  const sold = line.taxOn === 'sale';
  const baseCents = sold ? roundCents(materialCents * saleFactor) : materialCents;
  const taxCents = percentOf(baseCents, line.materialTaxPct);
  const taxWords = `${decimal(line.materialTaxPct, 4)}% x ${formatCents(baseCents)} = ${formatCents(taxCents)}`;
  const step = sold
    ? text(`Tax on the selling price: ${taxWords}`, `Impuesto sobre el precio de venta: ${taxWords}`)
    : text(`Tax: ${taxWords}`, `Impuesto: ${taxWords}`);
  return { cents: taxCents, step };
}

function priceWork(line: EstimateLine, saleFactor: number): PricedLine {
  const labor = laborOf(line);
  const material = materialOf(line);
  const tax = taxOf(line, material.cents, saleFactor);
  const parts = [labor.cents, material.cents, tax.cents, line.subcontractCents, line.equipmentCents, line.otherCents];
  return {
    name: line.name,
    laborCents: labor.cents,
    materialCents: material.cents,
    taxCents: tax.cents,
    subcontractCents: line.subcontractCents,
    equipmentCents: line.equipmentCents,
    otherCents: line.otherCents,
    minimumCents: 0,
    totalCents: sumCents(parts),
    steps: [
      ...(labor.cents > 0 ? [labor.step] : []),
      ...(material.cents > 0 ? [material.step] : []),
      ...(tax.cents > 0 ? [tax.step] : []),
      ...sumStep(text('Subcontract', 'Subcontrato'), line.subcontractCents),
      ...sumStep(text('Equipment', 'Equipo'), line.equipmentCents),
      ...sumStep(text('Other', 'Otro'), line.otherCents),
    ],
  };
}

/** Which lines share one minimum charge: those of a visit, or a lone line. Credits have none. */
export function visitGroups(lines: readonly EstimateLine[]): number[][] {
  const groups = new Map<string | number, number[]>();
  for (const [at, { visit, credit }] of lines.entries()) {
    if (credit) continue;
    const key = visit === undefined ? at : `visit ${visit}`;
    const group = groups.get(key);
    if (group) group.push(at);
    else groups.set(key, [at]);
  }
  return [...groups.values()];
}

/** Raises each visit (or lone line) to its minimum, once, shared over its lines in proportion. */
function withMinimums(priced: readonly PricedLine[], lines: readonly EstimateLine[]): PricedLine[] {
  const result = [...priced];
  for (const indexes of visitGroups(lines)) {
    const minimumCents = Math.max(0, ...indexes.map((at) => lines[at]?.minimumCents ?? 0));
    const reachedCents = sumCents(indexes.map((at) => priced[at]?.totalCents ?? 0));
    // Without a minimum a sum given back stays below nothing.
    if (minimumCents === 0 || reachedCents >= minimumCents) continue;
    const weights = indexes.map((at) => Math.max(0, priced[at]?.totalCents ?? 0));
    const shares = allocate(minimumCents - reachedCents, weights);
    for (const [order, at] of indexes.entries()) {
      const line = priced[at];
      const added = shares[order] ?? 0;
      if (line && added > 0) result[at] = raise(line, added, minimumCents);
    }
  }
  return result;
}

const raise = (line: PricedLine, addedCents: number, minimumCents: number): PricedLine => ({
  ...line,
  minimumCents: addedCents,
  totalCents: line.totalCents + addedCents,
  steps: [
    ...line.steps,
    text(
      `Minimum charge ${formatCents(minimumCents)} for the visit adds ${formatCents(addedCents)}`,
      `El cargo mínimo de ${formatCents(minimumCents)} por visita suma ${formatCents(addedCents)}`,
    ),
  ],
});

/** What a cent of cost in one part comes to with overhead and profit. */
export function percentFactorOf(input: EstimateInput, part: PercentPart): number {
  if (!(input.percentOf ?? PERCENT_PARTS).includes(part)) return 1;
  const [overhead, profit] = [input.overheadPct / 100, input.profitPct / 100];
  return input.stacking === 'stacked' ? (1 + overhead) * (1 + profit) : 1 + overhead + profit;
}

/** What overhead and profit are taken on in one line. Tax on a sale is passed on as it is. */
function baseOf(line: PricedLine, parts: readonly PercentPart[], taxOn: EstimateLine['taxOn']): number {
  const byPart: Record<PercentPart, number> = {
    labor: line.laborCents,
    material: line.materialCents + (taxOn === 'sale' ? 0 : line.taxCents),
    subcontract: line.subcontractCents,
    other: line.otherCents + line.equipmentCents + line.minimumCents,
  };
  return sumCents([...new Set(parts)].map((part) => byPart[part]));
}

/**
 * Prices lines and foots them: every part of a line is rounded once, the total is the sum of printed cents, overhead
 * and profit are taken on the printed subtotal (or on the parts named). The order of the lines changes no sum. Throws
 * AmountError for a line that at its highest hours, or a total that, passes MAX_CENTS.
 */
export function evaluateEstimate(input: EstimateInput): Estimate {
  const saleFactor = percentFactorOf(input, 'material');
  assertLines(input.lines, saleFactor);
  const lines = withMinimums(
    input.lines.map((line) => priceLine(line, saleFactor)),
    input.lines,
  );
  const subtotalCents = sumCents(lines.map((line) => line.totalCents));
  const baseCents = sumCents(
    lines.map((line, at) => baseOf(line, input.percentOf ?? PERCENT_PARTS, input.lines[at]?.taxOn)),
  );
  const overheadCents = percentOf(baseCents, input.overheadPct);
  const profitCents = percentOf(input.stacking === 'stacked' ? baseCents + overheadCents : baseCents, input.profitPct);
  const totalCents = subtotalCents + overheadCents + profitCents;
  assertTotals(lines, [subtotalCents, overheadCents, profitCents, totalCents]);
  return { lines, subtotalCents, overheadCents, profitCents, totalCents };
}
