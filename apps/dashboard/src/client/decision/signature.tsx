import type { ChangeOrderDocument, Text } from '@underlath/contract';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { wordsIn } from '../letter/letter-text.ts';

export type SignatureErrors = { name?: string | undefined; consent?: string | undefined };

type SignatureProps = {
  consent: ChangeOrderDocument['consent'];
  tick: string;
  name: string;
  agreed: boolean;
  errors: SignatureErrors;
  onName: (name: string) => void;
  onAgreed: (agreed: boolean) => void;
};

/** The consent text to read, the tick that says it was read, and the name that stands as the signature. */
export function Signature({ consent, tick, name, agreed, errors, onName, onAgreed }: SignatureProps) {
  const t = useT(letterWords);
  return (
    <>
      <section aria-labelledby="consent" className="consent">
        <h2 id="consent">{t('consentTitle')}</h2>
        <ConsentText text={consent.text} />
      </section>
      <NameInput hint={t('yourNameHint')} error={errors.name} name={name} onName={onName} />
      <Checkbox label={tick} error={errors.consent} checked={agreed} onChange={onAgreed} />
    </>
  );
}

type NameInputProps = { hint: string; error: string | undefined; name: string; onName: (name: string) => void };

export function NameInput({ hint, error, name, onName }: NameInputProps) {
  const t = useT(letterWords);
  return (
    <TextInput
      label={t('yourName')}
      hint={hint}
      error={error}
      value={name}
      onChange={onName}
      autoComplete="name"
      autoCapitalize="words"
      maxLength={120}
      aria-required
    />
  );
}

/** The words as they are stored, a sentence a line so that they are read. */
function ConsentText({ text }: { text: Text }) {
  const { locale } = useLocale();
  const { words, lang } = wordsIn(text, locale);
  return (
    <ul className="plain-list" lang={lang}>
      {words.split(/(?<=\.)\s+/).map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
