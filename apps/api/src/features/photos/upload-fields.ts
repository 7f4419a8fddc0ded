import { id, photoStage, sha256 } from '@underlath/contract';
import * as z from 'zod';
import { invalidInput, ProblemError } from '../../platform/problem-error.ts';

const empty = (value: unknown) => (value === '' ? undefined : value);
const optional = <S extends z.ZodType>(schema: S) => z.preprocess(empty, schema.optional());

import { isStorable } from '../../plugins/storable-text.ts';

/** What stands before the file in an upload. Forms send an empty text for what was left out. */
const uploadFields = z.strictObject({
  id: optional(id),
  sha256: optional(sha256),
  findingId: optional(id),
  locationId: optional(id),
  stage: z.preprocess(empty, photoStage.default('found')),
  caption: z.string().trim().max(300).refine(isStorable, 'a letter in it cannot be kept').default(''),
});
export type UploadFields = z.output<typeof uploadFields>;

/** @throws ProblemError `invalid-input` with a pointer for each field that does not fit */
export function readUploadFields(values: Record<string, unknown>): UploadFields {
  const parsed = uploadFields.safeParse(values);
  if (parsed.success) return parsed.data;
  const errors = parsed.error.issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map((key) => ({ pointer: `/${key}`, detail: `there is no field called "${key}"` }))
      : [{ pointer: `/${issue.path.join('/')}`, detail: issue.message }],
  );
  const detail = errors.map((one) => `${one.pointer}: ${one.detail}`).join('; ');
  if (errors.length === 1) throw invalidInput(errors[0]?.pointer ?? '', detail);
  throw new ProblemError('invalid-input', detail, { errors });
}
