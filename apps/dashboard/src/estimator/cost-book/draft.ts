import type { FieldProblem, Problem } from '@underlath/contract';
import {
  burdenPctOfParts,
  type CostBook,
  type CostItem,
  costBookSchema,
  crewOf,
  type Fee,
  type Trade,
  USUAL_CREW,
  withMissingOperations,
} from '@underlath/rules/pricing';
import { v7 } from 'uuid';
import { localProblem, Reader, readDollars, readNumber, writeDollars, writeNumber } from '../desk/numbers.ts';
import type { Row } from '../grid/row.ts';

export type Table = 'trades' | 'parts' | 'items' | 'fees';
/** The cost book as it is typed: a list of rows for each of its tables. */
export type BookDraft = Readonly<Record<Table, readonly Row[]>> & {
  readonly own: boolean;
  readonly notice: CostBook['notice'];
  readonly overhead: string;
  readonly profit: string;
  readonly stacking: CostBook['stacking'];
  readonly crew: string;
  readonly hoursPerDay: string;
};

/** Refusals of single values and of the book as a whole; with any other the tables themselves are not known. */
const mendable = new Set(['custom', 'too_small', 'too_big']);

/** A saved book as the tables can show it, also one that was saved before the rules it breaks; null when it has another shape. */
export function editableBook(saved: unknown): CostBook | null {
  const { data, error } = costBookSchema.safeParse(saved);
  if (data) return data;
  return error.issues.every(({ code }) => mendable.has(code)) ? (saved as CostBook) : null;
}

const mark = (invented: boolean | undefined) => (invented ? 'yes' : '');

export function draftOfBook(book: CostBook): BookDraft {
  return {
    own: !book.placeholder,
    notice: book.notice,
    trades: book.trades.map(tradeRow),
    parts: book.trades.flatMap(({ id, burdenParts = [] }) =>
      burdenParts.map(({ name, pct }) => ({ key: v7(), trade: id, name, pct: writeNumber(pct) })),
    ),
    items: book.items.map(itemRow),
    fees: book.fees.map(feeRow),
    overhead: writeNumber(book.overheadPct),
    profit: writeNumber(book.profitPct),
    stacking: book.stacking,
    crew: writeNumber(crewOf(book).crewSize),
    hoursPerDay: writeNumber(crewOf(book).hoursPerDay),
  };
}

const tradeRow = (trade: Trade): Row => ({
  key: v7(),
  id: trade.id,
  name: trade.name,
  wage: writeDollars(trade.wageCentsPerHour),
  burden: writeNumber(trade.burdenPct),
  currency: trade.currency ?? '',
  invented: mark(trade.invented),
});

const feeRow = (fee: Fee): Row => ({
  key: v7(),
  id: fee.id,
  name: fee.name,
  kind: fee.kind ?? '',
  price: writeDollars(fee.cents),
  currency: fee.currency ?? '',
  invented: mark(fee.invented),
});

const itemRow = (item: CostItem): Row => ({
  key: v7(),
  operation: item.operation,
  unit: item.unit,
  trade: item.trade,
  low: writeNumber(item.hoursPerUnit?.low),
  likely: writeNumber(item.hoursPerUnit?.likely),
  high: writeNumber(item.hoursPerUnit?.high),
  material: writeDollars(item.materialCentsPerUnit),
  waste: writeNumber(item.wastePct),
  wholeUnits: item.wholeUnits ? 'yes' : 'no',
  tax: writeNumber(item.materialTaxPct),
  taxOn: item.taxOn ?? '',
  equipment: writeDollars(item.equipmentCentsPerUnit),
  subcontract: writeDollars(item.subcontractCentsPerUnit),
  other: writeDollars(item.otherCentsPerUnit),
  minimum: writeDollars(item.minimumCents),
  fee: item.fee ?? '',
  currency: item.currency ?? '',
  invented: mark(item.invented),
});

/** A new row without rates: hours and material are not known yet, the rest is nothing. */
export const emptyItem = (operation: string, unit: CostItem['unit'], trade: string): Row =>
  itemRow({
    operation,
    unit,
    trade,
    hoursPerUnit: null,
    materialCentsPerUnit: null,
    wastePct: 0,
    wholeUnits: unit === 'each',
    materialTaxPct: 0,
    equipmentCentsPerUnit: 0,
    subcontractCentsPerUnit: 0,
    otherCentsPerUnit: 0,
    minimumCents: 0,
  });

