import type { BodyOut, Notice, NoticeClock, NoticeDraft, noticeRoutes } from '@underlath/contract';
import { text } from '@underlath/rules';
import { findCheck } from '@underlath/rules/all-checks';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { sha256Of } from '../../platform/hash.ts';
import { newId } from '../../platform/ids.ts';
import type { MailOutbox } from '../../platform/mail/outbox.ts';
import { invalidInput, notFound, ProblemError } from '../../platform/problem-error.ts';
import type { Caller } from '../../shared/caller.ts';
import { assertSameContent, contentHash, makeOnce } from '../../shared/client-ids.ts';
import { assertEmailConfirmed } from '../../shared/confirmed-email.ts';
import { dayOf } from '../../shared/days.ts';
import { toWord } from '../../shared/enum-words.ts';
import { findMemberEmail, namesOf } from '../../shared/members.ts';
import { atSite, latestDay } from '../../shared/site-clock.ts';
import type { ContractProject } from '../contract/contract.service.ts';
import { clientWords } from '../findings/findings.mapper.ts';
import type { RecordsService } from '../records/records.service.ts';
import { clockOf, findingClock } from './finding-clock.ts';
import { type NoticeFacts, noticeLetter } from './notice-letter.ts';
import type { NoticeFinding, NoticeProject, NoticeRow } from './notices.repository.ts';
import * as notices from './notices.repository.ts';

type Send = BodyOut<typeof noticeRoutes.sendNotice>;

/** A finding that still waits for its notice. */
interface DueNotice {
  readonly finding: NoticeFinding;
  readonly dueOn: string | null;
  readonly isOverdue: boolean;
}

/** The clock of each finding's notice, and the heads-up notice that stops it. What went out is never changed. */
export class NoticesService {
  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    private readonly records: RecordsService,
    private readonly outbox: MailOutbox,
  ) {}

  /** @throws ProblemError `not-found` */
  async get(
    { companyId, actor }: Caller,
    findingId: string,
  ): Promise<{ clock: NoticeClock; sent: Notice[]; draft: NoticeDraft }> {
    return this.database.inCompany(companyId, async (tx) => {
      const finding = await requireFinding(tx, companyId, findingId);
      const project = await notices.findProject(tx, companyId, finding.projectId);
      const photoOffset = await notices.findPhotoOffset(tx, companyId, finding.projectId);
      const mails = await notices.mailStates(tx, companyId, finding.notices);
      const facts = await factsOf(tx, { finding, project, photoOffset, sender: actor.name });
      return {
        clock: findingClock({ finding, project, mails, photoOffset, now: this.clock.now() }),
        sent: await toNotices(tx, companyId, finding.notices, mails),
        draft: {
          to: project.clientEmail,
          locale: project.clientLocale === 'es' ? 'es' : 'en',
          letters: { en: noticeLetter(facts, 'en'), es: noticeLetter(facts, 'es') },
        },
      };
    });
  }

  /**
   * Mails a notice, or notes one that went out another way. A mail leaves with this transaction or not at all.
   * @throws ProblemError `not-found`, `wrong-state` for a withdrawn finding, `invalid-input`, `already-exists`
   */
  async send(caller: Caller, findingId: string, body: Send): Promise<Notice> {
    const { companyId } = caller;
    return makeOnce(() =>
      this.database.inCompany(companyId, async (tx) => {
        const rows = [await this.add(tx, caller, findingId, body)];
        const [notice] = await toNotices(tx, companyId, rows, await notices.mailStates(tx, companyId, rows));
        return notice as Notice;
      }),
    );
  }

  private async add(tx: Tx, caller: Caller, findingId: string, { id = newId(), ...content }: Send): Promise<NoticeRow> {
    const { companyId, memberId, actor } = caller;
    const kept = { findingId, ...content };
    const type = content.how === 'mail' ? 'notice.mailed' : 'notice.noted';
    const known = await notices.findNotice(tx, companyId, id);
    if (known) {
      assertSameContent('notice', (await this.records.lastData(tx, companyId, id, type))?.contentSha256, kept);
      return known;
    }
    const { projectId } = await requireFinding(tx, companyId, findingId);
    await this.records.lock(tx, companyId, projectId);
    const finding = await requireFinding(tx, companyId, findingId);
    const { number, title } = finding;
    if (finding.state === 'withdrawn')
      throw new ProblemError('wrong-state', `Finding ${number} was withdrawn; there is nothing to tell of.`);
    const now = this.clock.now();
    // Another notice, by whatever way, stands for a mail of this finding that did not arrive.
    await notices.replaceMails(tx, companyId, findingId, now);
    const row = await notices.insertNotice(tx, {
      companyId,
      id,
      projectId,
      findingId,
      ...(content.how === 'mail'
        ? await this.mail(tx, caller, finding, id, content)
        : await this.noted(tx, finding, content)),
      enteredAt: now,
      enteredById: memberId,
    });
    const data = {
      number,
      title,
      method: row.method,
      sentOn: dayOf(row.sentOn),
      sentTo: row.sentTo,
      textSha256: sha256Of(row.text),
      contentSha256: contentHash(kept),
    };
    await this.records.append(tx, { companyId, projectId, actor, type, subjectId: id, data });
    return row;
  }

  /** Leaves the letter in the outbox; the subject says only which finding it is about. */
  private async mail(
    tx: Tx,
    { companyId, memberId, actor }: Caller,
    finding: NoticeFinding,
    noticeId: string,
    { to, locale, text: words }: Extract<Send, { how: 'mail' }>,
  ) {
    await assertEmailConfirmed(tx, companyId, memberId);
    const project = await notices.findProject(tx, companyId, finding.projectId);
    const photoOffset = await notices.findPhotoOffset(tx, companyId, finding.projectId);
    const { subject } = noticeLetter(await factsOf(tx, { finding, project, photoOffset, sender: actor.name }), locale);
    const about = { kind: 'notice', projectId: finding.projectId, noticeId } as const;
    const writerEmail = await findMemberEmail(tx, companyId, memberId);
    const mailId = await this.outbox.post(tx, companyId, { to, subject, text: words, locale, writerEmail }, about);
    const { day } = atSite(this.clock.now(), clockOf(finding, project, photoOffset));
    return { method: 'e-mail', sentOn: new Date(day), sentTo: to, text: words, mailId };
  }

  /** @throws ProblemError `invalid-input` for a day that has not begun at the site */
  private async noted(
    tx: Tx,
    finding: NoticeFinding,
    { method, sentOn, to, text: words }: Extract<Send, { how: 'noted' }>,
  ) {
    const { companyId, projectId } = finding;
    const project = await notices.findProject(tx, companyId, projectId);
    const photoOffset = await notices.findPhotoOffset(tx, companyId, projectId);
    if (sentOn > latestDay(this.clock.now(), clockOf(finding, project, photoOffset)))
      throw invalidInput('/sentOn', `sentOn: ${sentOn} is still to come; note a notice once it has gone out.`);
    return { method, sentOn: new Date(sentOn), sentTo: to, text: words };
  }

  /** Findings of a project whose notice has not gone out, in the caller's transaction. */
  async due(tx: Tx, project: ContractProject, take: number): Promise<DueNotice[]> {
    const { companyId, id, photos } = project;
    const findings = await notices.listUnsettled(tx, companyId, id, take);
    const photoOffset = photos[0]?.deviceOffset ?? null;
    const mails = await notices.mailStates(
      tx,
      companyId,
      findings.flatMap((finding) => finding.notices),
    );
    const now = this.clock.now();
    return findings.flatMap((finding) => {
      const { asked, sentOn, dueOn, state } = findingClock({ finding, project, mails, photoOffset, now });
      return asked && sentOn === null ? [{ finding, dueOn, isOverdue: state === 'overdue' }] : [];
    });
  }
}

