import { AccountView } from '../../shared/account/account-view.tsx';
import { Page } from '../desk/page.tsx';

export function AccountScreen() {
  return (
    <Page title="Your account">
      <AccountView />
    </Page>
  );
}