/** `trade-4`: the first that no row has. */
export function freeId(rows: readonly Row[], word: string): string {
  let count = rows.length + 1;
  while (rows.some(({ id }) => id === `${word}-${count}`)) count += 1;
  return `${word}-${count}`;
}

/** The draft with the starter's rows for work it has none for, marked invented. */
export function withMissing(draft: BookDraft): BookDraft {
  const { book } = readBook(draft);
  const full = withMissingOperations(book);
  const more = draftOfBook({
    ...full,
    trades: full.trades.slice(book.trades.length),
    items: full.items.slice(book.items.length),
    fees: full.fees.slice(book.fees.length),
  });
  const joined = (table: Table) => [...draft[table], ...more[table]];
  return { ...draft, trades: joined('trades'), parts: joined('parts'), items: joined('items'), fees: joined('fees') };
}

const asDollars = 'type dollars, like 38 or 38.50';
const asPercent = 'type a percentage, like 18';
const asHours = 'type hours, like 0.75';

/** Reads every cell; what can't be read is collected with the pointer the server would use for it. */
export function readBook(draft: BookDraft): { book: CostBook; problem: Problem | null } {
  const reader = new Reader();
  const percent = percentReader(reader);
  const book: CostBook = {
    currency: 'USD',
    placeholder: !draft.own,
    notice: draft.notice,
    trades: draft.trades.map((row, at) => readTrade(reader, row, draft.parts, `/book/trades/${at}`)),
    items: draft.items.map((row, at) => readItem(reader, row, `/book/items/${at}`)),
    fees: draft.fees.map((row, at) => readFee(reader, row, `/book/fees/${at}`)),
    overheadPct: percent('/book/overheadPct', draft.overhead),
    profitPct: percent('/book/profitPct', draft.profit),
    stacking: draft.stacking,
    ...readCrew(reader, draft),
  };
  for (const [at, part] of draft.parts.entries())
    if (!draft.trades.some(({ id }) => id === part.trade))
      reader.errors.push({ pointer: `/parts/${at}/trade`, detail: 'Choose the trade whose burden this is part of.' });
  const errors = [...reader.errors, ...schemaErrors(book, reader.errors)];
  return { book, problem: errors.length > 0 ? localProblem(errors) : null };
}

/** What the book's own rules refuse beside the cells that could not be read at all. */
function schemaErrors(book: CostBook, known: readonly FieldProblem[]): FieldProblem[] {
  const issues = costBookSchema.safeParse(book).error?.issues ?? [];
  return issues
    .map(({ path, message }) => ({ pointer: ['/book', ...path.map(String)].join('/'), detail: message }))
    .filter(({ pointer }) => !known.some((error) => error.pointer === pointer));
}

/** The usual crew is left out of the book. */
function readCrew(reader: Reader, draft: BookDraft): Pick<CostBook, 'crewSize' | 'hoursPerDay'> {
  const read = (pointer: string, typed: string, allowed: string) =>
    reader.neededNumber(pointer, readNumber(typed), typed, allowed);
  const crewSize = read('/book/crewSize', draft.crew, 'type whole people, like 2');
  const hoursPerDay = read('/book/hoursPerDay', draft.hoursPerDay, 'type hours, like 8');
  return {
    ...(crewSize !== USUAL_CREW.crewSize && { crewSize }),
    ...(hoursPerDay !== USUAL_CREW.hoursPerDay && { hoursPerDay }),
  };
}

const percentReader = (reader: Reader) => (pointer: string, typed: string) =>
  reader.neededNumber(pointer, readNumber(typed), typed, asPercent);
const dollarReader = (reader: Reader) => (pointer: string, typed: string) =>
  reader.neededNumber(pointer, readDollars(typed), typed, asDollars);

/** The marks of a row, left out where they say nothing. */
const marksOf = ({ invented, currency }: Row) => ({
  ...(invented === 'yes' && { invented: true as const }),
  ...(currency && { currency: currency as 'USD' }),
});

