import { expect, test } from 'vitest';
import { type FindingDraft, type KeptPhoto, newFindingDraft } from './draft.ts';
import { Outbox, type OutboxServer } from './outbox.ts';
import type { OutboxStore } from './store.ts';

function memoryStore(): OutboxStore & { drafts: Map<string, FindingDraft>; photos: Map<string, KeptPhoto> } {
  const drafts = new Map<string, FindingDraft>();
  const photos = new Map<string, KeptPhoto>();
  return {
    drafts,
    photos,
    read: async () => ({ drafts: [...drafts.values()], photos: [...photos.values()] }),
    putDraft: async (draft) => void drafts.set(draft.id, draft),
    putPhoto: async (photo) => void photos.set(photo.id, photo),
    removeDraft: async (id) => {
      drafts.delete(id);
      for (const photo of photos.values()) if (photo.draftId === id) photos.delete(photo.id);
    },
    removePhoto: async (id) => void photos.delete(id),
  };
}

class Offline extends Error {}

function server(over: Partial<OutboxServer> = {}): OutboxServer & { findings: { id: string; photoIds: string[] }[] } {
  const findings: { id: string; photoIds: string[] }[] = [];
  return {
    findings,
    sendPhoto: async (photo) => photo.id,
    sendFinding: async (draft, photoIds) => void findings.push({ id: draft.id, photoIds }),
    read: (error) =>
      error instanceof Offline
        ? { kind: 'offline' }
        : { kind: 'refused', problem: { title: error instanceof Error ? error.message : 'refused' } },
    ...over,
  };
}

const draft = newFindingDraft({ id: 'd1', sendKey: 'k', projectId: 'a', locationId: 'l', now: '2026-03-03T14:05:00Z' });
const photo: KeptPhoto = {
  id: 'p1',
  projectId: 'a',
  draftId: 'd1',
  findingId: null,
  locationId: 'l',
  stage: 'found',
  fileName: 'a.jpg',
  mediaType: 'image/jpeg',
  bytes: new ArrayBuffer(5),
  sha256: null,
  sentAs: null,
  problem: null,
};

test('a finding is sent after its photos and with their ids, then the phone lets go of it', async () => {
  const [store, remote] = [memoryStore(), server()];
  const outbox = new Outbox(store, remote);
  await outbox.load();
  await outbox.putDraft({ ...draft, ready: true });
  await outbox.addPhoto(photo);
  await outbox.send();
  expect(remote.findings).toEqual([{ id: 'd1', photoIds: ['p1'] }]);
  expect([store.drafts.size, store.photos.size]).toEqual([0, 0]);
});

test('a draft that is not finished is never sent, but its photo goes ahead', async () => {
  const [store, remote] = [memoryStore(), server()];
  const outbox = new Outbox(store, remote);
  await outbox.load();
  await outbox.putDraft(draft);
  await outbox.addPhoto(photo);
  await outbox.send();
  expect(remote.findings).toEqual([]);
  expect(store.photos.get('p1')?.sentAs).toBe('p1');
});

test('with no connection nothing is lost, and a reload later sends it all', async () => {
  const store = memoryStore();
  const gone = () => Promise.reject(new Offline());
  const outbox = new Outbox(store, server({ sendPhoto: gone, sendFinding: gone }));
  await outbox.load();
  await outbox.putDraft({ ...draft, ready: true });
  await outbox.addPhoto(photo);
  await outbox.send();
  expect(outbox.state().offline).toBe(true);
  expect(outbox.state().drafts[0]?.problem).toBeNull();
  const remote = server();
  await new Outbox(store, remote).load();
  expect(remote.findings).toEqual([{ id: 'd1', photoIds: ['p1'] }]);
  expect(store.drafts.size).toBe(0);
});

test('a refused photo holds its finding back, and only its own, until a person looks', async () => {
  const store = memoryStore();
  const remote = server({
    sendPhoto: async (sent) => {
      if (sent.id === 'p1') throw new Error('too large');
      return sent.id;
    },
  });
  const outbox = new Outbox(store, remote);
  await outbox.load();
  await outbox.putDraft({ ...draft, ready: true });
  await outbox.putDraft({ ...draft, id: 'd2', ready: true });
  await outbox.addPhoto(photo);
  await outbox.send();
  expect(remote.findings.map((finding) => finding.id)).toEqual(['d2']);
  expect(outbox.state().photos[0]?.problem?.title).toBe('too large');
  await outbox.removePhoto('p1');
  await outbox.send();
  expect(remote.findings.map((finding) => finding.id)).toEqual(['d2', 'd1']);
});

test('a refused finding stays on the phone with its reason and is sent on retry', async () => {
  const store = memoryStore();
  let refuse = true;
  const remote = server();
  const picky = server({
    sendFinding: async (sent, ids) => {
      if (refuse) throw new Error('no such place');
      await remote.sendFinding(sent, ids);
    },
  });
  const outbox = new Outbox(store, picky);
  await outbox.load();
  await outbox.putDraft({ ...draft, ready: true });
  await outbox.send();
  expect(store.drafts.get('d1')?.problem?.title).toBe('no such place');
  refuse = false;
  await outbox.retry('d1');
  expect(remote.findings.map((finding) => finding.id)).toEqual(['d1']);
});

test('two sends at once make one finding', async () => {
  const remote = server();
  const outbox = new Outbox(memoryStore(), remote);
  await outbox.load();
  await outbox.putDraft({ ...draft, ready: true });
  await Promise.all([outbox.send(), outbox.send(), outbox.send()]);
  expect(remote.findings).toHaveLength(1);
});

test('a phone that cannot store still sends, and says that it cannot store', async () => {
  const broken = { ...memoryStore(), putDraft: () => Promise.reject(new Error('quota')) };
  const remote = server();
  const outbox = new Outbox(broken, remote);
  await outbox.load();
  await outbox.putDraft({ ...draft, ready: true });
  expect(outbox.state().storageError).toBe('quota');
  await outbox.send();
  expect(remote.findings).toHaveLength(1);
});
