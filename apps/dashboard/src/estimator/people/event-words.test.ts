import { peopleEventType } from '@underlath/contract';
import { expect, test } from 'vitest';
import { actorWords, factWords, peopleEventWords } from './event-words.ts';

test('every kind of event has words of its own', () => {
  const words = peopleEventType.options.map((type) => peopleEventWords[type]);
  expect(new Set(words).size).toBe(peopleEventType.options.length);
});

test('facts stand in one line, a list with commas', () => {
  expect(factWords({ data: { changed: ['phone', 'state'], version: 3, was: null } })).toBe(
    'changed phone, state; version 3; was none',
  );
});

test('who was refused is nobody, and a key says that it is one', () => {
  expect(actorWords({ kind: 'nobody', id: '', name: '' })).toBe('Somebody who was not let in');
  expect(actorWords({ kind: 'api-key', id: 'k', name: 'Sync' })).toBe('API key Sync');
});
