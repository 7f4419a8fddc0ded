import type { FieldProblem, Problem } from '@underlath/contract';

/** What was typed as a number: `null` for nothing, `undefined` when it is none. */
export type Typed = number | null | undefined;

/** `184,200`, `$184,200.50` -> integer cents. */
export function readDollars(typed: string): Typed {
  const plain = typed.replace(/[$,\s]/g, '');
  if (plain === '') return null;
  const match = /^(-?)(\d+)(?:\.(\d{1,2}))?$/.exec(plain);
  if (!match) return undefined;
  const cents = Number(match[2]) * 100 + Number((match[3] ?? '').padEnd(2, '0'));
  return match[1] ? -cents : cents;
}

/** Cents as they are typed: no currency sign, `.00` left out. */
export function writeDollars(cents: number | null): string {
  if (cents === null) return '';
  const text = (Math.abs(cents) / 100).toLocaleString('en-US', {
    minimumFractionDigits: cents % 100 === 0 ? 0 : 2,
    maximumFractionDigits: 2,
  });
  return cents < 0 ? `-${text}` : text;
}

/** A number with or without thousands commas. */
export function readNumber(typed: string): Typed {
  const plain = typed.replace(/[,\s]/g, '');
  if (plain === '') return null;
  return /^-?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}

export const writeNumber = (value: number | null | undefined): string =>
  value === null || value === undefined ? '' : String(value);

/** A problem found before anything was sent, in the same form as the server's. */
export function localProblem(errors: readonly FieldProblem[]): Problem {
  return {
    type: 'invalid-input',
    status: 422,
    title: errors.length === 1 ? 'One answer does not fit' : `${errors.length} answers do not fit`,
    detail: 'Nothing was sent yet. Fix the marked fields and try again.',
    errors: [...errors],
  };
}

/** Collects what was typed wrongly while a form is turned into a request. */
export class Reader {
  readonly errors: FieldProblem[] = [];

  need(pointer: string, typed: string, what: string): string {
    const text = typed.trim();
    if (text === '') this.errors.push({ pointer, detail: `${what} is missing.` });
    return text;
  }

  number(pointer: string, value: Typed, typed: string, allowed: string): number | null {
    if (value !== undefined) return value;
    this.errors.push({ pointer, detail: `“${typed}” cannot be read; ${allowed}.` });
    return null;
  }

  neededNumber(pointer: string, value: Typed, typed: string, allowed: string): number {
    if (value === null) this.errors.push({ pointer, detail: `A number is missing; ${allowed}.` });
    return this.number(pointer, value, typed, allowed) ?? 0;
  }

  get problem(): Problem | null {
    return this.errors.length > 0 ? localProblem(this.errors) : null;
  }
}

/** The day it is in a zone, or where the reader is, `YYYY-MM-DD`; the Swedish order of a date is the one of ISO 8601. */
export const today = (zone: string | undefined): string =>
  new Intl.DateTimeFormat('sv-SE', { dateStyle: 'short', ...(zone && { timeZone: zone }) }).format(new Date());
