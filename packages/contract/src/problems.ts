import * as z from 'zod';

/** The catalogue of problems (RFC 9457). The screen switches on `type`; status and title are fixed, `detail` says what, to what, and what to do. */
export const problems = {
  'invalid-input': { status: 422, title: 'Something sent does not fit' },
  'malformed-request': { status: 400, title: 'The request could not be read' },
  'not-signed-in': { status: 401, title: 'Sign in first' },
  'wrong-credentials': { status: 401, title: 'E-mail or password is not right' },
  'wrong-code': { status: 401, title: 'The code is not right' },
  'sign-in-again': { status: 401, title: 'Begin signing in again' },
  'confirm-email-first': { status: 403, title: 'Confirm your e-mail address first' },
  'not-allowed': { status: 403, title: 'Your role may not do this' },
  'cross-site': { status: 403, title: 'The request came from another site' },
  'not-found': { status: 404, title: 'There is no such thing here' },
  'method-not-allowed': { status: 405, title: 'This address does not do that' },
  'not-acceptable': { status: 406, title: 'That form of answer is not offered' },
  'already-exists': { status: 409, title: 'It exists already' },
  'wrong-state': { status: 409, title: 'It cannot be done in this state' },
  'contract-moved': { status: 409, title: 'The contract changed since you read this' },
  'still-running': { status: 409, title: 'The first request is still running' },
  'other-letter': { status: 409, title: 'That belongs to another letter' },
  'questions-wait': { status: 409, title: 'Your questions wait for an answer' },
  'link-gone': { status: 410, title: 'This link no longer works' },
  'link-unknown': { status: 410, title: 'This link is not known here' },
  'link-expired': { status: 410, title: 'This link has expired' },
  'link-revoked': { status: 410, title: 'This link was revoked' },
  'link-replaced': { status: 410, title: 'A newer version was sent' },
  'stale-version': { status: 412, title: 'It was changed by someone else' },
  'too-large': { status: 413, title: 'Too large' },
  'unsupported-media': { status: 415, title: 'This kind of file is not taken' },
  'version-required': { status: 428, title: 'Say which version you saw' },
  'too-many-requests': { status: 429, title: 'Too many requests' },
  'key-reused': { status: 422, title: 'The repeat key was used for something else' },
  'internal-error': { status: 500, title: 'Something broke on our side' },
  'database-away': { status: 503, title: 'The database does not answer' },
  'store-away': { status: 503, title: 'The file store does not answer' },
  busy: { status: 503, title: 'Too busy just now' },
  'storage-full': { status: 507, title: 'The disk is full' },
} as const;

export type ProblemType = keyof typeof problems;

export const fieldProblem = z.object({
  /** JSON Pointer into the body, or `query/name`, `params/name`, `header/name`. */
  pointer: z.string(),
  /** For who calls the API: what came, and what is allowed. */
  detail: z.string(),
  /** The same for who measures, in the language asked for and without the name of a field; show it in place of `detail`. */
  words: z.string().optional(),
});

export const problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string(),
  instance: z.string().optional(),
  errors: z.array(fieldProblem).optional(),
  /** Whom to ask, where a letter that would say so is not shown. */
  contact: z.object({ name: z.string(), phone: z.string().nullable(), email: z.string().nullable() }).optional(),
});
export type Problem = z.infer<typeof problem>;
export type FieldProblem = z.infer<typeof fieldProblem>;