async function requireFinding(tx: Tx, companyId: string, id: string): Promise<NoticeFinding> {
  const finding = await notices.findFinding(tx, companyId, id);
  if (!finding) throw notFound('finding');
  return finding;
}

interface Parts {
  finding: NoticeFinding;
  project: NoticeProject;
  photoOffset: string | null;
  sender: string;
}

async function factsOf(tx: Tx, { finding, project, photoOffset, sender }: Parts): Promise<NoticeFacts> {
  const { number, title, checkId, location, severity, seenAt, judgments } = finding;
  const check = findCheck(checkId);
  const clock = clockOf(finding, project, photoOffset);
  const { day, time } = atSite(seenAt, clock);
  const { name, phone, email } = await notices.findCompany(tx, project.companyId);
  return {
    number,
    // A title that nobody wrote is the check's own, which both languages have.
    title: check && check.title.en === title ? check.title : text(title, title),
    found: clientWords(judgments[0])?.found ?? text('', ''),
    place: location.name,
    seen: clock.from === 'assumed' ? { day, time: null } : { day, time },
    isUnsafe: severity === 'makeSafe',
    project,
    company: { name, phone, email },
    sender,
  };
}

async function toNotices(
  tx: Tx,
  companyId: string,
  rows: readonly NoticeRow[],
  mails: ReadonlyMap<string, notices.NoticeMailState>,
): Promise<Notice[]> {
  const names = await namesOf(
    tx,
    companyId,
    rows.map(({ enteredById }) => enteredById),
  );
  return rows.map(({ id, method, sentOn, sentTo, text: words, mailId, enteredAt, enteredById }) => ({
    id,
    method: method as Notice['method'],
    sentOn: dayOf(sentOn),
    sentTo,
    text: words,
    mail: mailId === null ? null : toWord(mails.get(mailId) ?? 'waiting'),
    enteredAt: enteredAt.toISOString(),
    enteredBy: { id: enteredById, name: names.get(enteredById) ?? '' },
  }));
}
