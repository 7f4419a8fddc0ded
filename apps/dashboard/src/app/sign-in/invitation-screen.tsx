import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type Role, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { call } from '../../shared/api/call.ts';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, worthTrying } from '../../shared/api/hooks.ts';
import { useSignedInAs } from '../../shared/api/me.ts';
import { useT } from '../../shared/i18n/locale.tsx';
import { appWords } from '../../shared/i18n/messages/app.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { PasswordInput } from '../../shared/ui/password-input.tsx';
import { EmptyState, errorAt, FailState, LoadingRows } from '../../shared/ui/states.tsx';
import { Gate } from './gate.tsx';
import { tokenOfThisPage } from './letter-token.ts';

const roleKeys = { owner: 'roleOwner', estimator: 'roleEstimator', crew: 'roleCrew' } as const satisfies Record<
  Role,
  string
>;

export function InvitationScreen() {
  const t = useT(appWords);
  const [token] = useState(tokenOfThisPage);
  const offer = useQuery({
    // The token itself stays out of the cache's keys.
    queryKey: [routes.lookUpInvitation.name],
    queryFn: ({ signal }) => call(routes.lookUpInvitation, { body: { token }, signal }),
    enabled: token !== '',
    retry: worthTrying,
    networkMode: 'always',
  });
  if (token === '') {
    return (
      <Gate title={t('invitationLoading')}>
        <EmptyState title={t('invitationMissing')}>{t('invitationMissingDo')}</EmptyState>
      </Gate>
    );
  }
  if (!offer.data) {
    return (
      <Gate title={t('invitationLoading')}>
        {offer.error ? (
          <FailState
            problem={problemOf(offer.error)}
            doing={t('invitationReading')}
            onRetry={() => offer.refetch()}
            retrying={offer.isFetching}
          />
        ) : (
          <LoadingRows rows={3} />
        )}
      </Gate>
    );
  }
  const { companyName, email, role } = offer.data;
  return (
    <Gate
      title={t('invitationTitle', { company: companyName })}
      lead={<p>{t('invitationLead', { role: t(roleKeys[role]), email })}</p>}
    >
      <AcceptForm token={token} email={email} />
    </Gate>
  );
}

function AcceptForm({ token, email }: { token: string; email: string }) {
  const t = useT(appWords);
  const navigate = useNavigate();
  const signedInAs = useSignedInAs();
  const [name, setName] = useState('');
  const [password, setPassword] = useState('');
  const accept = useChange(routes.acceptInvitation, {
    onDone: (me) => {
      signedInAs(me);
      navigate({ to: '/' });
    },
  });
  const problem = accept.error ? problemOf(accept.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    accept.mutate({ body: { token, name, password } });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      {/* For the password manager: which sign-in this password belongs to. */}
      <input
        className="hidden-text"
        type="text"
        autoComplete="username"
        value={email}
        readOnly
        tabIndex={-1}
        aria-hidden="true"
      />
      <TextInput
        label={t('yourName')}
        autoComplete="name"
        value={name}
        onChange={setName}
        error={errorAt(problem, '/name')}
        required
      />
      <PasswordInput
        label={t('password')}
        hint={t('newPasswordHint')}
        autoComplete="new-password"
        value={password}
        onChange={setPassword}
        error={errorAt(problem, '/password')}
      />
      {problem && <FailState problem={problem} doing={t('invitationDoing')} kept />}
      <Button type="submit" look="go" wide busy={accept.isPending}>
        {t('join')}
      </Button>
    </form>
  );
}
