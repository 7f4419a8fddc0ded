import { Link } from '@tanstack/react-router';
import { type AnswerOf, type Finding, type Notice, type NoticeClock, routes } from '@underlath/contract';
import { useState } from 'react';
import { useRoute } from '../../shared/api/hooks.ts';
import { formatDate } from '../../shared/i18n/format.ts';
import { Button } from '../../shared/ui/button.tsx';
import { Reading } from '../desk/reading.tsx';
import { plural } from '../desk/words.ts';
import { NoticeDialog } from './dialog.tsx';
import { NoticeNoted } from './noted.tsx';
import { NoticeTimeline } from './timeline.tsx';
import { daysBetween } from './track.ts';
import { noticeMethodWord } from './words.ts';

export type NoticeAnswer = AnswerOf<typeof routes.getNotice>;

/** Whether the client was told of a finding, by when they have to be, and the notice that does it. */
export function NoticePanel({ finding }: { finding: Finding }) {
  const notice = useRoute(routes.getNotice, { params: { findingId: finding.id } });
  if (notice.data && !notice.data.clock.asked && notice.data.sent.length === 0) return null;
  return (
    <section aria-label="Heads-up notice">
      <h3>Heads-up notice</h3>
      <Reading query={notice} doing="Reading the notice" rows={3}>
        {(data) => <Told finding={finding} notice={data} />}
      </Reading>
    </section>
  );
}

const day = (value: string): string => formatDate(value, 'en-US', 'day');

/** Where it stands, in one sentence. */
export function noticeSentence({ asked, state, dueOn, daysLeft, sentOn }: NoticeClock): string {
  if (sentOn !== null) {
    const late = dueOn === null ? 0 : daysBetween(dueOn, sentOn);
    return late > 0 ? `Sent ${day(sentOn)}, ${plural(late, 'day')} after the last day.` : `Sent ${day(sentOn)}.`;
  }
  if (!asked) return 'No notice is needed any more.';
  if (dueOn === null || daysLeft === null) return 'Not sent yet. Send it now.';
  if (state === 'overdue') return `Overdue by ${plural(-daysLeft, 'day')}: the last day was ${day(dueOn)}.`;
  return daysLeft === 0
    ? 'Today is the last day for it.'
    : `${plural(daysLeft, 'day')} left: send it by ${day(dueOn)}.`;
}

function Told({ finding, notice }: { finding: Finding; notice: NoticeAnswer }) {
  const [open, setOpen] = useState<'mail' | 'noted' | null>(null);
  const { clock, sent } = notice;
  const close = () => setOpen(null);
  return (
    <>
      <p>
        <b>{noticeSentence(clock)}</b>
      </p>
      <NoticeTimeline clock={clock} />
      {clock.cautions.map(({ en }) => (
        <p key={en}>{en}</p>
      ))}
      <Terms clock={clock} projectId={finding.projectId} />
      <SentNotices sent={sent} />
      {finding.state !== 'withdrawn' && (
        <p className="row">
          <Button onClick={() => setOpen('mail')}>
            {sent.length > 0 ? 'Send another notice' : 'Send the heads-up notice'}
          </Button>
          <Button look="quiet" onClick={() => setOpen('noted')}>
            Note one sent another way
          </Button>
        </p>
      )}
      {open === 'mail' && <NoticeDialog finding={finding} notice={notice} onClose={close} />}
      {open === 'noted' && <NoticeNoted finding={finding} notice={notice} onClose={close} />}
    </>
  );
}

function Terms({
  clock: { terms, timeZone, utcOffset, offsetFrom },
  projectId,
}: {
  clock: NoticeClock;
  projectId: string;
}) {
  const kind = terms.dayKind === 'working' ? 'working day' : 'calendar day';
  const days = terms.days === null ? 'promptly, no number of days' : `${plural(terms.days, kind)} from first sight`;
  const how = terms.methods.map((method) => noticeMethodWord(method).toLowerCase()).join(' or ');
  const zone = {
    project: `by the clock of the site, ${timeZone}`,
    photo: `at UTC${utcOffset}, as the phone on site says, until the project says its state and time zone`,
    assumed: `at UTC${utcOffset}, assumed until the project says its state and time zone`,
  }[offsetFrom];
  return (
    <p className="soft small">
      The contract: {days}, {how ? `by ${how}` : 'no method named'} (
      <Link to="/projects/$projectId/contract" params={{ projectId }}>
        its terms
      </Link>
      ). Days are counted {zone}.
    </p>
  );
}

const mailWords: Record<NonNullable<Notice['mail']>, string> = {
  waiting: 'going out',
  'handed-over': 'handed over',
  filed: 'only written to a file',
  refused: 'refused',
  'given-up': 'given up',
};

function SentNotices({ sent }: { sent: readonly Notice[] }) {
  if (sent.length === 0) return null;
  return (
    <ul className="plain-rows">
      {sent.map((notice) => (
        <li key={notice.id}>
          <details>
            <summary>
              {day(notice.sentOn)}: {noticeMethodWord(notice.method).toLowerCase()} to {notice.sentTo}
              {notice.mail && `, ${mailWords[notice.mail]}`} <span className="soft">({notice.enteredBy.name})</span>
            </summary>
            <p className="notice-words">{notice.text}</p>
          </details>
        </li>
      ))}
    </ul>
  );
}
