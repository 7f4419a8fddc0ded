import { type ReactNode, useEffect, useId, useRef } from 'react';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import { Button } from './button.tsx';
import './ui.css';

type SidePanelProps = {
  title: ReactNode;
  /** Above the title: the severity mark, usually. */
  above?: ReactNode;
  onClose?: () => void;
  children: ReactNode;
  foot?: ReactNode;
  /** Changes when another thing is shown; focus then goes to the new title. */
  subject?: string;
};

/** Beside the drawing on a desk, under it on a phone. Not a dialog: the drawing stays usable. */
export function SidePanel({ title, above, onClose, children, foot, subject }: SidePanelProps) {
  const id = useId();
  const t = useT(commonWords);
  const heading = useRef<HTMLHeadingElement>(null);
  const first = useRef(true);
  useEffect(() => {
    // The first thing shown with the page doesn't pull the focus; a thing the person opened does.
    if (!first.current && subject !== undefined) heading.current?.focus();
    first.current = false;
  }, [subject]);
  return (
    <aside
      className="side-panel"
      aria-labelledby={id}
      onKeyDown={(event) => {
        if (event.key === 'Escape' && onClose) onClose();
      }}
    >
      <div className="side-panel-head">
        <div>
          {above}
          <h2 id={id} ref={heading} tabIndex={-1}>
            {title}
          </h2>
        </div>
        {onClose && (
          <Button look="quiet" onClick={onClose}>
            {t('close')}
          </Button>
        )}
      </div>
      <div className="side-panel-body">{children}</div>
      {foot && <div className="side-panel-foot">{foot}</div>}
    </aside>
  );
}
