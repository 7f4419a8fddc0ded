import type { RecordEvent } from '@underlath/contract';
import { type ExpectedRows, JustBefore, OneOf } from './expected-rows.ts';

export type ReplayedEvent = Pick<RecordEvent, 'seq' | 'type' | 'subjectId' | 'actor' | 'data'> & { at: Date };
type Data = RecordEvent['data'];
type Step = (rows: ExpectedRows, event: ReplayedEvent) => void;

/** A member's own id; what an API key does is put down to whoever made the key, which the event does not say. */
const memberOf = ({ actor }: ReplayedEvent): string | undefined => (actor.kind === 'member' ? actor.id : undefined);
const now = ({ at }: ReplayedEvent) => new JustBefore(at);
const idsOf = (value: unknown): string[] => (Array.isArray(value) ? value.map(String) : []);
const taken = { takenBackAt: null, takenBackWhy: null };

const takeBack =
  (table: 'actual' | 'contract_entry'): Step =>
  (rows, event) =>
    rows.change(table, event.subjectId, { takenBackAt: now(event), takenBackWhy: event.data.reason });

/** What every kind of event makes of the rows, kind by kind; a new kind of event gets its step here. */
export const replaySteps: Readonly<Record<string, Step>> = {
  'project.created': (rows, { subjectId, data }) =>
    rows.put('project', subjectId, {
      clientEmail: null,
      yearBuilt: null,
      startOn: null,
      siteState: null,
      timeZone: null,
      ...data,
    }),
  'project.changed': (rows, { subjectId, data }) => rows.change('project', subjectId, data),

  'location.added': (rows, { subjectId, data }) => rows.put('location', subjectId, data),
  'location.changed': (rows, { subjectId, data }) => rows.change('location', subjectId, data),
  'location.removed': (rows, { subjectId }) => rows.remove('location', subjectId),

  'load-path.added': (rows, event) =>
    rows.put('load_path', event.subjectId, { ...lineOf(event.data), createdAt: now(event), changedAt: now(event) }),
  'load-path.changed': (rows, event) =>
    rows.change('load_path', event.subjectId, { ...lineOf(event.data), changedAt: now(event) }),
  'load-path.removed': (rows, { subjectId }) => rows.remove('load_path', subjectId),

  'photo.received': (rows, event) => {
    const { subjectId, data } = event;
    const start = { derivativeState: 'waiting', derivativeReason: null, viewSha256: null };
    const told = { deviceTime: null, deviceOffset: null, ...data };
    rows.put('photo', subjectId, { ...start, ...told, uploadedById: memberOf(event) });
    link(rows, data.findingId, subjectId);
  },
  'photo.linked': (rows, { subjectId, data }) => link(rows, data.findingId, subjectId),
  'photo.changed': (rows, { subjectId, data }) => rows.change('photo', subjectId, data),
  'photo.derived': (rows, { subjectId, data: { viewSha256 } }) =>
    rows.change('photo', subjectId, { derivativeState: 'ready', derivativeReason: null, viewSha256 }),
  'photo.derive-failed': (rows, { subjectId, data: { reason } }) =>
    rows.change('photo', subjectId, { derivativeState: 'failed', derivativeReason: reason }),
  'photo.derive-again': (rows, { subjectId }) =>
    rows.change('photo', subjectId, { derivativeState: 'waiting', derivativeReason: null }),

  'finding.noted': (rows, event) => {
    const start = { state: 'noted', stateReason: null, extent: null, estimate: null, verdict: null, severity: null };
    rows.put('finding', event.subjectId, { ...start, ...event.data, createdById: memberOf(event) });
    for (const photoId of idsOf(event.data.photoIds)) link(rows, event.subjectId, photoId);
  },
  'finding.changed': (rows, { subjectId, data }) => rows.change('finding', subjectId, data),
  'finding.photos-added': (rows, { subjectId, data }) => {
    for (const photoId of idsOf(data.photoIds)) link(rows, subjectId, photoId);
  },
  'finding.judged': judge,
  'finding.priced': (rows, { subjectId, data: { totalCents: _total, ...estimate } }) =>
    rows.change('finding', subjectId, { state: 'priced', estimate }),
  'finding.repaired': move('repaired'),
  'finding.proven': move('proven'),
  'finding.withdrawn': move('withdrawn'),

  'actual.entered': (rows, event) =>
    rows.put('actual', event.subjectId, {
      note: '',
      ...event.data,
      ...taken,
      enteredAt: now(event),
      enteredById: memberOf(event),
    }),
  'actual.taken-back': takeBack('actual'),

  'contract.terms-changed': (rows, event) => {
    const { netDecreaseReturnsOverheadAndProfit: netDecreaseReturns, ...terms } = event.data;
    const values = { noticeDays: null, ...terms, netDecreaseReturns, changedAt: now(event) };
    rows.put('contract_terms', event.subjectId, values);
  },
  'contract-entry.added': (rows, event) => {
    const sums = { cents: null, allowedCents: null, spentCents: null, overheadProfitPct: null, milestoneId: null };
    const entered = { enteredAt: now(event), enteredById: memberOf(event) };
    rows.put('contract_entry', event.subjectId, { ...sums, ...event.data, ...taken, ...entered });
  },
  'contract-entry.taken-back': takeBack('contract_entry'),

  'notice.mailed': notice,
  'notice.noted': notice,

  'change-order.created': (rows, event) => {
    const start = { state: 'draft', sentVersion: null, totalCents: 0, decidedAt: null };
    const made = { createdAt: now(event), createdById: memberOf(event) };
    rows.put('change_order', event.subjectId, { ...start, ...event.data, ...made });
    group(rows, event.subjectId, idsOf(event.data.findingIds));
  },
  'change-order.changed': (rows, { subjectId, data: { days, wordingSha256, findingIds } }) => {
    rows.change('change_order', subjectId, { state: 'draft', sentVersion: null, days, wordingSha256 });
    if (findingIds) group(rows, subjectId, idsOf(findingIds));
  },
  'change-order.sent': (rows, event) => {
    const { subjectId, data } = event;
    const { version, sha256, totalCents, days } = data;
    rows.change('change_order', subjectId, { state: 'sent', sentVersion: version, totalCents, days });
    const sent = { sha256, sentAt: now(event), sentById: memberOf(event) };
    rows.put('change_order_version', `${subjectId}/${version}`, sent);
    moveMembers(rows, subjectId, 'priced', () => 'offered');
  },
  'change-order.reopened': (rows, { subjectId }) => moveMembers(rows, subjectId, 'offered', () => 'priced'),
  'change-order.set-aside': (rows, { subjectId }) => {
    rows.change('change_order', subjectId, { state: 'set-aside' });
    moveMembers(rows, subjectId, 'offered', () => 'priced');
  },
  'change-order.link-renewed': () => {},
  'change-order.link-revoked': () => {},
  'change-order.decided': decide,

  // What became of a mail is told by the record alone; the mail itself is no part of the job.
  'mail.handed-over': () => {},
  'mail.filed': () => {},
  'mail.refused': () => {},
  'mail.given-up': () => {},
  'mail.sent-again': () => {},

  'question.asked': (rows, event) => {
    const { questionId, version, text } = event.data;
    const open = { answer: null, answeredAt: null, answeredById: null };
    const asked = { changeOrderId: event.subjectId, version, name: event.actor.name, text, askedAt: now(event) };
    rows.put('question', String(questionId), { ...asked, ...open });
  },
  'question.answered': (rows, event) => {
    const { questionId, answer } = event.data;
    const answered = { answer, answeredAt: now(event), answeredById: memberOf(event) };
    rows.change('question', String(questionId), answered);
  },
};

