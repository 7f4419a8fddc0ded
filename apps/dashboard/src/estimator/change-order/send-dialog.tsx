import { type ChangeOrder, canBeParted, type Problem, routes } from '@underlath/contract';
import { type FormEvent, useId, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange, useRoute } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Checkbox } from '../../shared/ui/choice.tsx';
import { Dialog } from '../../shared/ui/dialog.tsx';
import { TextArea, TextInput } from '../../shared/ui/field.tsx';
import { Money } from '../../shared/ui/money.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { LinkOnce } from '../desk/link-once.tsx';
import { localProblem, readNumber } from '../desk/numbers.ts';
import { plural } from '../desk/words.ts';
import { ContentGaps } from './content-gaps.tsx';
import { orderReads } from './reads.ts';

/** Freezes a version and makes the client's link, which is shown this one time. */
export function SendDialog({ order, onClose }: { order: ChangeOrder; onClose: () => void }) {
  const formId = useId();
  const project = useRoute(routes.getProject, { params: { projectId: order.projectId } });
  const [typedEmail, setEmail] = useState<string | null>(null);
  const [days, setDays] = useState('14');
  const [reason, setReason] = useState('');
  const [byPart, setByPart] = useState(false);
  const [withEnglish, setWithEnglish] = useState(false);
  const asksSpanish = order.clientLocale === 'es' && order.missingSpanish.length > 0;
  const [local, setLocal] = useState<Problem | null>(null);
  const email = typedEmail ?? project.data?.clientEmail ?? '';
  const send = useChange(routes.sendChangeOrder, { invalidates: orderReads });
  const needsReason = order.contentReview?.missing.some(({ weight }) => weight === 'law') ?? false;
  const problem = local ?? (send.error ? problemOf(send.error) : null);
  function submit(event: FormEvent) {
    event.preventDefault();
    const expiresInDays = readNumber(days);
    if (typeof expiresInDays !== 'number' || expiresInDays < 1 || expiresInDays > 90) {
      setLocal(localProblem([{ pointer: '/expiresInDays', detail: `“${days}” does not fit; choose 1 to 90 days.` }]));
      return;
    }
    if (needsReason && reason.trim() === '') {
      const detail = 'Say why it goes out without what is missing, or put it in first.';
      setLocal(localProblem([{ pointer: '/missingReason', detail }]));
      return;
    }
    setLocal(null);
    send.mutate({
      params: { changeOrderId: order.id },
      body: {
        clientEmail: email.trim() || null,
        expiresInDays,
        byPart,
        withEnglish,
        ...(reason.trim() && { missingReason: reason.trim() }),
      },
      ifMatch: order.version,
    });
  }
  if (send.data) {
    return (
      <Dialog
        open
        title="Sent"
        onClose={onClose}
        actions={
          <Button look="go" onClick={onClose}>
            Done
          </Button>
        }
      >
        <LinkOnce
          link={send.data.link}
          what={
            email
              ? `It goes out by e-mail to ${email}; the change order’s page says what became of it.`
              : 'Hand it to the client yourself.'
          }
        />
        <p className="soft small">
          SHA-256 of what was sent: <span className="hash">{send.data.sha256}</span>
        </p>
      </Dialog>
    );
  }
  return (
    <Dialog
      open
      title={`Send change order ${order.number}`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Not yet</Button>
          <Button look="go" type="submit" form={formId} busy={send.isPending} busyLabel="Sending…">
            Send it
          </Button>
        </>
      }
    >
      <form id={formId} className="stack" onSubmit={submit} noValidate>
        <p>
          {order.draft.project.clientName} is asked for <Money cents={order.totalCents} /> and{' '}
          {plural(order.days, `${order.draft.contract.dayKind ?? 'working'} day`)}. Exactly this version is frozen; a
          later edit becomes a new version and ends this link.
        </p>
        <TextInput
          label="Client’s e-mail"
          optional
          type="email"
          hint="Empty: nothing is mailed, you hand over the link yourself, and see to it that the owner gets a copy."
          value={email}
          onChange={setEmail}
          error={errorAt(problem, '/clientEmail')}
        />
        <TextInput
          label="The link works for, days"
          inputMode="numeric"
          className="number input-short"
          value={days}
          onChange={setDays}
          error={errorAt(problem, '/expiresInDays')}
        />
        {canBeParted(order.findingIds.length) && (
          <Checkbox
            label="The client may leave out single findings"
            detail="Every choice is priced now and stands in what is signed. What is left out counts as declined."
            checked={byPart}
            onChange={setByPart}
          />
        )}
        {asksSpanish && (
          <div className="notice">
            <p>
              <b>The client reads Spanish, and {plural(order.missingSpanish.length, 'name')} in it have none:</b>{' '}
              {order.missingSpanish.map(({ english }) => english).join('; ')}. Type them under “Wording, days,
              findings”, which says where.
            </p>
            <Checkbox
              label="Send it with these in English"
              detail="They are marked as English, so that they are read aloud as such."
              checked={withEnglish}
              onChange={setWithEnglish}
            />
          </div>
        )}
        {order.contentReview && <ContentGaps review={order.contentReview} projectId={order.projectId} />}
        {needsReason && (
          <TextArea
            label="Why it goes out without it"
            hint="Needed, because the text of a law asks for it. It is kept in the record with your name."
            maxLength={1000}
            value={reason}
            onChange={setReason}
            error={errorAt(problem, '/missingReason')}
          />
        )}
        <FormFail problem={problem} doing="Sending the change order" />
      </form>
    </Dialog>
  );
}
