import { photoCaps } from '@underlath/contract';
import type { FastifyRequest } from 'fastify';
import type { ReceivedFile } from '../../platform/file-store/file-store.ts';
import { FileTooLargeError } from '../../platform/file-store/store-errors.ts';
import { invalidInput } from '../../platform/problem-error.ts';
import type { PhotoIntakeService } from './photo-intake.service.ts';
import { readUploadFields, type UploadFields } from './upload-fields.ts';

/** Six fields are known; a few more are read so that an unknown one can be named. */
const limits = { fields: 12, fieldSize: 4000, files: 1, parts: 13, fileSize: photoCaps.bytes };

/**
 * Reads an upload: the fields, then the file to its last byte. A file that was cut off or is too large leaves nothing.
 * @throws ProblemError, FileTooLargeError
 */
export async function readUpload(
  request: FastifyRequest,
  intake: PhotoIntakeService,
): Promise<{ fields: UploadFields; file: ReceivedFile }> {
  const values: Record<string, unknown> = {};
  let upload: { fields: UploadFields; file: ReceivedFile } | undefined;
  try {
    for await (const part of request.parts({ limits })) {
      if (part.type === 'field') {
        if (upload) throw invalidInput(`/${part.fieldname}`, `${part.fieldname}: send the fields before the file.`);
        if (part.valueTruncated)
          throw invalidInput(`/${part.fieldname}`, `${part.fieldname}: longer than 4,000 letters.`);
        values[part.fieldname] = part.value;
        continue;
      }
      if (part.fieldname !== 'file') {
        throw invalidInput(`/${part.fieldname}`, `${part.fieldname}: the photo must come in the part called "file".`);
      }
      const fields = readUploadFields(values);
      upload = { fields, file: await intake.receive(part.file) };
      // The parser ends the stream quietly at the limit; only afterwards does it say so.
      if (part.file.truncated) throw new FileTooLargeError(photoCaps.bytes);
    }
    if (!upload) throw invalidInput('/file', 'file: no photo came; send it as the part called "file".');
    return upload;
  } catch (error) {
    if (upload) await intake.discard(upload.file);
    throw error;
  }
}
