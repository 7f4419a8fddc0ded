import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { FindingDraft, KeptPhoto } from './draft.ts';

interface OutboxSchema extends DBSchema {
  drafts: { key: string; value: FindingDraft };
  photos: { key: string; value: KeptPhoto };
}

/** Where drafts and photos survive a reload. */
export type OutboxStore = {
  read(): Promise<{ drafts: FindingDraft[]; photos: KeptPhoto[] }>;
  putDraft(draft: FindingDraft): Promise<void>;
  putPhoto(photo: KeptPhoto): Promise<void>;
  /** The draft and every photo of it, in one transaction. */
  removeDraft(draftId: string): Promise<void>;
  removePhoto(photoId: string): Promise<void>;
};

/** IndexedDB, one database for each signed-in person, so that one phone shared by two never mixes their drafts. */
export function openStore(memberId: string): OutboxStore {
  let opened: Promise<IDBPDatabase<OutboxSchema>> | null = null;
  const db = () => {
    opened ??= openDB<OutboxSchema>(`underlath-crew-${memberId}`, 1, {
      upgrade(database) {
        database.createObjectStore('drafts', { keyPath: 'id' });
        database.createObjectStore('photos', { keyPath: 'id' });
      },
    });
    return opened;
  };
  return {
    async read() {
      const database = await db();
      const [drafts, photos] = await Promise.all([database.getAll('drafts'), database.getAll('photos')]);
      return { drafts, photos };
    },
    async putDraft(draft) {
      await (await db()).put('drafts', draft);
    },
    async putPhoto(photo) {
      await (await db()).put('photos', photo);
    },
    async removeDraft(draftId) {
      const change = (await db()).transaction(['drafts', 'photos'], 'readwrite');
      await change.objectStore('drafts').delete(draftId);
      for (const photo of await change.objectStore('photos').getAll()) {
        if (photo.draftId === draftId) await change.objectStore('photos').delete(photo.id);
      }
      await change.done;
    },
    async removePhoto(photoId) {
      await (await db()).delete('photos', photoId);
    },
  };
}
