import { useState } from 'react';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { Button } from '../ui/button.tsx';

/** Shown once: the server keeps their hashes alone. */
export function RecoveryCodes({ codes, onKept }: { codes: readonly string[]; onKept: () => void }) {
  const t = useT(accountWords);
  const [copied, setCopied] = useState<'no' | 'yes' | 'failed'>('no');
  const copy = () =>
    navigator.clipboard.writeText(codes.join('\n')).then(
      () => setCopied('yes'),
      () => setCopied('failed'),
    );
  return (
    <div className="stack once" role="status">
      <h3>{t('recoveryTitle')}</h3>
      <p className="prose">{t('recoveryOnce')}</p>
      <ol className="recovery-codes">
        {codes.map((code) => (
          <li key={code}>
            <code>{code}</code>
          </li>
        ))}
      </ol>
      <div className="row">
        <Button onClick={copy}>{t('copy')}</Button>
        <Button look="go" onClick={onKept}>
          {t('kept')}
        </Button>
      </div>
      <p aria-live="polite">
        {copied === 'yes' && t('copied')}
        {copied === 'failed' && t('copyFailed')}
      </p>
    </div>
  );
}
