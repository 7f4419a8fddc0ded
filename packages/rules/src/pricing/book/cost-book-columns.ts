import { FEE_KINDS, STACKINGS, TAX_ON, WORK_UNITS } from './cost-book.ts';

/** What a row of the table is about. A `burden` row is one part of the burden of the trade it names. */
export const ROW_KINDS = ['settings', 'trade', 'burden', 'item', 'fee'] as const;
export type RowKind = (typeof ROW_KINDS)[number];

/** What a cell holds: `undefined` is a field left out, `null` a rate not known yet. */
export type CellValue = string | number | boolean | null | undefined;

export interface CellForm {
  readonly allowed: string;
  write(value: CellValue): string;
  /** `NaN` for a cell that does not fit. */
  read(cell: string): CellValue;
}

const unread = Number.NaN;

const text: CellForm = {
  allowed: 'words',
  write: (value) => (value === undefined ? '' : String(value)),
  read: (cell) => (cell === '' ? unread : cell),
};

/** A plain decimal, or one with a power of ten as spreadsheets write very small numbers. */
const plainNumber = /^-?\d+(\.\d+)?(e[+-]?\d+)?$/i;

const decimals: CellForm = {
  allowed: 'a number with a decimal point and no thousands comma, like 0.75',
  write: (value) => (value === undefined || value === null ? '' : String(value)),
  read: (cell) => (plainNumber.test(cell.trim()) ? Number(cell) : unread),
};

const dollars: CellForm = {
  allowed: 'US dollars with a decimal point, without a dollar sign or thousands comma, like 38 or 38.50',
  write: (value) => (typeof value === 'number' ? writeDollars(value) : ''),
  read: (cell) => readDollars(cell.trim()),
};

function writeDollars(cents: number): string {
  const digits = String(Math.abs(cents)).padStart(3, '0');
  return `${cents < 0 ? '-' : ''}${digits.slice(0, -2)}.${digits.slice(-2)}`;
}

function readDollars(cell: string): number {
  const match = /^(-?)(\d+)(?:\.(\d{1,2}))?$/.exec(cell);
  if (!match) return unread;
  const cents = Number(match[2]) * 100 + Number((match[3] ?? '').padEnd(2, '0'));
  return match[1] ? 0 - cents : cents;
}

const oneOf = (values: readonly string[]): CellForm => ({
  allowed: values.join(', '),
  write: (value) => (value === undefined ? '' : String(value)),
  read: (cell) => (values.includes(cell.trim()) ? cell.trim() : unread),
});

const yesNo: CellForm = {
  allowed: 'yes or no',
  write: (value) => (value ? 'yes' : 'no'),
  read: (cell) => ({ yes: true, no: false })[cell.trim().toLowerCase()] ?? unread,
};

/** An empty cell stands for `value`. */
const orEmpty = (form: CellForm, value: null | undefined, words: string): CellForm => ({
  allowed: `${form.allowed}, or empty: ${words}`,
  write: (given) => (given === value ? '' : form.write(given)),
  read: (cell) => (cell.trim() === '' ? value : form.read(cell)),
});

/** `invented` is true or left out. */
const mark: CellForm = {
  allowed: 'yes, no or empty',
  write: (value) => (value ? 'yes' : ''),
  read: (cell) => (cell.trim() === '' || yesNo.read(cell) === false ? undefined : yesNo.read(cell)),
};

const unknown = (form: CellForm) => orEmpty(form, null, 'not known yet');

export interface Column {
  /** The header, with the unit of what stands below it. */
  readonly name: string;
  readonly form: CellForm;
  /** In which rows it is filled, and which field of the book that is. */
  readonly fields: Partial<Record<RowKind, string>>;
  /** A file may lack it: those written before there was such a column do. */
  readonly mayLack?: true;
}

const column = (name: string, form: CellForm, fields: Column['fields']): Column => ({ name, form, fields });

/** The one set of columns of a cost book, in the order they are written. A cell that is not of its row's kind stays empty. */
export const COLUMNS: readonly Column[] = [
  column('row', oneOf(ROW_KINDS), { settings: 'row', trade: 'row', burden: 'row', item: 'row', fee: 'row' }),
  column('id', text, { trade: 'id', burden: 'trade', item: 'operation', fee: 'id' }),
  column('name', text, { trade: 'name', burden: 'name', item: 'title', fee: 'name' }),
  column('unit', oneOf(WORK_UNITS), { item: 'unit' }),
  column('currency', orEmpty(oneOf(['USD']), undefined, 'USD'), {
    settings: 'currency',
    trade: 'currency',
    item: 'currency',
    fee: 'currency',
  }),
  column('trade', text, { item: 'trade' }),
  column('wage_usd_per_hour', dollars, { trade: 'wageCentsPerHour' }),
  column('burden_percent', decimals, { trade: 'burdenPct', burden: 'pct' }),
  column('hours_low_per_unit', unknown(decimals), { item: 'hoursPerUnit.low' }),
  column('hours_likely_per_unit', unknown(decimals), { item: 'hoursPerUnit.likely' }),
  column('hours_high_per_unit', unknown(decimals), { item: 'hoursPerUnit.high' }),
  column('material_usd_per_unit', unknown(dollars), { item: 'materialCentsPerUnit' }),
  column('waste_percent', decimals, { item: 'wastePct' }),
  column('whole_units_yes_no', yesNo, { item: 'wholeUnits' }),
  column('material_tax_percent', decimals, { item: 'materialTaxPct' }),
  column('tax_on', orEmpty(oneOf(TAX_ON), undefined, 'purchase'), { item: 'taxOn' }),
  column('equipment_usd_per_unit', dollars, { item: 'equipmentCentsPerUnit' }),
  column('subcontract_usd_per_unit', dollars, { item: 'subcontractCentsPerUnit' }),
  column('other_usd_per_unit', dollars, { item: 'otherCentsPerUnit' }),
  column('minimum_usd_per_visit', dollars, { item: 'minimumCents' }),
  column('fee', orEmpty(text, undefined, 'no fee'), { item: 'fee' }),
  column('fee_kind', orEmpty(oneOf(FEE_KINDS), undefined, 'other'), { fee: 'kind' }),
  column('fee_usd', dollars, { fee: 'cents' }),
  column('overhead_percent_of_cost', decimals, { settings: 'overheadPct' }),
  column('profit_markup_percent', decimals, { settings: 'profitPct' }),
  column('profit_stacked_or_added', oneOf(STACKINGS), { settings: 'stacking' }),
  { ...column('crew_people', orEmpty(decimals, undefined, 'two'), { settings: 'crewSize' }), mayLack: true },
  {
    ...column('crew_hours_per_day', orEmpty(decimals, undefined, 'eight'), { settings: 'hoursPerDay' }),
    mayLack: true,
  },
  column('invented_yes_no', mark, { settings: 'placeholder', trade: 'invented', item: 'invented', fee: 'invented' }),
];
