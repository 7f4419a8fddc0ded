import { Link } from '@tanstack/react-router';
import { routes } from '@underlath/contract';
import { useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { accountWords } from '../../shared/i18n/messages/account.ts';
import { Button, buttonClass } from '../../shared/ui/button.tsx';
import { EmptyState, FailState } from '../../shared/ui/states.tsx';
import { Gate } from './gate.tsx';
import { tokenOfThisPage } from './letter-token.ts';

/** Where the link that confirms an address leads. Programs that follow links in mail press no button. */
export function ConfirmEmailScreen() {
  const t = useT(accountWords);
  const [token] = useState(tokenOfThisPage);
  const confirm = useChange(routes.confirmEmail, {
    invalidates: [routes.getAccount, routes.whoAmI],
  });
  if (token === '') {
    return (
      <Gate title={t('confirmTitle')}>
        <EmptyState title={t('linkMissing')}>{t('linkMissingDo')}</EmptyState>
      </Gate>
    );
  }
  if (confirm.data) {
    return (
      <Gate title={t('confirmTitle')}>
        <p role="status">{t('confirmDone', { email: confirm.data.email })}</p>
        <Link to="/" className={buttonClass('go', true)}>
          {t('goOn')}
        </Link>
      </Gate>
    );
  }
  return (
    <Gate title={t('confirmTitle')} lead={<p>{t('confirmLead')}</p>}>
      <Button look="go" wide busy={confirm.isPending} onClick={() => confirm.mutate({ body: { token } })}>
        {t('confirmDo')}
      </Button>
      {confirm.error && <FailState problem={problemOf(confirm.error)} doing={t('confirmDoing')} />}
    </Gate>
  );
}
