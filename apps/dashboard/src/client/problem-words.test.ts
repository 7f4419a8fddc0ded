import { expect, test } from 'vitest';
import { OfflineError, ProblemError } from '../shared/api/errors.ts';
import { blockOf, problemWords } from './problem-words.ts';

const refused = (type: string, status: number) =>
  new ProblemError({ type, title: 'No', status, detail: 'No.' }, new Headers());

test('a link that ended, is unknown or can not be read needs a new link', () => {
  for (const error of [refused('link-gone', 410), refused('not-found', 404), refused('invalid-input', 422)]) {
    expect(blockOf(error)).toBe('gone');
  }
});

test('a replaced link sends the reader to the newer message', () => {
  expect(blockOf(refused('link-replaced', 410))).toBe('replaced');
});

test('no cookie and no link asks for the link', () => {
  expect(blockOf(refused('not-signed-in', 401))).toBe('no-link');
});

test('a broken server or connection blocks nothing: trying again may help', () => {
  expect(blockOf(refused('internal-error', 500))).toBeNull();
  expect(blockOf(new OfflineError())).toBeNull();
});

test('a failed send says whether it was sent, saved, or answered before', () => {
  expect(problemWords(new OfflineError()).title).toBe('problemOffline');
  expect(problemWords(refused('database-away', 503)).title).toBe('problemServer');
  expect(problemWords(refused('wrong-state', 409)).title).toBe('problemDecided');
  expect(problemWords(refused('link-replaced', 410)).title).toBe('replacedTitle');
});
