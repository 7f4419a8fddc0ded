import Fastify from 'fastify';
import { expect, test } from 'vitest';
import { serverLogger } from '../server.ts';
import { toLoggedError } from './logged-error.ts';

const withDriver = (message: string, cause?: unknown) =>
  Object.assign(new Error(message, { cause }), {
    code: '57P01',
    client: { secretKey: 'mill-pond', connectionParameters: { password: 'mill-pond' } },
    socket: { remote: 'mill-pond' },
  });

test('an error is logged without the connection that hangs on it, its causes neither', () => {
  const logged = toLoggedError(withDriver('terminating', withDriver('inner')));
  expect(logged).toMatchObject({ type: 'Error', message: 'terminating', code: '57P01', cause: { message: 'inner' } });
  expect(logged.stack).toContain('logged-error.test');
  expect(JSON.stringify(logged)).not.toContain('mill-pond');
});

test('errors that were gathered, and what is no error, are logged as words', () => {
  expect(toLoggedError(new AggregateError([withDriver('one')], 'all')).errors).toMatchObject([{ message: 'one' }]);
  expect(toLoggedError('gone')).toEqual({ type: 'string', message: 'gone', stack: '' });
  expect(toLoggedError(new Error('x'.repeat(5_000))).message).toHaveLength(2_001);
});

test('a chain of causes that ends in itself ends', () => {
  const error = new Error('round');
  error.cause = error;
  expect(JSON.stringify(toLoggedError(error))).toContain('round');
});

test('the server’s own log goes by it, for an error by itself and beside other facts', async () => {
  const lines: string[] = [];
  const stream = { write: (line: string) => void lines.push(line) };
  const app = Fastify({ logger: { ...(serverLogger as object), stream } });
  app.log.error(withDriver('lost'));
  app.log.error({ err: withDriver('beside') }, 'internal-error');
  await app.close();
  expect(lines.filter((line) => /lost|beside/.test(line))).toHaveLength(2);
  expect(lines.join('')).not.toContain('mill-pond');
});
