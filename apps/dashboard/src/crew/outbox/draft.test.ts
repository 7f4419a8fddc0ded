import { expect, test } from 'vitest';
import { countUnsent, isKeptByServer, type KeptPhoto, newFindingDraft } from './draft.ts';

const photo: KeptPhoto = {
  id: 'p1',
  projectId: 'a',
  draftId: 'd1',
  findingId: null,
  locationId: null,
  stage: 'found',
  fileName: 'a.jpg',
  mediaType: 'image/jpeg',
  bytes: new ArrayBuffer(5),
  sha256: 'aa',
  sentAs: null,
  problem: null,
};
const answer = { id: 'p1', sha256: 'aa', byteCount: 5, duplicate: false };

test('the phone lets go of a photo only on an answer with its id and its hash', () => {
  expect(isKeptByServer(photo, answer)).toBe(true);
  expect(isKeptByServer(photo, { ...answer, sha256: 'bb' })).toBe(false);
  expect(isKeptByServer(photo, { ...answer, id: 'p2' })).toBe(false);
});

test('bytes that the server had before count as kept under their other id', () => {
  expect(isKeptByServer(photo, { ...answer, id: 'p0', duplicate: true })).toBe(true);
  expect(isKeptByServer(photo, { ...answer, id: 'p0', duplicate: true, sha256: 'bb' })).toBe(false);
});

test('without a hash of its own the phone holds the byte count against the answer', () => {
  expect(isKeptByServer({ ...photo, sha256: null }, answer)).toBe(true);
  expect(isKeptByServer({ ...photo, sha256: null }, { ...answer, byteCount: 4 })).toBe(false);
});

test('a draft with three photos is one thing on this phone; a later photo of a sent finding is one more', () => {
  const draft = newFindingDraft({
    id: 'd1',
    sendKey: 'k',
    projectId: 'a',
    locationId: null,
    now: '2026-03-03T14:05:00Z',
  });
  const photos = [
    photo,
    { ...photo, id: 'p2' },
    { ...photo, id: 'p3' },
    { ...photo, id: 'p4', draftId: null, findingId: 'f' },
  ];
  expect(countUnsent([draft], photos)).toBe(2);
});
