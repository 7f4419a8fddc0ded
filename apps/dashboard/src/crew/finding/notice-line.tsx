import { type NoticeClock, routes } from '@underlath/contract';
import { problemOf } from '../../shared/api/errors.ts';
import { useRoute } from '../../shared/api/hooks.ts';
import { formatDate } from '../../shared/i18n/format.ts';
import { useLocale, useT } from '../../shared/i18n/locale.tsx';
import { crewWords } from '../../shared/i18n/messages/crew.ts';
import { FailState } from '../../shared/ui/states.tsx';

/** By when the office has to tell the client, or that it did. The crew sees it; only the office sends. */
export function NoticeLine({ findingId }: { findingId: string }) {
  const t = useT(crewWords);
  const { tag } = useLocale();
  const notice = useRoute(routes.getNotice, { params: { findingId } });
  if (notice.error && !notice.data)
    return (
      <FailState
        problem={problemOf(notice.error)}
        doing={t('reading', { what: t('theNotice') })}
        onRetry={() => notice.refetch()}
        retrying={notice.isFetching}
      />
    );
  const clock = notice.data?.clock;
  if (!clock || (!clock.asked && clock.sentOn === null)) return null;
  const day = (value: string) => formatDate(value, tag, 'long-day');
  return (
    <section aria-label={t('noticeTitle')}>
      <h2>{t('noticeTitle')}</h2>
      <p>
        <b>{said(clock)}</b> {clock.sentOn === null && t('noticeLeave')}
      </p>
    </section>
  );

  function said({ sentOn, dueOn, state }: NoticeClock): string {
    if (sentOn !== null) return t('noticeSent', { day: day(sentOn) });
    if (dueOn === null) return t('noticeNow');
    return t(state === 'overdue' ? 'noticeOverdue' : 'noticeBy', { day: day(dueOn) });
  }
}
