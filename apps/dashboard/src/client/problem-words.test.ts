import { expect, test } from 'vitest';
import { OfflineError, ProblemAnswer } from '../shared/api/errors.ts';
import { findBlock, problemWords } from './problem-words.ts';

const refused = (type: string, status: number) =>
  new ProblemAnswer({ type, title: 'No', status, detail: 'No.' }, new Headers());

test('a link is told as expired, revoked, or not known, each for itself', () => {
  expect(findBlock(refused('link-expired', 410))).toBe('expired');
  expect(findBlock(refused('link-revoked', 410))).toBe('revoked');
  for (const type of ['link-unknown', 'other-letter', 'not-found', 'invalid-input']) {
    expect(findBlock(refused(type, 410))).toBe('unknown');
  }
});

test('a replaced link sends the reader to the newer message', () => {
  expect(findBlock(refused('link-replaced', 410))).toBe('replaced');
});

test('no cookie and no link asks for the link', () => {
  expect(findBlock(refused('not-signed-in', 401))).toBe('no-link');
});

test('a broken server or connection blocks nothing: trying again may help', () => {
  expect(findBlock(refused('internal-error', 500))).toBeNull();
  expect(findBlock(new OfflineError())).toBeNull();
});

test('a failed send says whether it was sent, saved, or answered before', () => {
  expect(problemWords(new OfflineError()).title).toBe('problemOffline');
  expect(problemWords(refused('database-away', 503)).title).toBe('problemServer');
  expect(problemWords(refused('wrong-state', 409)).title).toBe('problemDecided');
  expect(problemWords(refused('link-replaced', 410)).title).toBe('replacedTitle');
  expect(problemWords(refused('other-letter', 409)).title).toBe('problemOther');
  expect(problemWords(refused('questions-wait', 409)).title).toBe('problemQuestions');
});
