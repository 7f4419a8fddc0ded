import { type Route, routes } from '@underlath/contract';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { addressOf, call } from './call.ts';
import { isProblem, OfflineError, ProblemAnswer, problemOf, toProblemAnswer } from './errors.ts';
import { keyOf, readerOf, worthTrying } from './hooks.ts';
import { onSessionEnded } from './session.ts';

const noHeaders = { get: () => null };
const problem = (type: string, status: number) => ({ type, title: 'No', status, detail: 'Because.' });

beforeEach(() => vi.stubGlobal('document', { documentElement: { lang: 'es' } }));
afterEach(() => vi.unstubAllGlobals());

function answer(status: number, body: unknown, headers: Record<string, string> = {}) {
  const spy = vi.fn(async () => new Response(body === null ? null : JSON.stringify(body), { status, headers }));
  vi.stubGlobal('fetch', spy);
  return spy;
}

test('an address has its places filled and only what was asked in its query', () => {
  const params = { projectId: 'a/b' };
  expect(addressOf(routes.listFindings, { params, query: { severity: 'repair', q: '' } })).toBe(
    '/api/v1/projects/a%2Fb/findings?severity=repair',
  );
});

test('a change carries the version it saw, its repeat key and the language of the page', async () => {
  const spy = answer(200, { id: 'x' });
  const projectId = '018f0000-0000-7000-8000-000000000000';
  await call(routes.changeProject, { params: { projectId }, body: { name: 'n' }, ifMatch: 7, idempotencyKey: 'k' });
  const [, init] = spy.mock.calls[0] as unknown as [string, RequestInit];
  expect(init.headers).toMatchObject({ 'if-match': '"7"', 'idempotency-key': 'k', 'accept-language': 'es' });
  expect(init.body).toBe('{"name":"n"}');
});

test('an empty answer is undefined', async () => {
  answer(204, null);
  expect(await call(routes.signOut, {})).toBeUndefined();
});

test('a problem document is thrown with its type, whether bare or at the end of an address', async () => {
  answer(412, problem('https://underlath.example/problems/stale-version', 412), { 'retry-after': '3' });
  const error = await call(routes.whoAmI, {}).catch((thrown: unknown) => thrown);
  expect(isProblem(error, 'stale-version')).toBe(true);
  expect((error as ProblemAnswer).retryAfterSeconds).toBe(3);
});

test('a failed answer that is no problem document says that it could not be read', () => {
  const error = toProblemAnswer(502, '<html>Bad gateway</html>', noHeaders);
  expect(error.type).toBe('unknown');
  expect(error.problem.detail).toContain('502');
});

test('no answer at all is offline, not a problem', async () => {
  vi.stubGlobal('fetch', async () => {
    throw new TypeError('failed to fetch');
  });
  const error = await call(routes.whoAmI, {}).catch((thrown: unknown) => thrown);
  expect(error).toBeInstanceOf(OfflineError);
  expect(problemOf(error).offline).toBe(true);
});

test('a session the server no longer knows is told to the app', async () => {
  const heard = vi.fn();
  const stop = onSessionEnded(heard);
  answer(401, problem('not-signed-in', 401));
  await call(routes.whoAmI, {}).catch(() => {});
  answer(401, problem('wrong-credentials', 401));
  await call(routes.signIn, { body: { email: 'a@b.example', password: 'p' } }).catch(() => {});
  stop();
  expect(heard).toHaveBeenCalledTimes(1);
});

test('what a change answers with is what its own path reads', () => {
  const changes: Route[] = Object.values(routes).filter(({ method }) => method === 'PUT' || method === 'PATCH');
  const read = changes.flatMap((change) => {
    const reader = readerOf(change);
    return reader ? [{ change, reader }] : [];
  });
  expect(read.length).toBeGreaterThan(5);
  for (const { change, reader } of read) expect(reader.answers[200], change.name).toBe(change.answers[200]);
  expect(readerOf(routes.changeChangeOrder)).toBe(routes.getChangeOrder);
  expect(readerOf(routes.saveEstimate)).toBe(routes.getEstimate);
  expect(readerOf(routes.saveCostBook)).toBe(routes.getCostBook);
  expect(readerOf(routes.moveFinding)).toBeUndefined();
  expect(readerOf(routes.getChangeOrder)).toBeUndefined();
});

test('only what may pass by itself is tried again, twice', () => {
  expect(worthTrying(0, new OfflineError())).toBe(true);
  expect(worthTrying(2, new OfflineError())).toBe(false);
  expect(worthTrying(0, new ProblemAnswer(problem('busy', 503), noHeaders))).toBe(true);
  expect(worthTrying(0, new ProblemAnswer(problem('not-found', 404), noHeaders))).toBe(false);
});

test('a key begins with the route name, so that all calls of a route can be read again', () => {
  expect(keyOf(routes.getFinding, { params: { findingId: 'f' } })).toEqual(['getFinding', { findingId: 'f' }, {}]);
});
