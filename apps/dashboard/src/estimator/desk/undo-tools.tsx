import type { ReactNode } from 'react';
import { Button } from '../../shared/ui/button.tsx';
import type { Steps } from './undo-key.ts';

/** Undo and redo as buttons, and the keys of the grid under them. */
export function UndoTools({ state: { undo, redo }, children }: { state: Steps; children: ReactNode }) {
  return (
    <div className="row book-tools">
      <Button disabled={!undo} onClick={() => undo?.()}>
        Undo
      </Button>
      <Button disabled={!redo} onClick={() => redo?.()}>
        Redo
      </Button>
      {children}
    </div>
  );
}
