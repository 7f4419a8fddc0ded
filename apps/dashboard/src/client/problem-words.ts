import { OfflineError, ProblemError } from '../shared/api/errors.ts';
import type { client } from '../shared/i18n/messages/letter.ts';

export type ClientKey = keyof (typeof client)['en'];

/** Why the letter can't be read any more. */
export type Block = 'replaced' | 'gone' | 'no-link';

/** What became of the link while opening or reading; null when trying again may help. A secret the server does not know, or can't read, is told like one that is too old. */
export function blockOf(error: unknown): Block | null {
  if (!(error instanceof ProblemError)) return null;
  if (error.type === 'link-replaced') return 'replaced';
  if (error.type === 'not-signed-in') return 'no-link';
  const unusable: ProblemError['type'][] = ['link-gone', 'not-found', 'invalid-input'];
  return unusable.includes(error.type) ? 'gone' : null;
}

export type ProblemWords = { title: ClientKey; todo: ClientKey };

const byType: Partial<Record<ProblemError['type'], ProblemWords>> = {
  'too-many-requests': { title: 'problemBusy', todo: 'problemBusyDo' },
  'invalid-input': { title: 'problemInput', todo: 'problemInputDo' },
  'contract-moved': { title: 'problemMoved', todo: 'problemMovedDo' },
  'wrong-state': { title: 'problemDecided', todo: 'problemDecidedDo' },
  'stale-version': { title: 'replacedTitle', todo: 'replacedDo' },
  'link-replaced': { title: 'replacedTitle', todo: 'replacedDo' },
  'still-running': { title: 'problemRunning', todo: 'problemRunningDo' },
  'link-gone': { title: 'goneTitle', todo: 'goneDo' },
  'not-signed-in': { title: 'goneTitle', todo: 'noLinkBody' },
};

/** What happened to a send, in the owner's words, and what to do about it. */
export function problemWords(error: unknown): ProblemWords {
  if (error instanceof OfflineError) return { title: 'problemOffline', todo: 'problemOfflineDo' };
  const known = error instanceof ProblemError ? byType[error.type] : undefined;
  return known ?? { title: 'problemServer', todo: 'problemServerDo' };
}
