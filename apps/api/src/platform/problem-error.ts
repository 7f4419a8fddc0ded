import { type FieldProblem, type Problem, type ProblemType, problems } from '@underlath/contract';
import { type Locale, say, type Text } from '@underlath/rules';

/** Whom to ask, for problems that stand in the place of a letter. */
export type Contact = NonNullable<Problem['contact']>;

/** Words that are in one language, or in both where the crew and clients meet them. */
export type MaybeTranslated = string | Text;

export const readWords = (told: MaybeTranslated, locale: Locale): string =>
  typeof told === 'string' ? told : say(told, locale);

type FieldFault = Omit<FieldProblem, 'words'> & { words?: MaybeTranslated | undefined };

interface More {
  errors?: FieldFault[];
  contact?: Contact;
  headers?: Record<string, string>;
  cause?: unknown;
}

/** A refusal that the caller is told about, as one of the catalogue's problems (RFC 9457). */
export class ProblemError extends Error {
  override readonly name = 'ProblemError';
  readonly status: number;
  readonly title: string;
  readonly errors: FieldFault[] | undefined;
  readonly contact: Contact | undefined;
  readonly headers: Record<string, string>;

  /** @param detail what happened, to what, and what to do: one or two sentences for a person */
  constructor(
    readonly type: ProblemType,
    readonly detail: MaybeTranslated,
    { errors, contact, headers = {}, cause }: More = {},
  ) {
    super(readWords(detail, 'en'), { cause });
    this.status = problems[type].status;
    this.title = problems[type].title;
    this.errors = errors;
    this.contact = contact;
    this.headers = headers;
  }
}

/** Absent and someone else's are told alike. */
export const notFound = (what: string): ProblemError =>
  new ProblemError('not-found', {
    en: `There is no such ${what} here, or it belongs to someone else.`,
    es: 'Eso no está aquí, o es de otra persona.',
  });

/** One field that does not fit. `pointer` as in the contract: `/lengthIn`, `query/limit`, `params/photoId`. */
export const invalidInput = (pointer: string, detail: string, words?: MaybeTranslated): ProblemError =>
  new ProblemError('invalid-input', detail, { errors: [{ pointer, detail, ...(words && { words }) }] });
