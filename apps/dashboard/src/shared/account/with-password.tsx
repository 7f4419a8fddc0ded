import { type FormEvent, type ReactNode, useState } from 'react';
import { problemOf } from '../api/errors.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { commonWords } from '../i18n/messages/common.ts';
import { Button } from '../ui/button.tsx';
import { PasswordInput } from '../ui/password-input.tsx';
import { FailState } from '../ui/states.tsx';
import { NoPasskeyError } from './passkey-program.ts';

type WithPasswordProps = {
  /** On the button that opens the form, and on the one that goes on. */
  action: string;
  doing: string;
  /** Said after the action for those who hear the page, where there are several alike. */
  of?: string;
  quiet?: boolean;
  /** Questions before the password. */
  children?: ReactNode;
  error: Error | null;
  busy: boolean;
  /** Closes the form. */
  done: boolean;
  onSubmit: (password: string) => void;
};

/** A change that asks for the password again, so that a device left open is not enough. */
export function WithPassword({ action, doing, of, quiet, children, error, busy, done, onSubmit }: WithPasswordProps) {
  const t = useT(accountWords);
  const c = useT(commonWords);
  const [isOpen, setOpen] = useState(false);
  const [password, setPassword] = useState('');
  const [wasDone, setWasDone] = useState(done);
  if (done !== wasDone) {
    setWasDone(done);
    if (done) {
      setOpen(false);
      setPassword('');
    }
  }
  function submit(event: FormEvent) {
    event.preventDefault();
    if (!busy) onSubmit(password);
  }
  if (!isOpen) {
    return (
      <Button look={quiet ? 'quiet' : 'plain'} onClick={() => setOpen(true)}>
        {action}
        {of && <span className="hidden-text"> {of}</span>}
      </Button>
    );
  }
  return (
    <form className="stack account-form" onSubmit={submit} noValidate>
      {children}
      <PasswordInput
        label={t('presentPassword')}
        autoComplete="current-password"
        value={password}
        onChange={setPassword}
      />
      {error &&
        (error instanceof NoPasskeyError ? (
          <p role="alert">{t('passkeyFailed')}</p>
        ) : (
          <FailState problem={problemOf(error)} doing={doing} kept />
        ))}
      <div className="row">
        <Button type="submit" look="go" busy={busy}>
          {action}
        </Button>
        <Button look="quiet" onClick={() => setOpen(false)}>
          {c('cancel')}
        </Button>
      </div>
    </form>
  );
}
