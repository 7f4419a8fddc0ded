import { type FindingState, type Text, text, type Verdict } from '../kernel/index.ts';
import { type NoticeClock, type NoticeTerms, runNoticeClock, type SentNotice } from './notice-clock.ts';

/** What the notice of one finding hangs on. Days are dates at the site, `YYYY-MM-DD`. */
export interface FindingNoticeFacts {
  readonly state: FindingState;
  /** Null while nothing was measured. */
  readonly verdict: Verdict | null;
  readonly firstSeenOn: string;
  readonly today: string;
  /** Days on which work at the place was seen, in any order. */
  readonly workOn: readonly string[];
  readonly terms: NoticeTerms;
  readonly notices: readonly (SentNotice & { readonly hasFailed: boolean })[];
}

/** The notice clock of a finding, and whether a notice is asked for at all. */
export interface FindingNotice extends NoticeClock {
  readonly asked: boolean;
}

const FAILED_MAIL = text(
  'An e-mail with the notice did not go out; send it again, or in another way.',
  'Un correo con el aviso no salió; envíelo otra vez o de otra manera.',
);

/** Works out by when a finding is to be told of. A mail that did not go out tells nothing. Throws RangeError for what is no day. */
export function findingNotice(facts: FindingNoticeFacts): FindingNotice {
  const { firstSeenOn, today, workOn, terms, notices } = facts;
  const [disturbedOn] = workOn.toSorted();
  const told = runNoticeClock({
    firstSeenOn,
    terms,
    sent: notices.filter(({ hasFailed }) => !hasFailed),
    today,
    ...(disturbedOn !== undefined && { disturbedOn }),
  });
  const failed: Text[] = told.sentOn === null && notices.some(({ hasFailed }) => hasFailed) ? [FAILED_MAIL] : [];
  return { asked: isAsked(facts), ...told, cautions: [...failed, ...told.cautions] };
}

const agreed: readonly FindingState[] = ['approved', 'repaired', 'proven', 'withdrawn'];
const offered: readonly FindingState[] = ['offered', 'declined'];

/**
 * What meets is no hidden condition to tell of, and what was agreed in writing is known. A change order that was sent tells
 * of it too, and is enough where the contract names neither days nor a method.
 */
function isAsked({ state, verdict, terms: { days, methods } }: FindingNoticeFacts): boolean {
  if (agreed.includes(state) || verdict === 'meets' || verdict === 'not-applicable') return false;
  return !offered.includes(state) || days !== null || methods.length > 0;
}
