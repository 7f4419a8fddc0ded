import type { Alternate, FieldProblem, LineOverride, ManualKind, ManualLine, Problem } from '@underlath/contract';
import { localProblem, Reader, readDollars, readNumber } from '../desk/numbers.ts';
import type { Row } from '../grid/row.ts';
import {
  type EstimateBody,
  type EstimateDraft,
  isMoney,
  OVERRIDE_CELLS,
  type OverrideCell,
  overrideCells,
  setsValue,
  type WorkDraft,
} from './draft.ts';

const asQuantity = 'type a number, zero or more';
const asHours = 'type hours, like 0.75';
const asDollars = 'type dollars, like 12 or 12.50';
const REASON = 'A reason is missing; it is kept with the price.';
/** Stands in for a reason while a price is only looked at. */
const NO_REASON = 'No reason given yet';

/** Reads every cell; what can't be read is collected with the pointer the server would use for it. */
export function readEstimate(draft: EstimateDraft): { body: EstimateBody; problem: Problem | null } {
  const reader = new Reader();
  const body: EstimateBody = {
    ...readWork(reader, draft, ''),
    exclusions: draft.exclusions.map((row, at) => readWords(reader, row, `/exclusions/${at}`, 'What is not covered')),
    alternates: draft.alternates.map((one, at) => ({
      kind: one.kind,
      name: readWords(reader, one, `/alternates/${at}/name`, 'The name of this way'),
      ...readWork(reader, one, `/alternates/${at}`),
    })),
  };
  const lone = [draft, ...draft.alternates].flatMap((work, at) =>
    loneReasons(work, at === 0 ? '' : `/alternates/${at - 1}`),
  );
  const errors = [...reader.errors, ...emptyAlternates(body.alternates), ...lone];
  return { body, problem: errors.length > 0 ? localProblem(errors) : null };
}

/** The same to look at the price while reasons are still to be given; null when a figure can't be read. */
export function previewBody({ body, problem }: ReturnType<typeof readEstimate>): EstimateBody | null {
  const onlyReasons = (problem?.errors ?? []).every(({ pointer }) => pointer.endsWith('/why'));
  if (!onlyReasons) return null;
  const reasoned = <T extends { why: string }>(line: T): T => ({ ...line, why: line.why || NO_REASON });
  const reasonedWork = <W extends Pick<EstimateBody, 'overrides' | 'manualLines'>>(work: W): W => ({
    ...work,
    overrides: work.overrides.map(reasoned),
    manualLines: work.manualLines.map(reasoned),
  });
  return { ...reasonedWork(body), alternates: body.alternates.map(reasonedWork) };
}

const readWork = (reader: Reader, { choices, lines, manual }: WorkDraft, at: string) => ({
  choices: choices.map((choice) => ({ ...choice })),
  overrides: lines.filter(setsValue).map((row, line) => readOverride(reader, row, `${at}/overrides/${line}`)),
  manualLines: manual.map((row, line) => readManual(reader, row, `${at}/manualLines/${line}`)),
});

function readOverride(reader: Reader, row: Row, at: string): LineOverride {
  const typed = overrideCells.flatMap((cell) => {
    const text = row[cell] ?? '';
    return text === '' ? [] : [[OVERRIDE_CELLS[cell], readCell(reader, cell, text, at)] as const];
  });
  return { operation: row.key, ...Object.fromEntries(typed), why: readWhy(reader, row, at) };
}

function readCell(reader: Reader, cell: OverrideCell, typed: string, at: string): number {
  const allowed = isMoney(cell) ? asDollars : cell === 'hours' ? asHours : asQuantity;
  const value = isMoney(cell) ? readDollars(typed) : readNumber(typed);
  const known = typeof value === 'number' && value < 0 ? undefined : value;
  return reader.neededNumber(`${at}/${OVERRIDE_CELLS[cell]}`, known, typed, allowed);
}

function readWhy(reader: Reader, { why = '' }: Row, at: string): string {
  if (why.trim() === '') reader.errors.push({ pointer: `${at}/why`, detail: REASON });
  return why.trim();
}

function readManual(reader: Reader, row: Row, at: string): ManualLine {
  const { kind = 'charge', name = '', titleEs = '', quantity = '', unit = '', other = '' } = row;
  const amount = readNumber(quantity);
  const price = readDollars(other);
  const positive = typeof amount === 'number' && amount <= 0 ? undefined : amount;
  const lowers = kind !== 'charge' && typeof price === 'number' && price <= 0;
  return {
    title: reader.need(`${at}/title`, name, 'What it is'),
    ...(titleEs.trim() !== '' && { titleEs: titleEs.trim() }),
    kind: readKind(reader, kind, at),
    quantity: reader.neededNumber(`${at}/quantity`, positive, quantity, 'type a number above zero'),
    unit: reader.need(`${at}/unit`, unit, 'The unit'),
    unitCents: reader.neededNumber(
      `${at}/unitCents`,
      lowers ? undefined : price,
      other,
      lowers ? `${kind === 'credit' ? 'a credit' : 'an allowance'} is typed as dollars above zero` : asDollars,
    ),
    why: readWhy(reader, row, at),
  };
}

const kinds: readonly string[] = ['charge', 'credit', 'allowance'] satisfies ManualKind[];

function readKind(reader: Reader, kind: string, at: string): ManualKind {
  if (!kinds.includes(kind))
    reader.errors.push({ pointer: `${at}/kind`, detail: `“${kind}” is none of ${kinds.join(', ')}.` });
  return kind as ManualKind;
}

type Words = Row | { readonly en: string; readonly es: string };

const readWords = (reader: Reader, { en = '', es = '' }: Words, at: string, what: string) => ({
  en: reader.need(`${at}/en`, en, `${what} in English`),
  es: reader.need(`${at}/es`, es, `${what} in Spanish`),
});

const emptyAlternates = (alternates: readonly Alternate[]): FieldProblem[] =>
  alternates.flatMap(({ choices, manualLines }, at) =>
    choices.length + manualLines.length > 0
      ? []
      : [{ pointer: `/alternates/${at}`, detail: 'Choose a repair or add a line: this way has no work yet.' }],
  );

/** A reason typed before its figure. */
const loneReasons = ({ lines }: WorkDraft, at: string): FieldProblem[] =>
  lines
    .filter((row) => !setsValue(row))
    .map(({ key }) => ({
      pointer: `${at}/lines/${key}/why`,
      detail: 'A reason alone changes nothing: type the quantity, the hours or a price it is for.',
    }));
