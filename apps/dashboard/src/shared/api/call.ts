import type { AnswerOf, BodyIn, ParamsIn, QueryIn, Route } from '@underlath/contract';
import { OfflineError, toProblemAnswer } from './errors.ts';
import { sessionEnded, shownMemberHeader } from './session.ts';

type Part<Name extends string, Value> = [Value] extends [undefined]
  ? { [K in Name]?: undefined }
  : Record<never, never> extends Value
    ? { [K in Name]?: Value }
    : { [K in Name]: Value };

/** What a route is called with: exactly the parts its contract names. */
export type Given<R extends Route> = Part<'params', ParamsIn<R>> & Part<'query', QueryIn<R>> & Part<'body', BodyIn<R>>;

export interface Manners {
  /** The version last seen; sent as `If-Match`. Needed by routes that are `versioned`. */
  readonly ifMatch?: number;
  /** The same key with the same body is answered the same again. */
  readonly idempotencyKey?: string;
  readonly signal?: AbortSignal;
}

/** The JSON answer, or undefined where the contract answers with nothing. */
export type Result<R extends Route> = [AnswerOf<R>] extends [never] ? undefined : AnswerOf<R>;

type Loose = { params?: Record<string, unknown>; query?: Record<string, unknown>; body?: unknown };

/** The address of a route with its places filled and its query written out. */
export function addressOf<R extends Route>(route: R, given: Omit<Given<R>, 'body'>): string {
  const { params = {}, query = {} } = given as Loose;
  const path = route.path.replace(/:(\w+)/g, (_place, name: string) => encodeURIComponent(String(params[name])));
  const search = new URLSearchParams();
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined && value !== null && value !== '') search.set(name, String(value));
  }
  return `/api/v1${path}${search.size > 0 ? `?${search}` : ''}`;
}

/**
 * Calls one route of the contract. Throws ProblemAnswer when the server says no, OfflineError when no answer came;
 * an abort through `signal` throws what the browser throws (AbortError).
 */
export async function call<R extends Route>(route: R, input: Given<R> & Manners): Promise<Result<R>> {
  const { body } = input as Loose;
  const response = await send(addressOf(route, input), {
    method: route.method,
    headers: headersFor(input, body !== undefined),
    credentials: 'same-origin',
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...(input.signal ? { signal: input.signal } : {}),
  });
  const text = await readText(response);
  if (!response.ok) {
    const error = toProblemAnswer(response.status, text, response.headers);
    if (error.type === 'not-signed-in' && route.permission !== 'client-link') sessionEnded();
    throw error;
  }
  return (text === '' ? undefined : JSON.parse(text)) as Result<R>;
}

function headersFor(manners: Manners, hasBody: boolean): Record<string, string> {
  return {
    accept: 'application/json, application/problem+json',
    // The judgments' reasons come back in the language of the page.
    'accept-language': document.documentElement.lang || 'en',
    ...shownMemberHeader(),
    ...(hasBody ? { 'content-type': 'application/json' } : {}),
    ...(manners.ifMatch === undefined ? {} : { 'if-match': `"${manners.ifMatch}"` }),
    ...(manners.idempotencyKey === undefined ? {} : { 'idempotency-key': manners.idempotencyKey }),
  };
}

async function send(address: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(address, init);
  } catch (error) {
    throw asOffline(error);
  }
}

/** The connection can also break in the middle of the answer. */
async function readText(response: Response): Promise<string> {
  try {
    return await response.text();
  } catch (error) {
    throw asOffline(error);
  }
}

const asOffline = (error: unknown): unknown =>
  error instanceof DOMException && error.name === 'AbortError' ? error : new OfflineError(error);
