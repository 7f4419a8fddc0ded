import { type ReactNode, useEffect, useId, useRef } from 'react';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { Button } from './button.tsx';
import './ui.css';

type DialogProps = {
  open: boolean;
  title: string;
  /** Called by Escape, by the close button, and by the browser's own dismissal. */
  onClose: () => void;
  children: ReactNode;
  /** The buttons, the one that goes on last. */
  actions?: ReactNode;
};

/** The browser's own modal dialog: it traps focus, dims what is behind, and gives the focus back to where it came from. */
export function Dialog({ open, title, onClose, children, actions }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const opener = useRef<Element | null>(null);
  const id = useId();
  const t = useT(commonWords);
  useEffect(() => {
    const dialog = ref.current;
    if (!dialog || !open) return;
    opener.current = document.activeElement;
    dialog.showModal();
    return () => {
      dialog.close();
      if (opener.current instanceof HTMLElement) opener.current.focus();
    };
  }, [open]);
  return (
    <dialog
      ref={ref}
      className="dialog"
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      {open && (
        <>
          <div className="dialog-head">
            <h2 id={id}>{title}</h2>
            <Button look="quiet" onClick={onClose}>
              {t('close')}
            </Button>
          </div>
          <div className="dialog-body">{children}</div>
          {actions && <div className="dialog-foot">{actions}</div>}
        </>
      )}
    </dialog>
  );
}