function readTrade(reader: Reader, row: Row, parts: readonly Row[], at: string): Trade {
  const percent = percentReader(reader);
  const burdenParts = parts
    .filter(({ trade }) => trade === row.id)
    .map(({ name = '', pct = '' }, part) => ({
      name: reader.need(`${at}/burdenParts/${part}/name`, name, 'The name of the part'),
      pct: percent(`${at}/burdenParts/${part}/pct`, pct),
    }));
  return {
    id: row.id ?? '',
    name: reader.need(`${at}/name`, row.name ?? '', 'The name of the trade'),
    wageCentsPerHour: dollarReader(reader)(`${at}/wageCentsPerHour`, row.wage ?? ''),
    burdenPct: burdenParts.length > 0 ? burdenPctOfParts(burdenParts) : percent(`${at}/burdenPct`, row.burden ?? ''),
    ...(burdenParts.length > 0 && { burdenParts }),
    ...marksOf(row),
  };
}

const readFee = (reader: Reader, row: Row, at: string): Fee => ({
  id: row.id ?? '',
  name: reader.need(`${at}/name`, row.name ?? '', 'The name of the fee'),
  ...(row.kind && { kind: row.kind as NonNullable<Fee['kind']> }),
  cents: dollarReader(reader)(`${at}/cents`, row.price ?? ''),
  ...marksOf(row),
});

/** Empty hours or material are rates not known yet: they show as gaps in a price. */
function readItem(reader: Reader, row: Row, at: string): CostItem {
  const cell = (name: string) => row[name] ?? '';
  const dollars = (field: string, name: string) => dollarReader(reader)(`${at}/${field}`, cell(name));
  const percent = (field: string, name: string) => percentReader(reader)(`${at}/${field}`, cell(name));
  if (!['yes', 'no'].includes(cell('wholeUnits')))
    reader.errors.push({ pointer: `${at}/wholeUnits`, detail: `“${cell('wholeUnits')}” is neither yes nor no.` });
  return {
    operation: cell('operation'),
    unit: cell('unit') as CostItem['unit'],
    trade: cell('trade'),
    hoursPerUnit: readHours(reader, row, at),
    materialCentsPerUnit: reader.number(
      `${at}/materialCentsPerUnit`,
      readDollars(cell('material')),
      cell('material'),
      asDollars,
    ),
    wastePct: percent('wastePct', 'waste'),
    wholeUnits: cell('wholeUnits') === 'yes',
    materialTaxPct: percent('materialTaxPct', 'tax'),
    ...(row.taxOn && { taxOn: row.taxOn as NonNullable<CostItem['taxOn']> }),
    equipmentCentsPerUnit: dollars('equipmentCentsPerUnit', 'equipment'),
    subcontractCentsPerUnit: dollars('subcontractCentsPerUnit', 'subcontract'),
    otherCentsPerUnit: dollars('otherCentsPerUnit', 'other'),
    minimumCents: dollars('minimumCents', 'minimum'),
    ...(row.fee && { fee: row.fee }),
    ...marksOf(row),
  };
}

function readHours(reader: Reader, row: Row, at: string): CostItem['hoursPerUnit'] {
  const hours = (name: string) =>
    reader.number(`${at}/hoursPerUnit/${name}`, readNumber(row[name] ?? ''), row[name] ?? '', asHours);
  const [low, likely, high] = [hours('low'), hours('likely'), hours('high')];
  const typed = [row.low, row.likely, row.high].filter(Boolean).length;
  if (low !== null && likely !== null && high !== null) return { low, likely, high };
  const unread = reader.errors.some(({ pointer }) => pointer.startsWith(`${at}/hoursPerUnit`));
  if (typed > 0 && !unread)
    reader.errors.push({
      pointer: `${at}/hoursPerUnit`,
      detail: 'Low, likely and high hours go together: give all three or none.',
    });
  return null;
}

/** Where the errors of a part of a burden point: the parts of a trade are counted within it. */
export function partPointer({ trades, parts }: BookDraft, at: number): string {
  const part = parts[at];
  const trade = trades.findIndex(({ id }) => id === part?.trade);
  const before = parts.slice(0, at).filter((each) => each.trade === part?.trade).length;
  return trade < 0 ? `/parts/${at}` : `/book/trades/${trade}/burdenParts/${before}`;
}
