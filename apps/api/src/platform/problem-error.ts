import { type FieldProblem, type Problem, type ProblemType, problems } from '@underlath/contract';

/** Whom to ask, for problems that stand in the place of a letter. */
export type Contact = NonNullable<Problem['contact']>;

interface More {
  errors?: FieldProblem[];
  contact?: Contact;
  headers?: Record<string, string>;
  cause?: unknown;
}

/** A refusal that the caller is told about, as one of the catalogue's problems (RFC 9457). */
export class ProblemError extends Error {
  override readonly name = 'ProblemError';
  readonly status: number;
  readonly title: string;
  readonly errors: FieldProblem[] | undefined;
  readonly contact: Contact | undefined;
  readonly headers: Record<string, string>;

  /** @param detail what happened, to what, and what to do: one or two sentences for a person */
  constructor(
    readonly type: ProblemType,
    detail: string,
    { errors, contact, headers = {}, cause }: More = {},
  ) {
    super(detail, { cause });
    this.status = problems[type].status;
    this.title = problems[type].title;
    this.errors = errors;
    this.contact = contact;
    this.headers = headers;
  }
}

/** Absent and someone else's are told alike. */
export const notFound = (what: string): ProblemError =>
  new ProblemError('not-found', `There is no such ${what} here, or it belongs to someone else.`);

/** One field that does not fit. `pointer` as in the contract: `/lengthIn`, `query/limit`, `params/photoId`. */
export const invalidInput = (pointer: string, detail: string, words?: string): ProblemError =>
  new ProblemError('invalid-input', detail, { errors: [{ pointer, detail, ...(words && { words }) }] });
