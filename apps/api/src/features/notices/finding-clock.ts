import type { NoticeClock } from '@underlath/contract';
import { type NoticeMethod, type NoticeTerms, runNoticeClock, type SentNotice, text } from '@underlath/rules';
import { dayOf } from '../../shared/days.ts';
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

const FAILED_MAIL = text(
  'An e-mail with the notice did not go out; send it again, or in another way.',
  'Un correo con el aviso no salió; envíelo otra vez o de otra manera.',
);

/** The notice clock of one finding, with everything it was worked out from. */
export function findingClock({ finding, project, mails, photoOffset, now }: ClockFacts): NoticeClock {
  const terms = termsOf(project);
  const clock = clockOf(finding, project, photoOffset);
  const firstSeenOn = atSite(finding.seenAt, clock).day;
  const today = atSite(now, clock).day;
  const disturbedOn = firstWorkOn(finding, clock);
  const { cautions, ...told } = runNoticeClock({
    firstSeenOn,
    terms,
    sent: finding.notices.filter((row) => !hasFailed(row, mails)).map(toSent),
    today,
    ...(disturbedOn !== undefined && { disturbedOn }),
  });
  const failed = told.sentOn === null && finding.notices.some((row) => hasFailed(row, mails));
  return {
    asked: isAsked(finding, terms),
    firstSeenOn,
    today,
    ...told,
    cautions: [...(failed ? [FAILED_MAIL] : []), ...cautions],
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

const agreed: readonly NoticeFinding['state'][] = ['approved', 'repaired', 'proven', 'withdrawn'];
const offered: readonly NoticeFinding['state'][] = ['offered', 'declined'];

/**
 * What meets is no hidden condition to tell of, and what was agreed in writing is known. A change order that was sent tells
 * of it too, and is enough where the contract names neither days nor a method.
 */
function isAsked({ state, verdict }: NoticeFinding, { days, methods }: NoticeTerms): boolean {
  if (agreed.includes(state) || verdict === 'meets' || verdict === 'notApplicable') return false;
  return !offered.includes(state) || days !== null || methods.length > 0;
}

const hasFailed = ({ mailId }: NoticeRow, mails: ReadonlyMap<string, NoticeMailState>): boolean => {
  const state = mailId === null ? undefined : mails.get(mailId);
  return state === 'refused' || state === 'givenUp';
};

const toSent = ({ sentOn, method }: NoticeRow): SentNotice => ({ on: dayOf(sentOn), method: method as NoticeMethod });

/** The day of the first photo of work at the place: by the camera's own clock, or else the day it arrived. */
function firstWorkOn({ photos }: NoticeFinding, clock: SiteClock): string | undefined {
  const days = photos
    .filter(({ photo }) => isWork(photo.stage))
    .map(({ photo }) => photo.deviceTime?.slice(0, 10) ?? atSite(photo.receivedAt, clock).day);
  return days.sort()[0];
}
