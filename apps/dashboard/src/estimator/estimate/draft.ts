import type { Alternate, Estimate, EstimateContent, LineOverride, ManualLine, RepairChoice } from '@underlath/contract';
import { findRepair } from '@underlath/rules';
import { v7 } from 'uuid';
import * as z from 'zod';
import { readDollars, readNumber, writeDollars, writeNumber } from '../desk/numbers.ts';
import type { Edit } from '../grid/grid.tsx';
import type { Row } from '../grid/row.ts';
import { rowSchema } from '../grid/row.ts';

type KeptChoice = Estimate['choices'][number];
export type EstimateBody = EstimateContent;

/** Work as it is typed: every cell a text. A line's row has the operation as its key and only the cells typed over it. */
export type WorkDraft = {
  readonly choices: readonly KeptChoice[];
  readonly lines: readonly Row[];
  readonly manual: readonly Row[];
};
export type EstimateDraft = WorkDraft & {
  readonly exclusions: readonly Row[];
  readonly alternates: readonly AlternateDraft[];
};
export type AlternateDraft = WorkDraft & {
  readonly key: string;
  readonly kind: Alternate['kind'];
  readonly en: string;
  readonly es: string;
};

const work = {
  choices: z.array(
    z.object({
      repairId: z.string(),
      quantities: z.record(z.string(), z.object({ value: z.number(), why: z.string() })),
    }),
  ),
  lines: z.array(rowSchema),
  manual: z.array(rowSchema),
};
/** A draft as a browser keeps it. */
export const estimateDraftSchema: z.ZodType<EstimateDraft> = z.object({
  ...work,
  exclusions: z.array(rowSchema),
  alternates: z.array(
    z.object({
      ...work,
      key: z.string(),
      kind: z.enum(['repair', 'replace', 'better']),
      en: z.string(),
      es: z.string(),
    }),
  ),
});

/** Cells of a line that can be typed over, and what they are in the contract. */
export const OVERRIDE_CELLS = {
  quantity: 'quantity',
  hours: 'hoursPerUnit',
  material: 'materialCentsPerUnit',
  equipment: 'equipmentCentsPerUnit',
  subcontract: 'subcontractCentsPerUnit',
  other: 'otherCentsPerUnit',
} as const satisfies Record<string, Exclude<keyof LineOverride, 'operation' | 'why'>>;
export type OverrideCell = keyof typeof OVERRIDE_CELLS;
export const overrideCells = Object.keys(OVERRIDE_CELLS) as OverrideCell[];
export const isMoney = (cell: OverrideCell): boolean => cell !== 'quantity' && cell !== 'hours';

/** A value as its cell shows it; four decimals tell any amount apart that is measured. */
export const cellText = (cell: OverrideCell, value: number | null | undefined): string => {
  if (value === null || value === undefined) return '';
  return isMoney(cell) ? writeDollars(value) : writeNumber(Number(value.toFixed(4)));
};

/** What was saved; before that, the repairs the check proposes. */
export function draftOf(estimate: Estimate): EstimateDraft {
  return {
    ...workOf(estimate),
    exclusions: estimate.exclusions.map((words) => ({ key: v7(), ...words })),
    alternates: estimate.alternates.map((way) => ({ key: v7(), kind: way.kind, ...way.name, ...workOf(way) })),
  };
}

const workOf = ({ choices, overrides, manualLines }: Pick<EstimateBody, 'choices' | 'overrides' | 'manualLines'>) => ({
  choices,
  lines: overrides.map(overrideRow),
  manual: manualLines.map(manualRow),
});

function overrideRow(override: LineOverride): Row {
  const cells = overrideCells.flatMap((cell) => {
    const value = override[OVERRIDE_CELLS[cell]];
    return value === undefined ? [] : [[cell, cellText(cell, value)] as const];
  });
  return { key: override.operation, why: override.why, ...Object.fromEntries(cells) };
}

const manualRow = (line: ManualLine): Row => ({
  key: v7(),
  kind: line.kind ?? 'charge',
  name: line.title,
  titleEs: line.titleEs ?? '',
  quantity: writeNumber(line.quantity),
  unit: line.unit,
  other: writeDollars(line.unitCents),
  why: line.why,
});

export const emptyManual = (kind: string): Row => ({
  key: v7(),
  kind,
  name: '',
  titleEs: '',
  quantity: '1',
  unit: 'each',
  other: '',
  why: '',
});

export const setsValue = (row: Row): boolean => overrideCells.some((cell) => (row[cell] ?? '') !== '');

export const isManual = (row: Row): boolean => row.type === 'manual';

/**
 * What was typed into the lines. A cell that holds the measured or the book's value again, or nothing, is no longer set
 * by hand; a line without such a cell loses its reason too.
 * @param shown the lines as the grid shows them, with what each cell holds without anything typed under `base.`
 */
export function withEdits<D extends WorkDraft>(draft: D, shown: readonly Row[], edits: readonly Edit[]): D {
  let now = draft;
  for (const edit of edits) {
    const row = shown.find(({ key }) => key === edit.key);
    if (row)
      now = isManual(row)
        ? { ...now, manual: withCell(now.manual, edit) }
        : { ...now, ...withOverride(now, row, edit) };
  }
  return now;
}

