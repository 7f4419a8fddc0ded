import type { FindingDraft, KeptPhoto } from './draft.ts';
import type { OutboxStore } from './store.ts';

/** What the server does for the outbox; the real one is in server.ts, tests bring their own. */
export type OutboxServer = {
  /** Resolves with the id the server keeps the photo under; rejects with what went wrong. */
  sendPhoto(photo: KeptPhoto, onProgress: (share: number) => void, signal: AbortSignal): Promise<string>;
  sendFinding(draft: FindingDraft, photoIds: string[]): Promise<void>;
  /** Sorts an error: no connection (try again later by itself), cancelled, or refused (a person has to look). */
  read(
    error: unknown,
  ): { kind: 'offline' | 'cancelled' } | { kind: 'refused'; problem: NonNullable<FindingDraft['problem']> };
};

export type OutboxState = {
  /** False until what a reload left behind is read. */
  loaded: boolean;
  drafts: readonly FindingDraft[];
  photos: readonly KeptPhoto[];
  /** Share sent of the photos that are on their way, by photo id. */
  progress: Readonly<Record<string, number>>;
  /** Drafts whose finding is being posted. */
  posting: readonly string[];
  offline: boolean;
  /** Why nothing can be kept on this phone, in the browser's words; null while it can. */
  storageError: string | null;
};

const empty: OutboxState = {
  loaded: false,
  drafts: [],
  photos: [],
  progress: {},
  posting: [],
  offline: false,
  storageError: null,
};

/**
 * Holds what the phone has and the server has not. Photos go as soon as they are taken, findings when the person is
 * done; each is let go of only when the server has said that it keeps it. Everything is written to the store first.
 */
export class Outbox {
  #state = empty;
  #listeners = new Set<() => void>();
  #aborts = new Map<string, AbortController>();
  #running: Promise<void> | null = null;
  #again = false;
  readonly #store: OutboxStore;
  readonly #server: OutboxServer;
  readonly #onSent: (draft: FindingDraft | null) => void;

  constructor(store: OutboxStore, server: OutboxServer, onSent: (draft: FindingDraft | null) => void = () => {}) {
    this.#store = store;
    this.#server = server;
    this.#onSent = onSent;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };
  readonly state = (): OutboxState => this.#state;

  async load(): Promise<void> {
    try {
      const kept = await this.#store.read();
      this.#set({ ...kept, loaded: true });
    } catch (error) {
      this.#set({ loaded: true, storageError: reasonOf(error) });
    }
    await this.send();
  }

  async putDraft(draft: FindingDraft): Promise<void> {
    this.#set({ drafts: replace(this.#state.drafts, draft) });
    await this.#keep(() => this.#store.putDraft(draft));
  }

  async addPhoto(photo: KeptPhoto): Promise<void> {
    await this.#putPhoto(photo);
    void this.send();
  }

  async removePhoto(photoId: string): Promise<void> {
    this.#aborts.get(photoId)?.abort();
    this.#set({ photos: this.#state.photos.filter((photo) => photo.id !== photoId) });
    await this.#keep(() => this.#store.removePhoto(photoId));
  }

  async removeDraft(draftId: string): Promise<void> {
    for (const photo of this.#state.photos) if (photo.draftId === draftId) this.#aborts.get(photo.id)?.abort();
    this.#set({
      drafts: this.#state.drafts.filter((draft) => draft.id !== draftId),
      photos: this.#state.photos.filter((photo) => photo.draftId !== draftId),
    });
    await this.#keep(() => this.#store.removeDraft(draftId));
  }

  /** Tries a refused photo or draft once more. */
  async retry(id: string): Promise<void> {
    const photo = this.#state.photos.find((candidate) => candidate.id === id);
    const draft = this.#state.drafts.find((candidate) => candidate.id === id);
    if (photo) await this.#putPhoto({ ...photo, problem: null });
    if (draft) await this.putDraft({ ...draft, problem: null });
    await this.send();
  }

  /** Sends what can be sent. One run at a time; a call during a run makes one more after it. */
  async send(): Promise<void> {
    if (this.#running) {
      this.#again = true;
      return this.#running;
    }
    this.#running = this.#run();
    try {
      await this.#running;
    } finally {
      this.#running = null;
    }
    if (this.#again) {
      this.#again = false;
      await this.send();
    }
  }

