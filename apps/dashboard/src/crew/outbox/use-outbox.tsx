import { useQueryClient } from '@tanstack/react-query';
import { type PhotoStage, routes } from '@underlath/contract';
import { createContext, type ReactNode, useContext, useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { v7 } from 'uuid';
import { useMe } from '../../shared/api/me.ts';
import { hashBytes } from '../../shared/api/photos.ts';
import { countUnsent } from './draft.ts';
import { Outbox, type OutboxState } from './outbox.ts';
import { outboxServer } from './server.ts';
import { openStore } from './store.ts';

const OutboxContext = createContext<Outbox | null>(null);

/** Waits this long before it tries by itself again while something could not be sent. */
const againMs = 20_000;

/** One outbox for the person signed in; it goes on sending while they move between screens. */
export function OutboxProvider({ children }: { children: ReactNode }) {
  const me = useMe();
  const memberId = me.data?.member.id;
  const client = useQueryClient();
  const [outbox, setOutbox] = useState<Outbox | null>(null);
  useEffect(() => {
    if (!memberId) return;
    const next = new Outbox(openStore(memberId), outboxServer, () => {
      for (const route of [routes.listFindings, routes.listLocations, routes.getFinding, routes.listProjects]) {
        void client.invalidateQueries({ queryKey: [route.name] });
      }
    });
    setOutbox(next);
    void next.load();
    const send = () => void next.send();
    addEventListener('online', send);
    const timer = setInterval(() => {
      if (next.state().offline) send();
    }, againMs);
    return () => {
      removeEventListener('online', send);
      clearInterval(timer);
    };
  }, [memberId, client]);
  return outbox ? <OutboxContext value={outbox}>{children}</OutboxContext> : null;
}

export function useOutbox(): Outbox {
  const outbox = useContext(OutboxContext);
  if (!outbox) throw new Error('useOutbox stands outside its provider');
  return outbox;
}

export function useOutboxState(): OutboxState {
  const outbox = useOutbox();
  return useSyncExternalStore(outbox.subscribe, outbox.state);
}

export function useUnsentCount(): number {
  const { drafts, photos } = useOutboxState();
  return useMemo(() => countUnsent(drafts, photos), [drafts, photos]);
}

type TakenFor = {
  projectId: string;
  draftId: string | null;
  findingId: string | null;
  locationId: string | null;
  stage: PhotoStage;
};

/** Keeps what the camera gave, byte for byte, and starts sending it. */
export function useTakePhotos(): (files: readonly File[], taken: TakenFor) => Promise<void> {
  const outbox = useOutbox();
  return async (files, taken) => {
    for (const file of files) {
      const [bytes, sha256] = [await file.arrayBuffer(), await hashBytes(file)];
      await outbox.addPhoto({
        ...taken,
        id: v7(),
        fileName: file.name || 'photo',
        mediaType: file.type,
        bytes,
        sha256: sha256 ?? null,
        sentAs: null,
        problem: null,
      });
    }
  };
}
