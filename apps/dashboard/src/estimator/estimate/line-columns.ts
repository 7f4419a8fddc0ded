import type { Estimate, PriceLine, Problem } from '@underlath/contract';
import { roundCents } from '@underlath/rules/kernel';
import { formatMoney } from '../../shared/i18n/format.ts';
import { errorAt } from '../../shared/ui/states.tsx';
import { readDollars, readNumber } from '../desk/numbers.ts';
import { unitWords } from '../desk/words.ts';
import type { GridColumn } from '../grid/column.ts';
import type { Row } from '../grid/row.ts';
import {
  cellText,
  isManual,
  isMoney,
  OVERRIDE_CELLS,
  type OverrideCell,
  overrideCells,
  setsValue,
  type WorkDraft,
} from './draft.ts';

/** What of a priced scope becomes rows. */
export type PricedLines = Pick<Estimate['scope'], 'lines' | 'gaps'>;

/** The lines of an estimate as a grid shows them: those of the repairs, rates that are missing, lines of one's own. */
export function lineRows(draft: WorkDraft, scope: PricedLines): Row[] {
  return [
    ...scope.lines.filter(({ operation }) => operation !== 'manual').map((line) => bookRow(line, draft)),
    ...scope.gaps.map((gap) => gapRow(gap, draft)),
    ...draft.manual.map((row) => ({ ...row, type: 'manual', total: manualTotal(row) })),
  ];
}

function bookRow(line: PriceLine, draft: WorkDraft): Row {
  const base = (cell: OverrideCell) => {
    const field = OVERRIDE_CELLS[cell];
    const mark = line.overrides?.find((one) => one.field === field);
    if (mark) return mark.was;
    return field === 'quantity' ? line.quantity : line.rates?.[field];
  };
  const { operation, title, unit, totalCents } = line;
  return typedRow(draft, base, {
    ...{ type: 'book', operation, name: title.en, unit },
    total: formatMoney(totalCents, 'en-US'),
  });
}

/** A rate the book lacks shows as nothing, and can be typed where only hours or material are missing. */
function gapRow(gap: PricedLines['gaps'][number], draft: WorkDraft): Row {
  const { operation, title, unit, quantity, lacks = ['item'] } = gap;
  const canType = lacks.every((what) => what === 'hours' || what === 'material');
  return typedRow(draft, (cell) => (cell === 'quantity' ? quantity : null), {
    ...{ type: canType ? 'gap' : 'no-item', operation, name: title.en, unit },
    total: 'no rate',
  });
}

type Known = Row | Omit<Row, 'key'>;

function typedRow(draft: WorkDraft, base: (cell: OverrideCell) => number | null | undefined, known: Known): Row {
  const { operation = '' } = known as Record<string, string>;
  const typed = draft.lines.find(({ key }) => key === operation);
  // A quantity that is kept with a repair is set by hand as well.
  const kept = draft.choices.flatMap(({ quantities }) => quantities[operation] ?? [])[0];
  const cells = overrideCells.map((cell) => [
    cell,
    typed?.[cell] ?? keptCell(cell, kept) ?? cellText(cell, base(cell)),
  ]);
  const bases = overrideCells.map((cell) => [`base.${cell}`, cellText(cell, base(cell))]);
  return {
    ...(known as Record<string, string>),
    ...Object.fromEntries([...bases, ...cells]),
    why: typed?.why ?? kept?.why ?? '',
    key: `line:${operation}`,
  };
}

const keptCell = (cell: OverrideCell, kept: { value: number } | undefined): string | undefined =>
  cell === 'quantity' && kept ? cellText(cell, kept.value) : undefined;

function manualTotal({ kind, quantity = '', other = '' }: Row): string {
  const [amount, cents] = [readNumber(quantity), readDollars(other)];
  if (typeof amount !== 'number' || typeof cents !== 'number') return '';
  return formatMoney((kind === 'credit' ? -1 : 1) * roundCents(amount * cents), 'en-US');
}

const cellNames: Record<OverrideCell, string> = {
  quantity: 'quantity',
  hours: 'hours each',
  material: 'material',
  equipment: 'equipment',
  subcontract: 'subcontract',
  other: 'other',
};

