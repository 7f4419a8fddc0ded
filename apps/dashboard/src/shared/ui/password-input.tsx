import { type ReactNode, useState } from 'react';
import { useT } from '../i18n/locale.tsx';
import { appWords } from '../i18n/messages/app.ts';
import { Checkbox } from './choice.tsx';
import { TextInput } from './field.tsx';

type PasswordInputProps = {
  label: string;
  value: string;
  onChange: (value: string) => void;
  autoComplete: 'current-password' | 'new-password';
  hint?: ReactNode;
  error?: ReactNode;
};

/** A password that can be shown, pasted and filled in by a password manager. */
export function PasswordInput({ autoComplete, ...rest }: PasswordInputProps) {
  const t = useT(appWords);
  const [shown, setShown] = useState(false);
  return (
    <div className="password">
      <TextInput
        {...rest}
        type={shown ? 'text' : 'password'}
        autoComplete={autoComplete}
        autoCapitalize="none"
        spellCheck={false}
        required
      />
      <Checkbox label={t('showPassword')} checked={shown} onChange={setShown} />
    </div>
  );
}
