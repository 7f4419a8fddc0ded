import type { Problem, ProblemType } from '@underlath/contract';
import { problem as problemSchema, problems } from '@underlath/contract';
import { fieldWords } from './problem-words.ts';

/** The server answered with a problem document (RFC 9457). Screens switch on `type`. */
export class ProblemAnswer extends Error {
  override readonly name = 'ProblemAnswer';
  readonly problem: Problem;
  readonly type: ProblemType | 'unknown';
  readonly status: number;
  /** Seconds the server asked to wait, from `Retry-After`; null when it did not say. */
  readonly retryAfterSeconds: number | null;
  readonly requestId: string | undefined;

  constructor(problem: Problem, headers: { get(name: string): string | null }) {
    super(problem.detail || problem.title);
    this.problem = problem;
    this.type = typeName(problem.type);
    this.status = problem.status;
    const wait = Number(headers.get('retry-after') ?? Number.NaN);
    this.retryAfterSeconds = Number.isFinite(wait) ? wait : null;
    this.requestId = headers.get('x-request-id') ?? undefined;
  }

  /** What the server said about one field, by its JSON Pointer (`/siteAddress`). */
  at(pointer: string): string | undefined {
    const error = this.problem.errors?.find((one) => one.pointer.replace(/^#/, '') === pointer);
    return error && fieldWords(error);
  }
}

/** No answer came: no network, server away, or the connection broke. Nothing is known about whether it arrived. */
export class OfflineError extends Error {
  override readonly name = 'OfflineError';
  constructor(cause?: unknown) {
    super('There is no connection to the server right now.', { cause });
  }
}

/** The caller took it back. */
export class CancelledError extends Error {
  override readonly name = 'CancelledError';
  constructor() {
    super('Cancelled.');
  }
}

/** The type may stand alone or at the end of a URI. */
function typeName(type: string): ProblemType | 'unknown' {
  const name = type.split(/[/:#]/).at(-1) ?? '';
  return name in problems ? (name as ProblemType) : 'unknown';
}

/** Reads a failed answer; one that is no problem document (a proxy's page, say) becomes one that says so. */
export function toProblemAnswer(
  status: number,
  body: string,
  headers: { get(name: string): string | null },
): ProblemAnswer {
  const read = problemSchema.safeParse(parseJson(body));
  if (read.success) return new ProblemAnswer(read.data, headers);
  const detail = `The server answered with status ${status} and no explanation. Try again; if it stays, tell whoever runs the server.`;
  return new ProblemAnswer({ type: 'unknown', title: 'The answer could not be read', status, detail }, headers);
}

function parseJson(body: string): unknown {
  try {
    return JSON.parse(body);
  } catch {
    return null; // Not JSON: the caller then says that the answer could not be read.
  }
}

/** Any error in the form the failing state of the screen takes. */
export function problemOf(error: unknown): Problem & { offline?: boolean; requestId?: string } {
  if (error instanceof ProblemAnswer) {
    return { ...error.problem, ...(error.requestId ? { requestId: error.requestId } : {}) };
  }
  if (error instanceof OfflineError) {
    return { type: 'offline', title: 'No connection', status: 0, detail: error.message, offline: true };
  }
  const detail = error instanceof Error ? error.message : String(error);
  return { type: 'unknown', title: 'Something went wrong on this screen', status: 0, detail };
}

export const isProblem = (error: unknown, type: ProblemType): error is ProblemAnswer =>
  error instanceof ProblemAnswer && error.type === type;
