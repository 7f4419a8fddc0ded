import { Prisma } from '../../generated/prisma/client.ts';

/** The database cannot be reached or does not answer in time. Nothing was kept of what was asked. */
export class DatabaseAwayError extends Error {
  override readonly name = 'DatabaseAwayError';
}

const systemCodes = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'EPIPE',
  'ETIMEDOUT',
  'ENOTFOUND',
  'EAI_AGAIN',
  'EHOSTUNREACH',
]);
/** Prisma: cannot reach, timed out, connection closed, pool timeout, transaction could not start or was closed. */
const prismaCodes = new Set(['P1000', 'P1001', 'P1002', 'P1008', 'P1017', 'P2024', 'P2028']);
/** PostgreSQL: connection exceptions (08), too many connections, statement timeout, shutdown, crash, starting up. */
const sqlStates = /^(08...|53300|57014|57P0[1-4]|55P03|25P03)$/;
const messages =
  /Connection terminated|connection timeout|timeout exceeded when trying to connect|Query read timeout|Client has encountered a connection error|server closed the connection/i;

/** True when an error, or any cause of it, says that the database is away. */
export function isDatabaseAway(error: unknown, depth = 0): boolean {
  if (error instanceof DatabaseAwayError) return true;
  if (typeof error !== 'object' || error === null || depth > 6) return false;
  const { code, originalCode, message, cause, meta, errors } = error as Record<string, unknown>;
  if ([code, originalCode].some(isAwayCode)) return true;
  if (typeof message === 'string' && messages.test(message)) return true;
  const inner = [cause, meta, (meta as { driverAdapterError?: unknown } | undefined)?.driverAdapterError];
  return [...inner, ...(Array.isArray(errors) ? errors : [])].some((one) => isDatabaseAway(one, depth + 1));
}

function isAwayCode(code: unknown): boolean {
  return typeof code === 'string' && (systemCodes.has(code) || prismaCodes.has(code) || sqlStates.test(code));
}

/** Runs database work and turns "away" in any of its shapes into one error. */
export async function orAway<Result>(work: () => Promise<Result>): Promise<Result> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof DatabaseAwayError || !isDatabaseAway(error)) throw error;
    throw new DatabaseAwayError('the database does not answer', { cause: error });
  }
}

/** True when a row was refused because another has its unique key. */
export const isUniqueViolation = (error: unknown): boolean =>
  error instanceof Prisma.PrismaClientKnownRequestError && error.code === 'P2002';