function lineOf({ lineAbove, ...told }: Data): Data {
  if (lineAbove === undefined) return told;
  const { loadPathId = null, floorDepthIn = null } = (lineAbove ?? {}) as Data;
  return { ...told, lineAboveId: loadPathId, floorDepthIn };
}

function link(rows: ExpectedRows, findingId: unknown, photoId: string): void {
  const key = `${findingId}/${photoId}`;
  if (typeof findingId === 'string' && !rows.of('finding_photo').has(key)) rows.put('finding_photo', key, {});
}

function move(state: string): Step {
  return (rows, { subjectId, data }) => rows.change('finding', subjectId, { state, stateReason: data.reason || null });
}

function judge(rows: ExpectedRows, event: ReplayedEvent): void {
  const { subjectId, data } = event;
  const { judgmentId, seq, sha256, verdict, severity, state } = data;
  const judged = { findingId: subjectId, seq, sha256, judgedAt: now(event), judgedById: memberOf(event) };
  rows.put('judgment', String(judgmentId), judged);
  const before = rows.value('finding', subjectId, 'state');
  const isOpen = before instanceof OneOf || before === 'noted' || before === 'judged';
  // Older events do not say whether something was missing, and so which of the two it became.
  const after = state ?? (isOpen ? new OneOf(['noted', 'judged']) : undefined);
  rows.change('finding', subjectId, { verdict, severity, state: after, newestJudgmentId: judgmentId });
}

/** The event names the finding by its number. */
function notice(rows: ExpectedRows, event: ReplayedEvent): void {
  const { number, ...told } = event.data;
  const findings = [...rows.of('finding')];
  const [findingId] = findings.find(([, { columns }]) => columns.get('number')?.value === number) ?? [];
  const entered = { enteredAt: now(event), enteredById: memberOf(event) };
  rows.put('notice', event.subjectId, { ...told, findingId, ...entered });
}

function membersOf(rows: ExpectedRows, orderId: string): string[] {
  const keys = [...rows.of('change_order_finding').keys()].filter((key) => key.startsWith(`${orderId}/`));
  return keys.map((key) => key.slice(orderId.length + 1));
}

function group(rows: ExpectedRows, orderId: string, findingIds: readonly string[]): void {
  for (const id of membersOf(rows, orderId)) rows.remove('change_order_finding', `${orderId}/${id}`);
  for (const [position, id] of findingIds.entries()) rows.put('change_order_finding', `${orderId}/${id}`, { position });
}

function moveMembers(rows: ExpectedRows, orderId: string, from: string, to: (findingId: string) => unknown): void {
  for (const id of membersOf(rows, orderId)) {
    if (rows.value('finding', id, 'state') === from) rows.change('finding', id, { state: to(id) });
  }
}

/** What a part comes to stands in the signed document, which `settleParts` reads. */
function decide(rows: ExpectedRows, event: ReplayedEvent): void {
  const { subjectId, data } = event;
  const { version, kind, decidedAt } = data;
  const approved = idsOf(data.findingIds);
  const isPart = approved.length > 0;
  const noConsent = kind === 'declined' ? { consentId: null, consentSha256: null } : {};
  const told = {
    letterFor: null,
    acknowledged: null,
    ...noConsent,
    ...data,
    findingIds: approved,
    linkId: event.actor.id,
  };
  rows.put('decision', `${subjectId}/${version}`, told);
  rows.change('change_order', subjectId, { state: isPart ? 'part-approved' : kind, decidedAt });
  moveMembers(rows, subjectId, 'offered', (id) => (isPart && !approved.includes(id) ? 'declined' : kind));
}
