import { expect, test } from 'vitest';
import { OfflineError, ProblemError } from '../shared/api/errors.ts';
import { blockOf, problemWords } from './problem-words.ts';

const refused = (type: string, status: number) =>
  new ProblemError({ type, title: 'No', status, detail: 'No.' }, new Headers());

test('a link is told as run out, switched off, or not known, each for itself', () => {
  expect(blockOf(refused('link-expired', 410))).toBe('expired');
  expect(blockOf(refused('link-revoked', 410))).toBe('revoked');
  for (const type of ['link-unknown', 'other-letter', 'not-found', 'invalid-input']) {
    expect(blockOf(refused(type, 410))).toBe('unknown');
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
  expect(problemWords(refused('other-letter', 409)).title).toBe('problemOther');
  expect(problemWords(refused('questions-wait', 409)).title).toBe('problemQuestions');
});
