import { Link } from '@tanstack/react-router';
import { AccountSettings } from '../shared/account/account-settings.tsx';
import { useT } from '../shared/i18n/locale.tsx';
import { accountWords } from '../shared/i18n/messages/account.ts';
import { crewWords } from '../shared/i18n/messages/crew.ts';
import { BackWords, CrewFrame } from './crew-frame.tsx';

export function CrewAccountScreen() {
  const t = useT(accountWords);
  const c = useT(crewWords);
  return (
    <CrewFrame
      back={
        <Link to="/crew" className="crew-back">
          <BackWords>{c('myProjects')}</BackWords>
        </Link>
      }
    >
      <h1>{t('title')}</h1>
      <AccountSettings />
    </CrewFrame>
  );
}
