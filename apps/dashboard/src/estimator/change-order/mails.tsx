import { type ChangeOrder, type Mail, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextInput } from '../../shared/ui/field.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Part } from '../desk/page.tsx';
import { orderReads } from './reads.ts';

const kindWords: Record<Mail['kind'], string> = {
  offer: 'The letter',
  'link-renewed': 'A new link',
  'question-asked': 'A question',
  'question-answered': 'The answer to a question',
  'decision-told': 'The client’s answer',
  'decision-copy': 'The signed copy',
  notice: 'A heads-up notice',
  invitation: 'An invitation',
  'account-link': 'Link for an account',
  'account-told': 'News of an account',
};
const stateWords: Record<Mail['state'], string> = {
  waiting: 'Waiting to go out',
  'handed-over': 'Handed over',
  filed: 'Only written to a file,',
  refused: 'Refused by the mail server',
  'given-up': 'Given up',
};
/** While one waits, what becomes of it is asked for again. */
const waitMs = 4_000;

/** What went out about this change order, to whom, and what became of it. */
export function OrderMails({ order }: { order: ChangeOrder }) {
  const isWaiting = order.mails.some(({ state }) => state === 'waiting');
  useRoute(routes.getChangeOrder, { params: { changeOrderId: order.id } }, { everyMs: isWaiting && waitMs });
  if (order.mails.length === 0) return null;
  const standing = order.mails
    .filter(({ replacedAt }) => replacedAt === null)
    .toSorted((a, b) => Number(hasFailed(b)) - Number(hasFailed(a)));
  const replaced = order.mails.filter(({ replacedAt }) => replacedAt !== null);
  return (
    <Part title="E-mail">
      <ul className="versions">
        {standing.map((mail) => (
          <li key={mail.id}>
            <MailLine order={order} mail={mail} />
          </li>
        ))}
      </ul>
      {replaced.length > 0 && (
        <details>
          <summary>Earlier ones, replaced since ({replaced.length})</summary>
          <ul className="versions">
            {replaced.map((mail) => (
              <li key={mail.id}>
                <MailWords mail={mail} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </Part>
  );
}

const hasFailed = ({ state }: Mail): boolean => state === 'refused' || state === 'given-up';

function MailLine({ order, mail }: { order: ChangeOrder; mail: Mail }) {
  const failed = hasFailed(mail);
  const isLink = mail.kind === 'offer' || mail.kind === 'link-renewed';
  // A link to a version that was edited since leads nowhere.
  const stands = !isLink || mail.version === order.sentVersion;
  return (
    <div className={failed && stands ? 'version notice' : 'version'}>
      <MailWords mail={mail} />
      {stands && failed && <AgainForm order={order} mail={mail} />}
      {stands && (mail.state === 'handed-over' || mail.state === 'filed') && (
        <details>
          <summary>Send it again</summary>
          <AgainForm order={order} mail={mail} />
        </details>
      )}
    </div>
  );
}

function MailWords({ mail }: { mail: Mail }) {
  const { kind, version, to, state, postedAt, triedAt, tries, serverWords } = mail;
  return (
    <>
      <p>
        <b>{kindWords[kind]}</b>, version {version}, to {to}
      </p>
      <p>
        {stateWords[state]}
        {state === 'waiting' ? ' since ' : ' '}
        <Stamp at={state === 'waiting' ? postedAt : (triedAt ?? postedAt)} look="day-time" />
        {tries > 1 && `, after ${tries} tries`}.
      </p>
      {serverWords && <p className="soft small mail-words">“{serverWords}”</p>}
    </>
  );
}

function AgainForm({ order, mail }: { order: ChangeOrder; mail: Mail }) {
  const announce = useAnnounce();
  const [to, setTo] = useState(mail.to);
  const send = useChange(routes.sendMailAgain, {
    invalidates: orderReads,
    onDone: (sent) => announce(`It goes out again to ${sent.to}.`),
  });
  const problem = send.error ? problemOf(send.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    send.mutate({ params: { changeOrderId: order.id, mailId: mail.id }, body: { to: to.trim() } });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <TextInput label="To" type="email" value={to} onChange={setTo} error={errorAt(problem, '/to')} />
      {mail.renewsLink && (
        <p className="soft small">
          A new link goes out, because the secret of the first is not kept. The first one ends.
        </p>
      )}
      <FormFail problem={problem} doing="Sending it again" />
      <p>
        <Button type="submit" busy={send.isPending} busyLabel="Sending…">
          Send again
        </Button>
      </p>
    </form>
  );
}
