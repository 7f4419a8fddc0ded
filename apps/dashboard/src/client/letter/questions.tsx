import type { ClientLetter } from '@underlath/contract';
import { useT } from '../../shared/i18n/locale.tsx';
import { letterWords } from '../../shared/i18n/messages/letter.ts';
import { useDate } from '../../shared/i18n/site-zone.tsx';

/** What was asked and what the contractor answered, oldest first. */
export function Questions({ letter }: { letter: ClientLetter }) {
  const t = useT(letterWords);
  const say = useDate();
  if (letter.questions.length === 0) return null;
  const when = (at: string) => say(at, 'day-time');
  return (
    <section aria-labelledby="questions">
      <h2 id="questions">{t('questionsTitle')}</h2>
      <ol className="questions">
        {letter.questions.map((question) => (
          <li key={question.id}>
            <p className="soft">{t('questionAsked', { name: question.name, date: when(question.askedAt) })}</p>
            <p className="quoted">{question.text}</p>
            {question.answer === null ? (
              <p>{t('questionWaiting')}</p>
            ) : (
              <div className="answer">
                <p className="soft">
                  {t('questionAnswered', {
                    company: letter.document.company.name,
                    date: when(question.answeredAt ?? question.askedAt),
                  })}
                </p>
                <p className="quoted">{question.answer}</p>
              </div>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
