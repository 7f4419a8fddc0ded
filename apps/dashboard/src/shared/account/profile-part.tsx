import { type AccountView, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../api/errors.ts';
import { useChange } from '../api/hooks.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { Button } from '../ui/button.tsx';
import { TextInput } from '../ui/field.tsx';
import { errorAt, FailState } from '../ui/states.tsx';
import { useAnnounce } from '../ui/status.tsx';
import { SendConfirmation } from './send-confirmation.tsx';
import { WithPassword } from './with-password.tsx';

export function ProfilePart({ own }: { own: AccountView }) {
  const t = useT(accountWords);
  return (
    <section className="account-part stack">
      <h2>{t('who')}</h2>
      <NameForm name={own.name} />
      {own.emailConfirmed ? (
        <p>{t('emailNow', { email: own.email })}</p>
      ) : (
        <>
          <p className="prose">{t('emailUnconfirmed', { email: own.email })}</p>
          <SendConfirmation />
        </>
      )}
      {own.pendingEmail && <p>{t('pendingEmail', { email: own.pendingEmail })}</p>}
      <ChangeEmail />
    </section>
  );
}

function NameForm({ name: was }: { name: string }) {
  const t = useT(accountWords);
  const announce = useAnnounce();
  const [name, setName] = useState(was);
  const change = useChange(routes.changeAccount, {
    invalidates: [routes.whoAmI, routes.listMembers],
    onDone: () => announce(t('saved')),
  });
  const problem = change.error ? problemOf(change.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    change.mutate({ body: { name } });
  }
  return (
    <form className="stack account-form" onSubmit={submit} noValidate>
      <TextInput
        label={t('name')}
        autoComplete="name"
        value={name}
        onChange={setName}
        error={errorAt(problem, '/name')}
        required
      />
      {problem && <FailState problem={problem} doing={t('nameDoing')} kept />}
      <Button type="submit" busy={change.isPending}>
        {t('nameDo')}
      </Button>
    </form>
  );
}

function ChangeEmail() {
  const t = useT(accountWords);
  const [email, setEmail] = useState('');
  const change = useChange(routes.changeEmail, { invalidates: [routes.getAccount] });
  const sent = change.data && change.variables;
  return (
    <>
      <WithPassword
        action={t('changeEmail')}
        doing={t('changeEmailDoing')}
        error={change.error}
        busy={change.isPending}
        done={change.isSuccess}
        onSubmit={(password) => change.mutate({ body: { email: email.trim(), password } })}
      >
        <TextInput
          label={t('newEmail')}
          type="email"
          autoComplete="email"
          value={email}
          onChange={setEmail}
          error={errorAt(change.error && problemOf(change.error), '/email')}
          required
        />
      </WithPassword>
      <p role="status">
        {sent && t(change.data.delivery === 'filed' ? 'filed' : 'mailed', { email: sent.body.email })}
      </p>
    </>
  );
}