/** The cells of a line that hold something else than what was measured or is in the book. */
export const cellsSetByHand = (row: Row): OverrideCell[] =>
  isManual(row) ? [] : overrideCells.filter((cell) => (row[cell] ?? '') !== (row[`base.${cell}`] ?? ''));

/** `quantity was 12.5, is 14: measured again on site` */
export function byHandWords(row: Row): string {
  const money = (cell: OverrideCell, text: string) => (isMoney(cell) && text !== '' ? `$${text}` : text);
  const changes = cellsSetByHand(row).map((cell) => {
    const was = row[`base.${cell}`] ?? '';
    const is = money(cell, row[cell] ?? '');
    return was === ''
      ? `${cellNames[cell]} was not in the book, is ${is}`
      : `${cellNames[cell]} was ${money(cell, was)}, is ${is}`;
  });
  if (changes.length === 0) return row.why ?? '';
  return `${changes.join('; ')}${row.why ? `: ${row.why}` : ''}`;
}

const kindOptions = [
  { value: 'charge', label: 'charge' },
  { value: 'credit', label: 'credit' },
  { value: 'allowance', label: 'allowance' },
];

function kindWords(row: Row): string {
  if (row.type === 'gap' || row.type === 'no-item') return 'no rate';
  return cellsSetByHand(row).length > 0 ? 'set by hand' : 'by the book';
}

const byBook = (row: Row) => !isManual(row);
const always = () => true;
const rate = (id: OverrideCell, head: string): GridColumn => ({
  id,
  head,
  figure: true,
  fixed: (row) => isManual(row) || row.type === 'no-item',
  show: (row) => (isManual(row) ? '' : row[id] || 'no rate'),
});

const columns = {
  name: { id: 'name', head: 'Line', fixed: byBook },
  kind: {
    id: 'kind',
    head: 'Kind',
    options: kindOptions,
    fixed: byBook,
    show: (row: Row) => (isManual(row) ? (row.kind ?? '') : kindWords(row)),
  },
  quantity: { id: 'quantity', head: 'Quantity', figure: true, fixed: (row: Row) => row.type === 'no-item' },
  unit: { id: 'unit', head: 'Unit', fixed: byBook, show: ({ unit = '' }: Row) => unitWords(unit) },
  other: {
    id: 'other',
    head: 'Other or price, $ each',
    figure: true,
    fixed: (row: Row) => row.type === 'no-item',
  },
  total: { id: 'total', head: 'Total', figure: true, fixed: always },
  why: {
    id: 'why',
    head: 'Why',
    words: true,
    fixed: (row: Row) => row.type === 'no-item',
    show: (row: Row) => (row.type === 'no-item' ? 'The cost book lacks it: add its rate there.' : byHandWords(row)),
  },
  titleEs: { id: 'titleEs', head: 'Name in Spanish', fixed: byBook },
} satisfies Record<string, GridColumn>;

/** All lines in one grid. */
export const lineColumns: readonly GridColumn[] = [
  columns.name,
  columns.kind,
  columns.quantity,
  columns.unit,
  rate('hours', 'Hours each'),
  rate('material', 'Material, $ each'),
  rate('equipment', 'Equipment, $ each'),
  rate('subcontract', 'Subcontract, $ each'),
  columns.other,
  columns.total,
  columns.why,
  columns.titleEs,
];

const manualFields: Record<string, string> = { name: 'title', other: 'unitCents' };

/**
 * What is wrong with a cell, found here or told by the server.
 * @param at pointer of the work within the estimate
 */
export function lineError(
  problem: Problem | null,
  draft: WorkDraft,
  { row, column, at }: { row: Row; column: string; at: string },
): string | undefined {
  if (isManual(row)) {
    const line = draft.manual.findIndex(({ key }) => key === row.key);
    return errorAt(problem, `${at}/manualLines/${line}/${manualFields[column] ?? column}`);
  }
  const { operation = '' } = row;
  const line = draft.lines.filter(setsValue).findIndex(({ key }) => key === operation);
  if (column === 'why' && line < 0) return errorAt(problem, `${at}/lines/${operation}/why`);
  const field = column === 'name' ? 'operation' : (OVERRIDE_CELLS[column as OverrideCell] ?? column);
  return errorAt(problem, `${at}/overrides/${line}/${field}`);
}
