import { findOperation } from '../../repairs/take-off.ts';
import type { CostBook, CostItem } from './cost-book.ts';
import { type CellValue, COLUMNS, type RowKind } from './cost-book-columns.ts';

type Fields = Record<string, CellValue>;

export interface BookRow {
  readonly kind: RowKind;
  readonly cells: readonly string[];
}

const row = (kind: RowKind, fields: Fields): BookRow => ({
  kind,
  cells: COLUMNS.map(({ form, fields: of }) => {
    const field = of[kind];
    return field === undefined ? '' : form.write(field === 'row' ? kind : fields[field]);
  }),
});

function itemFields({ hoursPerUnit, ...item }: CostItem): Fields {
  return {
    ...item,
    title: findOperation(item.operation)?.title.en ?? item.operation,
    'hoursPerUnit.low': hoursPerUnit?.low ?? null,
    'hoursPerUnit.likely': hoursPerUnit?.likely ?? null,
    'hoursPerUnit.high': hoursPerUnit?.high ?? null,
  };
}

/** A cost book as rows of texts, one column set for all kinds of row. Its notice is not in it. */
export function tableOfBook(book: CostBook): BookRow[] {
  const { currency, overheadPct, profitPct, stacking, crewSize, hoursPerDay, placeholder } = book;
  return [
    row('settings', { currency, overheadPct, profitPct, stacking, crewSize, hoursPerDay, placeholder }),
    ...book.trades.flatMap(({ burdenParts = [], ...trade }) => [
      row('trade', trade),
      ...burdenParts.map((part) => row('burden', { ...part, trade: trade.id })),
    ]),
    ...book.items.map((item) => row('item', itemFields(item))),
    ...book.fees.map((fee) => row('fee', fee)),
  ];
}

export const HEADER: readonly string[] = COLUMNS.map(({ name }) => name);
