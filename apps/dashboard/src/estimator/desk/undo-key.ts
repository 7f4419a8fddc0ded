import type { KeyboardEvent } from 'react';

export type Steps = { readonly undo: (() => void) | undefined; readonly redo: (() => void) | undefined };

/** Undo and redo anywhere but in a text that is being typed, which has its own. */
export function undoKey(event: KeyboardEvent, { undo, redo }: Steps): void {
  const { target } = event;
  const isText =
    (target instanceof HTMLInputElement && target.type !== 'checkbox') || target instanceof HTMLSelectElement;
  if (isText || !(event.ctrlKey || event.metaKey)) return;
  const key = event.key.toLowerCase();
  const step = key === 'y' || (key === 'z' && event.shiftKey) ? redo : key === 'z' ? undo : undefined;
  if (!step) return;
  event.preventDefault();
  step();
}
