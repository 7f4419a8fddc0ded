import type { ButtonHTMLAttributes, ReactNode } from 'react';
import { useT } from '../i18n/locale.tsx';
import { commonWords } from '../i18n/messages/common.ts';
import './ui.css';

export type ButtonLook = 'go' | 'plain' | 'quiet';

/** The class of a button, for a router link that is pressed like one. */
export function buttonClass(look: ButtonLook = 'plain', wide = false): string {
  return `button button-${look}${wide ? ' button-wide' : ''}`;
}

type ButtonProps = Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'disabled'> & {
  look?: ButtonLook;
  /** Full width, as at the foot of a phone. */
  wide?: boolean;
  /** Keeps its size and its focus, says that it is working, and can't be pressed twice. */
  busy?: boolean;
  busyLabel?: string;
  disabled?: boolean;
  children: ReactNode;
};

/** `go` is the one primary action of a screen, `plain` the others, `quiet` reads as a line of text. */
export function Button({ look = 'plain', wide, busy, busyLabel, children, onClick, className, ...rest }: ButtonProps) {
  const t = useT(commonWords);
  return (
    <button
      type="button"
      {...rest}
      className={[buttonClass(look, wide), className].filter(Boolean).join(' ')}
      aria-disabled={busy || undefined}
      onClick={(event) => {
        // aria-disabled, not disabled: focus stays where it was, and a submit is stopped here.
        if (busy) event.preventDefault();
        else onClick?.(event);
      }}
    >
      <span aria-live="polite">{busy ? (busyLabel ?? t('working')) : children}</span>
    </button>
  );
}
