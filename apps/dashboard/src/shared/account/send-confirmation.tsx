import { routes } from '@underlath/contract';
import { problemOf } from '../api/errors.ts';
import { useChange } from '../api/hooks.ts';
import { useMe } from '../api/me.ts';
import { useT } from '../i18n/locale.tsx';
import { accountWords } from '../i18n/messages/account.ts';
import { Button } from '../ui/button.tsx';
import { type ShownProblem, useProblemWords } from '../ui/use-problem-words.ts';

/** Has the letter that confirms the own address sent again, and says honestly where it went. */
export function SendConfirmation() {
  const t = useT(accountWords);
  const me = useMe();
  const send = useChange(routes.sendConfirmation);
  const email = me.data?.member.email ?? '';
  return (
    <div className="stack">
      <Button busy={send.isPending} onClick={() => send.mutate({})}>
        {t('sendAgain')}
      </Button>
      <p role="status">{send.data && t(send.data.delivery === 'filed' ? 'filed' : 'mailed', { email })}</p>
      {send.error && <NotSent problem={problemOf(send.error)} />}
    </div>
  );
}

function NotSent({ problem }: { problem: ShownProblem }) {
  const t = useT(accountWords);
  const { title, lines } = useProblemWords(problem);
  return (
    <p role="alert">
      <b>{t('sendAgainDoing')}:</b> {title} {lines.map(({ words }) => words).join(' ')}
    </p>
  );
}
