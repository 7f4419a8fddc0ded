import type { CostBook, CostItem, Trade } from '@underlath/rules/pricing';
import { v7 } from 'uuid';
import { Reader, readDollars, readNumber, writeDollars, writeNumber } from './numbers.ts';

/** The cost book as it is typed: every cell a text, every row with a key of its own. */
export type TradeRow = { key: string; id: string; name: string; wage: string; burden: string };
export type FeeRow = { key: string; id: string; name: string; price: string };
export type ItemRow = {
  key: string;
  operation: string;
  unit: CostItem['unit'];
  trade: string;
  low: string;
  likely: string;
  high: string;
  material: string;
  waste: string;
  wholeUnits: boolean;
  tax: string;
  equipment: string;
  subcontract: string;
  other: string;
  minimum: string;
};
export type BookDraft = {
  own: boolean;
  notice: CostBook['notice'];
  trades: TradeRow[];
  items: ItemRow[];
  fees: FeeRow[];
  overhead: string;
  profit: string;
  stacking: CostBook['stacking'];
};

export function draftOfBook(book: CostBook): BookDraft {
  return {
    own: !book.placeholder,
    notice: book.notice,
    trades: book.trades.map((trade) => ({
      key: v7(),
      id: trade.id,
      name: trade.name,
      wage: writeDollars(trade.wageCentsPerHour),
      burden: writeNumber(trade.burdenPct),
    })),
    items: book.items.map(itemRow),
    fees: book.fees.map((fee) => ({ key: v7(), id: fee.id, name: fee.name, price: writeDollars(fee.cents) })),
    overhead: writeNumber(book.overheadPct),
    profit: writeNumber(book.profitPct),
    stacking: book.stacking,
  };
}

function itemRow(item: CostItem): ItemRow {
  return {
    key: v7(),
    operation: item.operation,
    unit: item.unit,
    trade: item.trade,
    low: writeNumber(item.hoursPerUnit?.low),
    likely: writeNumber(item.hoursPerUnit?.likely),
    high: writeNumber(item.hoursPerUnit?.high),
    material: writeDollars(item.materialCentsPerUnit),
    waste: writeNumber(item.wastePct),
    wholeUnits: item.wholeUnits,
    tax: writeNumber(item.materialTaxPct),
    equipment: writeDollars(item.equipmentCentsPerUnit),
    subcontract: writeDollars(item.subcontractCentsPerUnit),
    other: writeDollars(item.otherCentsPerUnit),
    minimum: writeDollars(item.minimumCents),
  };
}

export const emptyItem = (operation: string, unit: CostItem['unit'], trade: string): ItemRow => ({
  key: v7(),
  operation,
  unit,
  trade,
  low: '',
  likely: '',
  high: '',
  material: '',
  waste: '0',
  wholeUnits: unit === 'each',
  tax: '0',
  equipment: '0',
  subcontract: '0',
  other: '0',
  minimum: '0',
});

const asDollars = 'type dollars, like 38 or 38.50';
const asPercent = 'type a percentage, like 18';
const asHours = 'type hours, like 0.75';

/** Reads every cell; what can't be read is collected with the pointer the server would use for it. */
export function readBook(draft: BookDraft): { book: CostBook; reader: Reader } {
  const reader = new Reader();
  const dollars = (pointer: string, typed: string) =>
    reader.neededNumber(pointer, readDollars(typed), typed, asDollars);
  const percent = (pointer: string, typed: string) => reader.neededNumber(pointer, readNumber(typed), typed, asPercent);
  const book: CostBook = {
    currency: 'USD',
    placeholder: !draft.own,
    notice: draft.notice,
    trades: draft.trades.map(
      (row, at): Trade => ({
        id: row.id || idOf(row.name),
        name: reader.need(`/book/trades/${at}/name`, row.name, 'The name of the trade'),
        wageCentsPerHour: dollars(`/book/trades/${at}/wageCentsPerHour`, row.wage),
        burdenPct: percent(`/book/trades/${at}/burdenPct`, row.burden),
      }),
    ),
    items: draft.items.map((row, at) => readItem(reader, row, `/book/items/${at}`)),
    fees: draft.fees.map((row, at) => ({
      id: row.id || idOf(row.name),
      name: reader.need(`/book/fees/${at}/name`, row.name, 'The name of the fee'),
      cents: dollars(`/book/fees/${at}/cents`, row.price),
    })),
    overheadPct: percent('/book/overheadPct', draft.overhead),
    profitPct: percent('/book/profitPct', draft.profit),
    stacking: draft.stacking,
  };
  return { book, reader };
}

/** Empty hours or material are rates not known yet: they show as gaps in a price. */
function readItem(reader: Reader, row: ItemRow, at: string): CostItem {
  const dollars = (name: string, typed: string) =>
    reader.neededNumber(`${at}/${name}`, readDollars(typed), typed, asDollars);
  const hours = (name: string, typed: string) =>
    reader.number(`${at}/hoursPerUnit/${name}`, readNumber(typed), typed, asHours);
  const [low, likely, high] = [hours('low', row.low), hours('likely', row.likely), hours('high', row.high)];
  return {
    operation: row.operation,
    unit: row.unit,
    trade: row.trade,
    hoursPerUnit: readRange(reader, `${at}/hoursPerUnit`, low, likely, high),
    materialCentsPerUnit: reader.number(
      `${at}/materialCentsPerUnit`,
      readDollars(row.material),
      row.material,
      asDollars,
    ),
    wastePct: reader.neededNumber(`${at}/wastePct`, readNumber(row.waste), row.waste, asPercent),
    wholeUnits: row.wholeUnits,
    materialTaxPct: reader.neededNumber(`${at}/materialTaxPct`, readNumber(row.tax), row.tax, asPercent),
    equipmentCentsPerUnit: dollars('equipmentCentsPerUnit', row.equipment),
    subcontractCentsPerUnit: dollars('subcontractCentsPerUnit', row.subcontract),
    otherCentsPerUnit: dollars('otherCentsPerUnit', row.other),
    minimumCents: dollars('minimumCents', row.minimum),
  };
}

function readRange(
  reader: Reader,
  pointer: string,
  low: number | null,
  likely: number | null,
  high: number | null,
): CostItem['hoursPerUnit'] {
  if (low === null && likely === null && high === null) return null;
  if (low === null || likely === null || high === null) {
    reader.errors.push({ pointer, detail: 'Low, likely and high hours go together: give all three or none.' });
    return null;
  }
  if (low > likely || likely > high) {
    reader.errors.push({ pointer, detail: `Hours must rise from low to high, not ${low}, ${likely}, ${high}.` });
  }
  return { low, likely, high };
}

/** An id for a new row: its name, made plain. */
export const idOf = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 60);
