import type { FindingContext, PhotoStage, Rectangle } from '@underlath/contract';
import type { ShownProblem } from '../../shared/ui/use-problem-words.ts';

/** The questions of a new finding, in order. */
export const draftSteps = ['photo', 'where', 'what', 'measure', 'verdict'] as const;
export type DraftStep = (typeof draftSteps)[number];

/** A finding as the phone holds it until the server has it. Its id is the finding's id from the first moment. */
export type FindingDraft = {
  id: string;
  projectId: string;
  locationId: string | null;
  extent: Rectangle | null;
  checkId: string | null;
  inputs: Readonly<Record<string, unknown>>;
  context: FindingContext;
  note: string;
  step: DraftStep;
  /** Question of the check. */
  question: number;
  seenAt: string;
  /** The person is done with it and it may be sent. */
  ready: boolean;
  /** Sent with every try, so that a repeated try can't make a second finding. */
  sendKey: string;
  /** Why the server refused it; null while it has not. No connection is no refusal. */
  problem: ShownProblem | null;
};

/** A photo of a draft (`draftId`) or one more of a finding that the server has (`findingId`). Bytes, not a Blob: some phones lose Blobs. */
export type KeptPhoto = {
  id: string;
  projectId: string;
  draftId: string | null;
  findingId: string | null;
  locationId: string | null;
  stage: PhotoStage;
  fileName: string;
  mediaType: string;
  bytes: ArrayBuffer | null;
  sha256: string | null;
  /** What the server calls it; another id than ours when it had the same bytes already. Null: not sent. */
  sentAs: string | null;
  problem: ShownProblem | null;
};

/** An empty draft at its first question. */
export function newFindingDraft(given: {
  id: string;
  sendKey: string;
  projectId: string;
  locationId: string | null;
  now: string;
}): FindingDraft {
  return {
    id: given.id,
    sendKey: given.sendKey,
    projectId: given.projectId,
    locationId: given.locationId,
    extent: null,
    checkId: null,
    inputs: {},
    context: {},
    note: '',
    step: 'photo',
    question: 0,
    seenAt: given.now,
    ready: false,
    problem: null,
  };
}

/** How many things are on this phone only: every draft, and every extra photo that is not sent. */
export function countUnsent(drafts: readonly FindingDraft[], photos: readonly KeptPhoto[]): number {
  return drafts.length + photos.filter((photo) => photo.findingId !== null).length;
}

/**
 * The server has the photo: it says the id and the bytes' hash, and both are ours (or, for bytes it had before under
 * another id, at least the hash). Where the browser can't hash (plain http away from localhost), the byte count must agree.
 */
export function isKeptByServer(
  photo: Pick<KeptPhoto, 'id' | 'sha256' | 'bytes'>,
  answer: { id: string; sha256: string; byteCount: number; duplicate: boolean },
): boolean {
  const sameBytes = photo.sha256
    ? photo.sha256 === answer.sha256
    : photo.bytes !== null && photo.bytes.byteLength === answer.byteCount;
  return sameBytes && (answer.duplicate || answer.id === photo.id);
}
