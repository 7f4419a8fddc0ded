import type { NoticeClock } from '@underlath/contract';
import { findingNotice, type NoticeMethod, type NoticeTerms } from '@underlath/rules';
import { dayOf } from '../../shared/days.ts';
import { toWord } from '../../shared/enum-words.ts';
import { atSite, offsetAt, type SiteClock, siteClock } from '../../shared/site-clock.ts';
import { isWork } from '../../shared/work-stages.ts';
import type { NoticeFinding, NoticeMailState, NoticeProject, NoticeRow } from './notices.repository.ts';

export interface ClockFacts {
  readonly finding: NoticeFinding;
  readonly project: NoticeProject;
  /** Where each mail stands, by its id. */
  readonly mails: ReadonlyMap<string, NoticeMailState>;
  /** The zone that the project's newest photo tells, or null. */
  readonly photoOffset: string | null;
  readonly now: Date;
}

/** The notice clock of one finding, with everything it was worked out from. */
export function findingClock({ finding, project, mails, photoOffset, now }: ClockFacts): NoticeClock {
  const terms = termsOf(project);
  const clock = clockOf(finding, project, photoOffset);
  const firstSeenOn = atSite(finding.seenAt, clock).day;
  const today = atSite(now, clock).day;
  const { cautions, ...told } = findingNotice({
    state: finding.state,
    verdict: finding.verdict && toWord(finding.verdict),
    firstSeenOn,
    today,
    workOn: workOf(finding, clock),
    terms,
    notices: finding.notices.map((row) => toNotice(row, mails)),
  });
  return {
    firstSeenOn,
    today,
    ...told,
    cautions: [...cautions],
    utcOffset: offsetAt(now, clock),
    timeZone: project.timeZone,
    offsetFrom: clock.from,
    terms: { days: terms.days, dayKind: terms.dayKind, methods: [...terms.methods] },
  };
}

/** The project's own zone; where it is not said, the finding's own photos know its place best, then the project's newest. */
export const clockOf = (
  finding: NoticeFinding,
  { timeZone }: Pick<NoticeProject, 'timeZone'>,
  photoOffset: string | null,
): SiteClock =>
  siteClock(timeZone, finding.photos.find(({ photo }) => photo.deviceOffset)?.photo.deviceOffset ?? photoOffset);

/** A project without terms is held to what every contract wants: promptly, and no method is named. */
function termsOf({ terms }: NoticeProject): NoticeTerms {
  return {
    days: terms?.noticeDays ?? null,
    dayKind: terms?.noticeDayKind === 'working' ? 'working' : 'calendar',
    methods: (terms?.noticeMethods ?? []) as NoticeMethod[],
    holidays: (terms?.daysOff ?? []).map(dayOf),
  };
}

function toNotice({ sentOn, method, mailId }: NoticeRow, mails: ReadonlyMap<string, NoticeMailState>) {
  const mail = mailId === null ? undefined : mails.get(mailId);
  const hasFailed = mail === 'refused' || mail === 'givenUp';
  return { on: dayOf(sentOn), method: method as NoticeMethod, hasFailed };
}

/** The days of photos of work at the place: by the camera's own clock, or else the day each arrived. */
const workOf = ({ photos }: NoticeFinding, clock: SiteClock): string[] =>
  photos
    .filter(({ photo }) => isWork(photo.stage))
    .map(({ photo }) => photo.deviceTime?.slice(0, 10) ?? atSite(photo.receivedAt, clock).day);
