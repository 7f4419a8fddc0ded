import { uploadFields as fields } from '@underlath/contract';
import type * as z from 'zod';
import { invalidInput, ProblemError } from '../../platform/problem-error.ts';
import { isStorable } from '../../shared/storable.ts';

const uploadFields = fields.refine(({ caption }) => isStorable(caption), {
  path: ['caption'],
  error: 'a letter in it cannot be kept',
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
