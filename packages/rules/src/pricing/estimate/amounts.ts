import { decimal, formatCents, type Text, text } from '../../kernel/index.ts';
import { type EstimateLine, MAX_CENTS } from './estimate-input.ts';

/** A line, or a total, that comes to more than can be kept. Nothing of such an estimate has a price. */
export class AmountError extends Error {
  override readonly name = 'AmountError';
  /** Where the line is among those given; of a total, its largest line. */
  readonly line: number;
  readonly words: Text;
  constructor(line: number, words: Text) {
    super(words.en);
    this.line = line;
    this.words = words;
  }
}

const most = text(formatCents(MAX_CENTS, 'en'), formatCents(MAX_CENTS, 'es'));

/** What a line comes to at its highest hours, cents, before anything is rounded; the tax on a sale with its markup. */
function largestCents(line: EstimateLine, saleFactor: number): number {
  const material = (line.quantity * (1 + line.wastePct / 100) + (line.wholeUnits ? 1 : 0)) * line.materialCentsPerUnit;
  const tax = (material * (line.taxOn === 'sale' ? saleFactor : 1) * line.materialTaxPct) / 100;
  const labor = line.quantity * line.hoursPerUnit.high * line.rateCents;
  return labor + material + tax + line.equipmentCents + line.subcontractCents + Math.abs(line.otherCents);
}

/** @throws AmountError naming the first line that comes to more than $20,000,000 at its highest hours */
export function assertLines(lines: readonly EstimateLine[], saleFactor: number): void {
  for (const [at, line] of lines.entries()) {
    if (largestCents(line, saleFactor) <= MAX_CENTS) continue;
    const amount = `${decimal(line.quantity)} ${line.unit}`;
    throw new AmountError(
      at,
      text(
        `${line.name}: ${amount} at these rates come to more than ${most.en}, the most a line may be.`,
        `${line.name}: ${amount} a estas tarifas pasan de ${most.es}, lo máximo de una línea.`,
      ),
    );
  }
}

/** @throws AmountError naming the largest line when a sum of all lines is more than $20,000,000 either way */
export function assertTotals(
  lines: readonly { readonly name: string; readonly totalCents: number }[],
  totals: readonly number[],
): void {
  if (totals.every((cents) => Math.abs(cents) <= MAX_CENTS)) return;
  const sizes = lines.map(({ totalCents }) => Math.abs(totalCents));
  const at = sizes.indexOf(Math.max(...sizes));
  const name = lines[at]?.name ?? '';
  throw new AmountError(
    at,
    text(
      `All lines together come to more than ${most.en}, the most a total may be. The largest is ${name}.`,
      `Todas las líneas juntas pasan de ${most.es}, lo máximo de un total. La mayor es ${name}.`,
    ),
  );
}
