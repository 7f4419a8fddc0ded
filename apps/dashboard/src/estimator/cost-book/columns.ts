import { burdenedRateCents, FEE_KINDS } from '@underlath/rules/pricing';
import { formatMoney } from '../../shared/i18n/format.ts';
import { readDollars, readNumber, writeNumber } from '../desk/numbers.ts';
import { operationWords, unitWords } from '../desk/words.ts';
import type { GridColumn } from '../grid/column.ts';
import type { Row } from '../grid/row.ts';
import type { BookDraft } from './draft.ts';

/** A column and the fields of a book whose errors it shows, most precise first. */
export type BookColumn = GridColumn & { readonly fields: readonly string[] };

const figure = (id: string, head: string, ...fields: string[]): BookColumn => ({ id, head, fields, figure: true });
const always = () => true;
/** While the whole book is the starter's, no row of it can say otherwise. */
const invented = ({ own }: BookDraft): BookColumn => ({
  id: 'invented',
  head: 'Invented',
  fields: ['invented'],
  options: [
    { value: '', label: 'no' },
    { value: 'yes', label: 'yes' },
  ],
  fixed: () => !own,
  ...(own ? {} : { show: () => 'yes' }),
});

const sumOfParts = (draft: BookDraft, trade: string | undefined) =>
  draft.parts.filter((part) => part.trade === trade).reduce((sum, { pct }) => sum + (readNumber(pct ?? '') ?? 0), 0);
const hasParts = (draft: BookDraft, trade: string | undefined) => draft.parts.some((part) => part.trade === trade);
const burdenOf = (draft: BookDraft, row: Row): string =>
  hasParts(draft, row.id) ? writeNumber(Number(sumOfParts(draft, row.id).toFixed(4))) : (row.burden ?? '');

/** What an hour costs with the burden on it, or nothing while either can't be read. */
function burdenedWords(draft: BookDraft, row: Row): string {
  const [wageCentsPerHour, burdenPct] = [readDollars(row.wage ?? ''), readNumber(burdenOf(draft, row))];
  if (typeof wageCentsPerHour !== 'number' || typeof burdenPct !== 'number') return '';
  return formatMoney(burdenedRateCents({ wageCentsPerHour, burdenPct }), 'en-US');
}

export const tradeColumns = (draft: BookDraft): BookColumn[] => [
  { id: 'name', head: 'Trade', fields: ['name', 'id', ''] },
  figure('wage', 'Wage, $ an hour', 'wageCentsPerHour'),
  {
    ...figure('burden', 'Burden, % of the wage', 'burdenPct'),
    fixed: (row) => hasParts(draft, row.id),
    show: (row) => burdenOf(draft, row),
  },
  { ...figure('rate', 'With burden, $ an hour'), fixed: always, show: (row) => burdenedWords(draft, row) },
  invented(draft),
];

const tradeOptions = ({ trades }: BookDraft) =>
  trades.map(({ id = '', name = '' }) => ({ value: id, label: name === '' ? id : name }));

export const partColumns = (draft: BookDraft): BookColumn[] => [
  { id: 'name', head: 'Part of the burden', fields: ['name', ''] },
  { id: 'trade', head: 'Trade', fields: ['trade'], options: tradeOptions(draft) },
  figure('pct', '% of the wage', 'pct'),
];

export const itemColumns = (draft: BookDraft): BookColumn[] => [
  {
    id: 'operation',
    head: 'Work',
    fields: ['operation', ''],
    fixed: always,
    show: ({ operation = '' }) => operationWords(operation),
  },
  { id: 'unit', head: 'Unit', fields: ['unit'], fixed: always, show: ({ unit = '' }) => unitWords(unit) },
  { id: 'trade', head: 'Trade', fields: ['trade'], options: tradeOptions(draft) },
  figure('low', 'Hours, low', 'hoursPerUnit/low', 'hoursPerUnit'),
  figure('likely', 'Hours, likely', 'hoursPerUnit/likely'),
  figure('high', 'Hours, high', 'hoursPerUnit/high'),
  figure('material', 'Material, $', 'materialCentsPerUnit'),
  figure('waste', 'Waste, %', 'wastePct'),
  {
    id: 'wholeUnits',
    head: 'Whole units',
    fields: ['wholeUnits'],
    options: [
      { value: 'yes', label: 'yes' },
      { value: 'no', label: 'no' },
    ],
  },
  figure('tax', 'Tax on material, %', 'materialTaxPct'),
  {
    id: 'taxOn',
    head: 'Tax is on',
    fields: ['taxOn'],
    options: [
      { value: '', label: 'purchase' },
      { value: 'sale', label: 'sale' },
      { value: 'none', label: 'none' },
    ],
  },
  figure('equipment', 'Equipment, $', 'equipmentCentsPerUnit'),
  figure('subcontract', 'Subcontract, $', 'subcontractCentsPerUnit'),
  figure('other', 'Other, $', 'otherCentsPerUnit'),
  {
    id: 'fee',
    head: 'Fee',
    fields: ['fee'],
    options: [
      { value: '', label: 'none' },
      ...draft.fees.map(({ id = '', name = '' }) => ({ value: id, label: name === '' ? id : name })),
    ],
  },
  figure('minimum', 'At least, $ a visit', 'minimumCents'),
  invented(draft),
];

export const feeColumns = (draft: BookDraft): BookColumn[] => [
  { id: 'name', head: 'Fee', fields: ['name', 'id', ''] },
  {
    id: 'kind',
    head: 'Kind',
    fields: ['kind'],
    options: [{ value: '', label: 'not said' }, ...FEE_KINDS.map((value) => ({ value, label: value }))],
  },
  figure('price', 'Dollars', 'cents'),
  invented(draft),
];
