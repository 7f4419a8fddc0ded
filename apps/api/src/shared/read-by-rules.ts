import type * as z from 'zod';
import { ProblemError } from '../platform/problem-error.ts';

/** Named in the sentence; the list has them all. */
const SHOWN = 3;

/**
 * Reads a body by the schema of the rules package, which sees what no single field shows.
 * @throws ProblemError `invalid-input` with a JSON Pointer (RFC 6901) for everything that does not fit
 */
export function readByRules<S extends z.ZodType>(schema: S, body: unknown): z.output<S> {
  const { data, error } = schema.safeParse(body);
  if (!error) return data;
  const errors = error.issues.map(({ path, message }) => ({ pointer: pointerOf(path), detail: message }));
  const shown = errors.slice(0, SHOWN).map((one) => `${one.pointer}: ${one.detail}`);
  const more = errors.length > SHOWN ? ` (and ${errors.length - SHOWN} more)` : '';
  const detail = `${shown.join('; ')}${more}`;
  throw new ProblemError('invalid-input', `${detail}.`, { errors });
}

const pointerOf = (path: readonly PropertyKey[]): string =>
  path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
