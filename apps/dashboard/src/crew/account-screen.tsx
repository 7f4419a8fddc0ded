import { Link } from '@tanstack/react-router';
import { AccountView } from '../shared/account/account-view.tsx';
import { useT } from '../shared/i18n/locale.tsx';
import { account } from '../shared/i18n/messages/account.ts';
import { crew } from '../shared/i18n/messages/crew.ts';
import { BackWords, CrewFrame } from './crew-frame.tsx';

export function CrewAccountScreen() {
  const t = useT(account);
  const c = useT(crew);
  return (
    <CrewFrame
      back={
        <Link to="/crew" className="crew-back">
          <BackWords>{c('myProjects')}</BackWords>
        </Link>
      }
    >
      <h1>{t('title')}</h1>
      <AccountView />
    </CrewFrame>
  );
}
