/** What a log keeps of an error. */
export type LoggedError = {
  type: string;
  message: string;
  /** Empty for what was thrown and is no error. */
  stack: string;
  code?: string;
  cause?: LoggedError;
  errors?: LoggedError[];
};

const longestMessage = 2_000;
const deepest = 5;

/**
 * An error as the log keeps it. Drivers hang their connection, its socket and its keys on what they throw; only what is
 * named here is kept.
 */
export function toLoggedError(error: unknown, depth = 0): LoggedError {
  if (!(error instanceof Error)) return { type: typeof error, message: shorten(String(error)), stack: '' };
  const { code, cause, errors } = error as { code?: unknown; cause?: unknown; errors?: unknown };
  const isDeep = depth >= deepest;
  return {
    type: error.name,
    message: shorten(error.message),
    stack: shorten(error.stack ?? ''),
    ...((typeof code === 'string' || typeof code === 'number') && { code: String(code) }),
    ...(cause !== undefined && !isDeep && { cause: toLoggedError(cause, depth + 1) }),
    ...(Array.isArray(errors) &&
      !isDeep && { errors: errors.slice(0, deepest).map((one) => toLoggedError(one, depth + 1)) }),
  };
}

const shorten = (text: string): string => (text.length > longestMessage ? `${text.slice(0, longestMessage)}…` : text);
