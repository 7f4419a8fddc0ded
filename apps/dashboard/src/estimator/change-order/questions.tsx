import { type ChangeOrder, type Question, routes } from '@underlath/contract';
import { type FormEvent, useState } from 'react';
import { problemOf } from '../../shared/api/errors.ts';
import { useChange } from '../../shared/api/hooks.ts';
import { Button } from '../../shared/ui/button.tsx';
import { TextArea } from '../../shared/ui/field.tsx';
import { Stamp } from '../../shared/ui/stamp.tsx';
import { errorAt } from '../../shared/ui/states.tsx';
import { useAnnounce } from '../../shared/ui/status.tsx';
import { FormFail } from '../desk/form-fail.tsx';
import { Part } from '../desk/page.tsx';
import { orderReads } from './reads.ts';

/** What the client asked, unanswered first. An answer appears on the client's page. */
export function OrderQuestions({ order }: { order: ChangeOrder }) {
  if (order.questions.length === 0) return null;
  const inOrder = order.questions.toSorted((a, b) => Number(a.answer !== null) - Number(b.answer !== null));
  return (
    <Part title="Questions from the client">
      <ul className="questions">
        {inOrder.map((question) => (
          <li key={question.id}>
            <p className="soft">
              {question.name}, <Stamp at={question.askedAt} look="day-time" />, about version {question.version}
            </p>
            <p className="question-text">{question.text}</p>
            {question.answer === null ? (
              <AnswerForm order={order} question={question} />
            ) : (
              <p className="question-answer">
                <b>Answered:</b> {question.answer}
              </p>
            )}
          </li>
        ))}
      </ul>
    </Part>
  );
}

function AnswerForm({ order, question }: { order: ChangeOrder; question: Question }) {
  const announce = useAnnounce();
  const [answer, setAnswer] = useState('');
  const send = useChange(routes.answerQuestion, {
    invalidates: orderReads,
    onDone: () =>
      announce(
        'Answered. The client sees it on the letter’s page, and gets it by e-mail where the link went that way.',
      ),
  });
  const problem = send.error ? problemOf(send.error) : null;
  function submit(event: FormEvent) {
    event.preventDefault();
    send.mutate({ params: { changeOrderId: order.id, questionId: question.id }, body: { answer } });
  }
  return (
    <form className="stack" onSubmit={submit} noValidate>
      <TextArea
        label={`Answer to ${question.name}`}
        value={answer}
        onChange={setAnswer}
        maxLength={4000}
        error={errorAt(problem, '/answer')}
      />
      <FormFail problem={problem} doing="Sending the answer" />
      <p>
        <Button type="submit" busy={send.isPending}>
          Send the answer
        </Button>
      </p>
    </form>
  );
}
