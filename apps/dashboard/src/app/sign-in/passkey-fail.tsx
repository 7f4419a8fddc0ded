import { NoPasskeyError } from '../../shared/account/passkey-program.ts';
import { problemOf } from '../../shared/api/errors.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { accountWords } from '../../shared/i18n/messages/account.ts';
import { FailState } from '../../shared/ui/states.tsx';

/** What went wrong with a passkey: here on the device, or at the server. */
export function PasskeyFail({ error }: { error: Error | null }) {
  const t = useT(accountWords);
  if (!error) return null;
  if (error instanceof NoPasskeyError) return <p role="alert">{t('passkeyFailed')}</p>;
  return <FailState problem={problemOf(error)} doing={t('passkeyDoing')} />;
}
