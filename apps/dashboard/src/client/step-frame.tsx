import { type FormEvent, type ReactNode, useEffect, useRef } from 'react';
import { useT } from '../shared/i18n/locale.tsx';
import { letterWords } from '../shared/i18n/messages/letter.ts';
import { Button } from '../shared/ui/button.tsx';
import { LanguageSwitch } from './language-switch.tsx';

type StepFrameProps = {
  title: string;
  onBack: () => void;
  /** Called with nothing sent yet; the step checks what was typed and sends it. */
  onSubmit: () => void;
  children: ReactNode;
};

/** A step beside the letter: its heading takes the focus, Back is first and last, and the form never leaves by itself. */
export function StepFrame({ title, onBack, onSubmit, children }: StepFrameProps) {
  const t = useT(letterWords);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    window.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onSubmit();
  };
  return (
    <form className="step" noValidate onSubmit={submit}>
      <div className="letter-top">
        <Button look="quiet" onClick={onBack} className="step-back">
          <span aria-hidden="true">← </span>
          {t('backToLetter')}
        </Button>
        <LanguageSwitch />
      </div>
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {children}
    </form>
  );
}

/** Takes the focus to the first line that does not fit, after it has been marked. */
export function focusFirstInvalid(): void {
  requestAnimationFrame(() => document.querySelector<HTMLElement>('.step [aria-invalid="true"]')?.focus());
}
