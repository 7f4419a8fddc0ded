import type { RecordEvent } from '@underlath/contract';
import { SEVERITY_WORDS, VERDICT_WORDS } from '@underlath/rules/kernel';
import { formatMoney } from '../../shared/i18n/format.ts';
import { plural } from '../desk/words.ts';

const doings: Record<string, string> = {
  'project.created': 'created the project',
  'project.changed': 'changed the project’s details',
  'location.added': 'added a place',
  'location.changed': 'changed a place',
  'location.removed': 'removed a place',
  'load-path.added': 'described a load path',
  'load-path.changed': 'changed a load path',
  'load-path.removed': 'removed a load path',
  'actual.entered': 'entered what a repair took',
  'actual.taken-back': 'took back an entry of what a repair took',
  'contract.terms-changed': 'wrote the terms of the contract',
  'contract-entry.added': 'entered into the contract',
  'contract-entry.taken-back': 'took back an entry of the contract',
  'notice.mailed': 'mailed a heads-up notice',
  'notice.noted': 'noted a heads-up notice that went out',
  'photo.received': 'sent a photo',
  'photo.linked': 'put a photo to a finding',
  'photo.changed': 'changed a photo’s words',
  'photo.derived': 'made the smaller pictures of a photo',
  'photo.derive-failed': 'could not make the smaller pictures of a photo',
  'finding.noted': 'recorded a finding',
  'finding.changed': 'changed a finding’s words',
  'finding.photos-added': 'added photos to a finding',
  'finding.judged': 'judged a finding',
  'finding.priced': 'priced a finding',
  'finding.repaired': 'marked a finding repaired',
  'finding.proven': 'marked a finding proven',
  'finding.withdrawn': 'withdrew a finding',
  'change-order.created': 'made a change order',
  'change-order.changed': 'changed a change order',
  'change-order.sent': 'sent a change order',
  'change-order.reopened': 'reopened a change order; the old link is dead',
  'change-order.link-renewed': 'made a new client link',
  'change-order.link-revoked': 'revoked the client link',
  'change-order.decided': 'answered a change order',
  'change-order.set-aside': 'set aside a change order',
  'question.asked': 'asked a question',
  'question.answered': 'answered a question',
  'mail.handed-over': 'handed an e-mail to the mail server',
  'mail.filed': 'wrote an e-mail to a file; no mail server is set up',
  'mail.refused': 'had an e-mail refused by the mail server',
  'mail.given-up': 'gave up on an e-mail',
  'mail.sent-again': 'sent an e-mail again',
  'cost-book.saved': 'saved the cost book',
};

/** A kind this screen has no sentence for is shown by its own name, made readable. */
const doingOf = (type: string): string => doings[type] ?? `did “${type.replaceAll(/[.-]/g, ' ')}”`;

const actorWords: Record<RecordEvent['actor']['kind'], string> = {
  member: '',
  'api-key': ' (API key)',
  client: ' (client)',
  system: ' (the program)',
};

const wordOf = (words: Record<string, { en: string }>, value: unknown): string =>
  words[String(value)]?.en.toLowerCase() ?? String(value);

type Told = { key: string; words: (value: unknown) => string };

/** What of the data belongs into the sentence. */
const told: Told[] = [
  { key: 'number', words: (value) => `no. ${value}` },
  { key: 'name', words: (value) => `“${value}”` },
  { key: 'title', words: (value) => `“${value}”` },
  { key: 'headline', words: (value) => `“${value}”` },
  { key: 'verdict', words: (value) => wordOf(VERDICT_WORDS, value) },
  { key: 'severity', words: (value) => wordOf(SEVERITY_WORDS, value) },
  { key: 'kind', words: (value) => String(value).replaceAll('-', ' ') },
  { key: 'method', words: (value) => `by ${String(value).replaceAll('-', ' ')}` },
  { key: 'sentTo', words: (value) => `to ${value}` },
  { key: 'to', words: (value) => `to ${value}` },
  { key: 'serverWords', words: (value) => `“${value}”` },
  { key: 'sentOn', words: (value) => `on ${value}` },
  { key: 'version', words: (value) => `version ${value}` },
  { key: 'totalCents', words: (value) => formatMoney(Number(value), 'en-US', { trim: true }) },
  { key: 'signerName', words: (value) => `signed “${value}”` },
  { key: 'missingReason', words: (value) => `without all that the state’s list asks for, because: ${value}` },
  { key: 'reason', words: (value) => `reason: ${value}` },
  { key: 'caption', words: (value) => `“${value}”` },
  { key: 'text', words: (value) => `“${value}”` },
  { key: 'answer', words: (value) => `“${value}”` },
];

/** How many lines of an estimate somebody set by hand, and why. */
function byHand(overrides: unknown): string[] {
  if (!Array.isArray(overrides) || overrides.length === 0) return [];
  const reasons = overrides.map(({ why }: { why: string }) => why);
  return [`${plural(overrides.length, 'line')} set by hand (${reasons.join('; ')})`];
}

/** Said already when the entry's subject has a name. */
const namedBySubject = new Set(['number', 'title', 'headline']);

/** One entry of the record as a sentence: who did what, to what. */
export function EventWords({ event, subject }: { event: RecordEvent; subject: string | undefined }) {
  const { actor, data, type } = event;
  const details = told.flatMap(({ key, words }) => {
    const value = subject && namedBySubject.has(key) ? undefined : data[key];
    return value === undefined || value === null || value === '' || typeof value === 'object' ? [] : [words(value)];
  });
  return (
    <span>
      <b>{actor.name}</b>
      {actorWords[actor.kind]} {doingOf(type)}
      {subject && `, ${subject}`}
      {details.length > 0 && <span className="soft">: {[...details, ...byHand(data.overrides)].join(', ')}</span>}
    </span>
  );
}
