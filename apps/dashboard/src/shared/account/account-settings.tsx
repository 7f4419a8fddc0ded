import { routes } from '@underlath/contract';
import { problemOf } from '../api/errors.ts';
import { useRoute } from '../api/hooks.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { FailState, LoadingRows } from '../ui/states.tsx';
import { DevicesPart } from './devices-part.tsx';
import { PasswordPart } from './password-part.tsx';
import { ProfilePart } from './profile-part.tsx';
import { SecondStepPart } from './second-step-part.tsx';
import './account.css';

/** A person's own account, the same at the desk and on the phone. */
export function AccountSettings() {
  const t = useT(accountWords);
  const own = useRoute(routes.getAccount, {});
  if (!own.data) {
    return own.error ? (
      <FailState
        problem={problemOf(own.error)}
        doing={t('reading')}
        onRetry={() => own.refetch()}
        retrying={own.isFetching}
      />
    ) : (
      <LoadingRows rows={6} />
    );
  }
  return (
    <>
      <ProfilePart own={own.data} />
      <PasswordPart />
      <SecondStepPart own={own.data} />
      <DevicesPart />
    </>
  );
}