  async #run(): Promise<void> {
    const toSend = this.#state.photos.filter((photo) => photo.sentAs === null && photo.problem === null);
    for (const photo of toSend) if (!(await this.#sendPhoto(photo.id))) return;
    for (const draft of this.#state.drafts)
      if (isComplete(draft, this.#state.photos) && !(await this.#sendDraft(draft))) return;
    this.#set({ offline: false });
  }

  /** False: no connection, stop the run. */
  async #sendPhoto(photoId: string): Promise<boolean> {
    const photo = this.#state.photos.find((candidate) => candidate.id === photoId);
    if (!photo) return true;
    const abort = new AbortController();
    this.#aborts.set(photo.id, abort);
    try {
      const sentAs = await this.#server.sendPhoto(photo, (share) => this.#setProgress(photo.id, share), abort.signal);
      await this.#photoIsThere(photo.id, sentAs);
      return true;
    } catch (error) {
      return this.#failed(error, (problem) => this.#putPhotoIfHere(photo.id, { problem }));
    } finally {
      this.#aborts.delete(photo.id);
      this.#setProgress(photo.id, null);
    }
  }

  /** A photo of a draft stays as a line without bytes until its finding is sent; one more of a finding is done. */
  async #photoIsThere(photoId: string, sentAs: string): Promise<void> {
    const photo = this.#state.photos.find((candidate) => candidate.id === photoId);
    if (photo?.findingId) {
      await this.removePhoto(photoId);
      this.#onSent(null);
    } else await this.#putPhotoIfHere(photoId, { sentAs });
  }

  async #sendDraft(draft: FindingDraft): Promise<boolean> {
    this.#set({ posting: [...this.#state.posting, draft.id] });
    try {
      const photoIds = this.#state.photos.flatMap((photo) =>
        photo.draftId === draft.id && photo.sentAs ? [photo.sentAs] : [],
      );
      await this.#server.sendFinding(draft, [...new Set(photoIds)]);
      await this.removeDraft(draft.id);
      this.#onSent(draft);
      return true;
    } catch (error) {
      return this.#failed(error, (problem) => this.putDraft({ ...draft, problem }));
    } finally {
      this.#set({ posting: this.#state.posting.filter((id) => id !== draft.id) });
    }
  }

  async #failed(
    error: unknown,
    refuse: (problem: NonNullable<FindingDraft['problem']>) => Promise<void>,
  ): Promise<boolean> {
    const read = this.#server.read(error);
    if (read.kind === 'refused') await refuse(read.problem);
    if (read.kind === 'offline') this.#set({ offline: true });
    return read.kind !== 'offline';
  }

  async #putPhotoIfHere(photoId: string, change: Partial<KeptPhoto>): Promise<void> {
    const photo = this.#state.photos.find((candidate) => candidate.id === photoId);
    if (photo) await this.#putPhoto({ ...photo, ...change });
  }

  async #putPhoto(photo: KeptPhoto): Promise<void> {
    this.#set({ photos: replace(this.#state.photos, photo) });
    await this.#keep(() => this.#store.putPhoto(photo));
  }

  /** A phone that can't store still works and sends; the screen says what the risk is. */
  async #keep(write: () => Promise<void>): Promise<void> {
    try {
      await write();
      if (this.#state.storageError) this.#set({ storageError: null });
    } catch (error) {
      this.#set({ storageError: reasonOf(error) });
    }
  }

  #setProgress(photoId: string, share: number | null): void {
    const { [photoId]: _old, ...rest } = this.#state.progress;
    this.#set({ progress: share === null ? rest : { ...rest, [photoId]: share } });
  }

  #set(change: Partial<OutboxState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function replace<T extends { id: string }>(list: readonly T[], item: T): T[] {
  return list.some((other) => other.id === item.id)
    ? list.map((other) => (other.id === item.id ? item : other))
    : [...list, item];
}

/** The person is done, nothing was refused, and every photo of it is with the server. */
export function isComplete(draft: FindingDraft, photos: readonly KeptPhoto[]): boolean {
  if (!draft.ready || draft.problem) return false;
  return photos.every((photo) => photo.draftId !== draft.id || photo.sentAs !== null);
}
