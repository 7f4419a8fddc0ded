import { Link, useRouter, useSearch } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { useRoute } from '../../shared/api/hooks.ts';
import { useSignedInAs } from '../../shared/api/me.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { appWords } from '../../shared/i18n/messages/app.ts';
import { commonWords } from '../../shared/i18n/messages/common.ts';
import { Gate } from './gate.tsx';
import { ownAddress } from './own-address.ts';
import { SignInForm } from './sign-in-form.tsx';

export function SignInScreen() {
  const t = useT(appWords);
  const tCommon = useT(commonWords);
  const router = useRouter();
  const signedInAs = useSignedInAs();
  const signUp = useRoute(routes.getSignUp, {});
  const { to } = useSearch({ from: '/sign-in' });
  return (
    <Gate title={tCommon('signIn')}>
      <SignInForm
        onDone={(me) => {
          signedInAs(me);
          router.history.replace(ownAddress(to));
        }}
      />
      {signUp.data && (
        <p className="gate-other">
          {t('noCompany')} {signUp.data.open ? <Link to="/start">{t('openCompany')}</Link> : t('askForInvitation')}
        </p>
      )}
    </Gate>
  );
}
