import { AccountSettings } from '../../shared/account/account-settings.tsx';
import { Page } from '../desk/page.tsx';

export function AccountScreen() {
  return (
    <Page title="Your account">
      <AccountSettings />
    </Page>
  );
}
