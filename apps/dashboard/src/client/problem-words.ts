import { OfflineError, ProblemAnswer } from '../shared/api/errors.ts';
import type { letterWords } from '../shared/i18n/messages/letter.ts';

export type ClientKey = keyof (typeof letterWords)['en'];

/** Why the letter can't be read any more. */
export type Block = 'replaced' | 'expired' | 'revoked' | 'unknown' | 'no-link';

const blocks: Partial<Record<ProblemAnswer['type'], Block>> = {
  'link-replaced': 'replaced',
  'link-expired': 'expired',
  'link-revoked': 'revoked',
  'not-signed-in': 'no-link',
  // A link cut short, put together of two, or made up.
  'link-unknown': 'unknown',
  'other-letter': 'unknown',
  'not-found': 'unknown',
  'invalid-input': 'unknown',
};

/** What became of the link while opening or reading; null when trying again may help. */
export function findBlock(error: unknown): Block | null {
  return error instanceof ProblemAnswer ? (blocks[error.type] ?? null) : null;
}

type Words = readonly [title: ClientKey, ...body: ClientKey[]];

/** Over a letter that is open. */
export const openBlockWords: Record<Block, Words> = {
  replaced: ['replacedTitle', 'replacedDo'],
  expired: ['expiredTitle', 'endedBody', 'endedDo'],
  revoked: ['revokedTitle', 'endedBody', 'endedDo'],
  unknown: ['unknownTitle', 'endedDo'],
  'no-link': ['closedTitle', 'closedDo'],
};

/** In the place of a letter; whom to ask stands below where the server told it. */
export const blockWords: Record<Block | 'closed', Words> = {
  replaced: ['replacedTitle', 'replacedBody', 'replacedDo'],
  expired: ['expiredTitle', 'expiredBody', 'endedBody', 'endedDo'],
  revoked: ['revokedTitle', 'endedBody', 'endedDo'],
  unknown: ['unknownTitle', 'unknownBody', 'goneDo'],
  'no-link': ['noLinkTitle', 'noLinkBody', 'goneDo'],
  closed: ['closedTitle', 'closedBody'],
};

export type ProblemWords = { title: ClientKey; todo: ClientKey };

const byType: Partial<Record<ProblemAnswer['type'], ProblemWords>> = {
  'too-many-requests': { title: 'problemBusy', todo: 'problemBusyDo' },
  'invalid-input': { title: 'problemInput', todo: 'problemInputDo' },
  'contract-moved': { title: 'problemMoved', todo: 'problemMovedDo' },
  'wrong-state': { title: 'problemDecided', todo: 'problemDecidedDo' },
  'stale-version': { title: 'replacedTitle', todo: 'replacedDo' },
  'link-replaced': { title: 'replacedTitle', todo: 'replacedDo' },
  'still-running': { title: 'problemRunning', todo: 'problemRunningDo' },
  'link-expired': { title: 'expiredTitle', todo: 'endedDo' },
  'link-revoked': { title: 'revokedTitle', todo: 'endedDo' },
  'other-letter': { title: 'problemOther', todo: 'problemOtherDo' },
  'questions-wait': { title: 'problemQuestions', todo: 'problemQuestionsDo' },
  'not-signed-in': { title: 'closedTitle', todo: 'closedDo' },
};

/** What happened to a send, in the owner's words, and what to do about it. */
export function problemWords(error: unknown): ProblemWords {
  if (error instanceof OfflineError) return { title: 'problemOffline', todo: 'problemOfflineDo' };
  const known = error instanceof ProblemAnswer ? byType[error.type] : undefined;
  return known ?? { title: 'problemServer', todo: 'problemServerDo' };
}
