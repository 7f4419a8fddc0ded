import type { Severity, Todo } from '@underlath/contract';
import { toWord } from '../../shared/enum-words.ts';
import { readWording } from '../../shared/stored/stored-columns.ts';
import type { Undelivered } from '../mail/sent-mails.service.ts';
import type { listAwaited, listFailedPhotos, listUnsettled } from './projects.repository.ts';

type UnsettledFinding = Awaited<ReturnType<typeof listUnsettled>>[number];
type AwaitedOrder = Awaited<ReturnType<typeof listAwaited>>[number];
type FailedPhoto = Awaited<ReturnType<typeof listFailedPhotos>>[number];
type Kind = Todo['kind'];

/** A finding whose notice has not gone out, with the last day for it where the contract names one. */
export interface DueNotice {
  readonly finding: Pick<UnsettledFinding, 'id' | 'title' | 'severity' | 'location'> & { readonly seenAt: Date };
  readonly dueOn: string | null;
  readonly isOverdue: boolean;
}

/** What cannot wait comes first; the paid work that only has to be done comes last. */
const urgency: readonly Kind[] = [
  'make-safe',
  'notice-overdue',
  'engineer',
  'notice',
  'mail-failed',
  'answer-question',
  'mail-waiting',
  'photo-failed',
  'measure',
  'price',
  'offer',
  'await-client',
  'repair',
  'prove',
];

/** Everything in a project that needs somebody, most urgent first; of each kind the nearest last day first, then the oldest. */
export function listTodo(
  findings: UnsettledFinding[],
  orders: AwaitedOrder[],
  photos: FailedPhoto[],
  notices: DueNotice[],
  mails: Undelivered[],
): Todo[] {
  return [
    ...findings.flatMap(ofFinding),
    ...orders.flatMap(ofOrder),
    ...photos.map(ofPhoto),
    ...notices.map(ofNotice),
    ...mails.map(ofMail),
  ].sort(
    (a, b) =>
      urgency.indexOf(a.kind) - urgency.indexOf(b.kind) ||
      (a.dueOn ?? '').localeCompare(b.dueOn ?? '') ||
      a.since.localeCompare(b.since),
  );
}

/** A grave finding asks twice: for the person on site, and for the next step of its paper. */
function ofFinding(finding: UnsettledFinding): Todo[] {
  const severity = finding.severity && toWord(finding.severity);
  const kinds = [alarmOf(finding, severity), nextStep(finding, severity)].filter((kind) => kind !== undefined);
  return kinds.map((kind) => ({
    kind,
    severity,
    title: finding.title,
    where: finding.location.name,
    findingId: finding.id,
    changeOrderId: null,
    dueOn: null,
    since: finding.seenAt.toISOString(),
  }));
}

function alarmOf({ state }: UnsettledFinding, severity: Severity | null): Kind | undefined {
  if (severity === 'make-safe' && state !== 'repaired') return 'make-safe';
  return severity === 'engineer' && (state === 'noted' || state === 'judged') ? 'engineer' : undefined;
}

function nextStep({ state, verdict }: UnsettledFinding, severity: Severity | null): Kind | undefined {
  if (state === 'noted') return 'measure';
  if (state === 'judged') return severity !== 'record' || verdict === 'fails' ? 'price' : undefined;
  if (state === 'priced') return 'offer';
  if (state === 'approved') return 'repair';
  return state === 'repaired' ? 'prove' : undefined;
}

function ofOrder({ id, number, state, wording, createdAt, versions, questions }: AwaitedOrder): Todo[] {
  const headline = readWording(id, wording).headline.en;
  const about = { severity: null, where: headline || String(number), findingId: null, changeOrderId: id, dueOn: null };
  const sentAt = versions[0]?.sentAt ?? createdAt;
  const asked = questions.map(({ text, askedAt }) => ({
    ...about,
    kind: 'answer-question' as const,
    title: text.slice(0, 200),
    since: askedAt.toISOString(),
  }));
  if (state !== 'sent') return asked;
  const awaited = { kind: 'await-client' as const, title: headline || String(number), where: `Change order ${number}` };
  return [...asked, { ...about, ...awaited, since: sentAt.toISOString() }];
}

const ofPhoto = ({ caption, derivativeReason, receivedAt, findings }: FailedPhoto): Todo => ({
  kind: 'photo-failed',
  severity: null,
  title: derivativeReason ?? '',
  where: caption,
  findingId: findings[0]?.findingId ?? null,
  changeOrderId: null,
  dueOn: null,
  since: receivedAt.toISOString(),
});

/** The last day is told where the contract names one; else it only says promptly. */
const ofNotice = ({ finding, dueOn, isOverdue }: DueNotice): Todo => ({
  kind: isOverdue ? 'notice-overdue' : 'notice',
  severity: finding.severity && toWord(finding.severity),
  title: finding.title,
  where: finding.location.name,
  findingId: finding.id,
  changeOrderId: null,
  dueOn,
  since: finding.seenAt.toISOString(),
});

/** Whom it did not reach, what it was about, and in the mail server's own words why. */
const ofMail = ({ state, to, serverWords, changeOrder, findingId, postedAt }: Undelivered): Todo => ({
  kind: state === 'waiting' ? 'mail-waiting' : 'mail-failed',
  severity: null,
  title: to,
  where: [changeOrder ? `Change order ${changeOrder.number}` : 'Heads-up notice', serverWords]
    .filter(Boolean)
    .join(': '),
  findingId,
  changeOrderId: changeOrder?.id ?? null,
  dueOn: null,
  since: postedAt.toISOString(),
});