export const withCell = (rows: readonly Row[], { key, column, value }: Edit): Row[] =>
  rows.map((row) => (row.key === key ? { ...row, [column]: value } : row));

function withOverride({ lines, choices }: WorkDraft, row: Row, { column, value }: Edit) {
  const { operation = '' } = row;
  const before = lines.find(({ key }) => key === operation) ?? { key: operation };
  const typed = plainText(column, value);
  const isBase = typed === '' || typed === row[`base.${column}`];
  const { [column]: _old, ...rest } = before;
  const next: Row = { ...rest, key: operation, ...(column === 'why' || !isBase ? { [column]: typed } : {}) };
  const drop = column === 'why' ? !setsValue(next) && value.trim() === '' : !setsValue(next);
  const others = lines.filter(({ key }) => key !== operation);
  const at = lines.findIndex(({ key }) => key === operation);
  const kept = drop ? others : at < 0 ? [...lines, next] : lines.with(at, next);
  return { lines: kept, choices: column === 'quantity' ? withoutQuantity(choices, operation) : choices };
}

/** A figure as its cell would show it, so that `16.0` is 16; what can't be read stays as it was typed. */
function plainText(column: string, typed: string): string {
  if (!(column in OVERRIDE_CELLS)) return typed;
  const cell = column as OverrideCell;
  const value = isMoney(cell) ? readDollars(typed) : readNumber(typed);
  return value === undefined ? typed.trim() : cellText(cell, value);
}

/** A quantity kept with one repair gives way to the one of the line. */
const withoutQuantity = (choices: readonly KeptChoice[], operation: string): KeptChoice[] =>
  choices.map((choice) => {
    const { [operation]: _old, ...quantities } = choice.quantities;
    return { ...choice, quantities };
  });

/** The line as it was measured and as the book has it. */
export const withoutOverride = <D extends WorkDraft>(draft: D, operation: string): D => ({
  ...draft,
  lines: draft.lines.filter(({ key }) => key !== operation),
  choices: withoutQuantity(draft.choices, operation),
});

function chosen(choices: readonly KeptChoice[], repairId: string, isChosen: boolean): KeptChoice[] {
  const others = choices.filter((choice) => choice.repairId !== repairId);
  return isChosen ? [...others, { repairId, quantities: {} }] : others;
}

const operationsOf = ({ repairId }: RepairChoice): string[] =>
  findRepair(repairId)?.steps.map(({ operation }) => operation) ?? [];

/** What was typed over lines of a repair goes with it, unless another repair has that work too. */
export function withRepair<D extends WorkDraft>(draft: D, repairId: string, isChosen: boolean): D {
  const next = chosen(draft.choices, repairId, isChosen);
  const operations = new Set(next.flatMap(operationsOf));
  return { ...draft, choices: next, lines: draft.lines.filter(({ key }) => operations.has(key)) };
}

/**
 * The other way becomes the repair, with its lines, and what was the repair waits in its place under the names of its
 * repairs. Without work it does not stay.
 */
export function withTakenUp(draft: EstimateDraft, key: string): EstimateDraft {
  const taken = draft.alternates.find((one) => one.key === key);
  if (!taken) return draft;
  const { choices, lines, manual } = draft;
  const titles = choices.flatMap(({ repairId }) => findRepair(repairId)?.title ?? []);
  const name = (language: 'en' | 'es', else_: string) => titles.map((title) => title[language]).join('; ') || else_;
  const was: AlternateDraft = {
    key: v7(),
    kind: 'repair',
    en: name('en', 'As it was priced before'),
    es: name('es', 'Como se calculó antes'),
    ...{ choices, lines, manual },
  };
  const hasWork = choices.length + manual.length > 0;
  return {
    ...draft,
    choices: taken.choices,
    lines: taken.lines,
    manual: taken.manual,
    alternates: draft.alternates.flatMap((one) => (one !== taken ? [one] : hasWork ? [was] : [])),
  };
}

const manualCells = ['name', 'kind', 'quantity', 'unit', 'other', 'why', 'titleEs'];

/** Rows copied from a spreadsheet: what it is, kind, quantity, unit, price, why, name in Spanish, from the given cell on. */
export function withPasted(manual: readonly Row[], key: string, column: string, block: readonly string[][]): Row[] {
  const first = manualCells.indexOf(column);
  const at = manual.findIndex((row) => row.key === key);
  const length = Math.max(manual.length, at + block.length);
  return Array.from({ length }, (_, index): Row => {
    const row = manual[index] ?? emptyManual('charge');
    const cells = block[index - at] ?? [];
    const typed = cells.flatMap((value, right): [string, string][] => {
      const cell = manualCells[first + right];
      return cell ? [[cell, cell === 'kind' ? value.toLowerCase() : value]] : [];
    });
    return { ...row, ...Object.fromEntries(typed) };
  });
}
