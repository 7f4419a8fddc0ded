/** The disk or bucket has no room left; nothing of the file was kept. */
export class StorageFullError extends Error {
  override readonly name = 'StorageFullError';
}

/** The file store cannot be reached or refuses us; nothing of the file was kept. */
export class StoreAwayError extends Error {
  override readonly name = 'StoreAwayError';
}

/** A file that should be in the store is not. */
export class FileMissingError extends Error {
  override readonly name = 'FileMissingError';
  constructor(
    readonly key: string,
    options?: ErrorOptions,
  ) {
    super(`file ${key} is missing from the store`, options);
  }
}

/** The stream carried more bytes than allowed; what had arrived was removed. */
export class FileTooLargeError extends Error {
  override readonly name = 'FileTooLargeError';
  constructor(readonly maxBytes: number) {
    super(`the file is larger than ${maxBytes} bytes`);
  }
}

const fullCodes = new Set(['ENOSPC', 'EDQUOT', 'XMinioStorageFull', 'InsufficientStorage', 'QuotaExceeded']);
const missingCodes = new Set(['ENOENT', 'NoSuchKey', 'NotFound']);

/** Turns an error of the disk or the object store into one of the three above. */
export function explainStoreError(error: unknown, key: string): Error {
  const codes = codesOf(error);
  const said = { cause: error };
  if (codes.some((code) => fullCodes.has(code))) return new StorageFullError('the file store is full', said);
  if (codes.some((code) => missingCodes.has(code))) return new FileMissingError(key, said);
  return new StoreAwayError('the file store does not answer', said);
}

function codesOf(error: unknown): string[] {
  if (!(error instanceof Error)) return [];
  const { code, Code } = error as { code?: unknown; Code?: unknown };
  const own = [code, Code, error.name].filter((one): one is string => typeof one === 'string');
  return [...own, ...codesOf(error.cause)];
}
