import { useQueryClient } from '@tanstack/react-query';
import { type PhotoStage, type Problem, photoCaps, routes } from '@underlath/contract';
import { useEffect, useRef, useState } from 'react';
import { v7 } from 'uuid';
import { call } from '../../shared/api/call.ts';
import { CancelledError, problemOf } from '../../shared/api/errors.ts';
import { hashBytes, isTooLarge, uploadPhoto } from '../../shared/api/photos.ts';

export type Upload = {
  id: string;
  file: File;
  stage: PhotoStage;
  state: 'waiting' | 'sending' | 'stored' | 'duplicate' | 'failed';
  share: number;
  problem: Problem | null;
};

type Target = {
  projectId: string;
  findingId?: string | undefined;
  locationId?: string | undefined;
  onDone: (photoId: string) => void;
};

/** Photos on their way, one at a time in the order chosen. A failed one keeps its id, so that trying again makes no second. */
export function useUploads(target: Target) {
  const [uploads, setUploads] = useState<Upload[]>([]);
  const client = useQueryClient();
  const running = useRef<{ id: string; abort: AbortController } | null>(null);
  const change = (id: string, part: Partial<Upload>) =>
    setUploads((before) => before.map((upload) => (upload.id === id ? { ...upload, ...part } : upload)));
  const next = uploads.find((upload) => upload.state === 'waiting');

  // biome-ignore lint/correctness/useExhaustiveDependencies: starts the next one when the list says there is one; the rest is read when it starts
  useEffect(() => {
    if (!next || running.current) return;
    const abort = new AbortController();
    running.current = { id: next.id, abort };
    change(next.id, { state: 'sending', share: 0, problem: null });
    send(next, target, abort.signal, (share) => change(next.id, { share }))
      .then(({ photoId, duplicate }) => {
        change(next.id, { state: duplicate ? 'duplicate' : 'stored' });
        target.onDone(photoId);
        for (const read of [routes.listPhotos, routes.getFinding, routes.listFindings, routes.projectOverview]) {
          client.invalidateQueries({ queryKey: [read.name] });
        }
      })
      .catch((error: unknown) => {
        if (error instanceof CancelledError) dismiss(next.id);
        else change(next.id, { state: 'failed', problem: problemOf(error) });
      })
      .finally(() => {
        running.current = null;
        // A new list, so that this effect looks for the next one.
        setUploads((before) => [...before]);
      });
  }, [next?.id, uploads]);

  const dismiss = (id: string) => setUploads((before) => before.filter((upload) => upload.id !== id));
  return {
    uploads,
    add: (files: readonly File[], stage: PhotoStage) =>
      setUploads((before) => [...before, ...files.map((file) => newUpload(file, stage))]),
    cancel: (id: string) => (running.current?.id === id ? running.current.abort.abort() : dismiss(id)),
    retry: (id: string) => change(id, { state: 'waiting', problem: null }),
    dismiss,
  };
}

function newUpload(file: File, stage: PhotoStage): Upload {
  const upload: Upload = { id: v7(), file, stage, state: 'waiting', share: 0, problem: null };
  return isTooLarge(file) ? { ...upload, state: 'failed', problem: tooLarge(file) } : upload;
}

/** Said before 25 MB are sent for nothing. */
function tooLarge(file: File): Problem {
  const mb = (bytes: number) => `${Math.ceil(bytes / (1024 * 1024))} MB`;
  return {
    type: 'too-large',
    status: 413,
    title: 'Too large',
    detail: `It has ${mb(file.size)}; at most ${mb(photoCaps.bytes)} are taken. Send it at a smaller size.`,
  };
}

async function send(upload: Upload, target: Target, signal: AbortSignal, onProgress: (share: number) => void) {
  const { projectId, findingId, locationId } = target;
  const { id, file, stage } = upload;
  const sha256 = await hashBytes(file);
  const photo = await uploadPhoto({
    projectId,
    findingId,
    locationId,
    id,
    file,
    fileName: file.name,
    stage,
    sha256,
    onProgress,
    signal,
  });
  // A duplicate is the photo that was there before; it may belong to other findings only.
  if (photo.duplicate && findingId && !photo.findingIds.includes(findingId)) {
    await call(routes.attachPhotos, { params: { findingId }, body: { photoIds: [photo.id] } });
  }
  return { photoId: photo.id, duplicate: photo.duplicate };
}
