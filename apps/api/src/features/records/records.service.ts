import type { RecordCheck, RecordEvent } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { canonicalJson } from '../../platform/hash.ts';
import { notFound } from '../../platform/problem-error.ts';
import { type Actor, systemActor } from '../../shared/actor.ts';
import { type CompanyCheck, CompanyVerifier } from './company-verifier.ts';
import type { StoredEvent, Witness } from './record-chain.ts';
import { chainHash, emptyHash } from './record-hash.ts';
import { readRows } from './record-rows.repository.ts';
import { RecordVerifier } from './record-verifier.ts';
import type { KeptWitness, RecordWitnesses } from './record-witnesses.ts';
import * as records from './records.repository.ts';

export interface Entry {
  companyId: string;
  projectId: string;
  actor: Actor;
  type: string;
  /** What it is about: a finding, a photo, a change order… */
  subjectId: string;
  data: Record<string, unknown>;
}

export interface RecordHead {
  seq: number;
  hash: string;
}

/** Kinds of events after which the place of the record is kept outside of the database: what owes, binds or was answered. */
const witnessed = new Set([
  'project.opened',
  'cost-book.saved',
  'contract.terms-changed',
  'contract-entry.added',
  'contract-entry.taken-back',
  'notice.mailed',
  'notice.noted',
  'change-order.sent',
  'change-order.decided',
  'question.asked',
  'question.answered',
  'mail.handed-over',
  'mail.filed',
  'mail.refused',
  'mail.given-up',
]);

/** Events read at once while verifying; bounds memory, not the record. */
const batch = 1000;

/** The append-only event log of each project. Every change of state appends in its own transaction. */
export class RecordsService {
  /** Where each project's record stands for a transaction that has its turn: nobody else can move it until it ends. */
  private readonly turns = new WeakMap<Tx, Map<string, RecordHead>>();

  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
    /** Absent where nothing is recorded, only verified. */
    private readonly witnesses?: RecordWitnesses,
  ) {}

  /** Opens an empty record together with its project, and says so in the record of the company. */
  async open(tx: Tx, companyId: string, projectId: string, actor: Actor): Promise<void> {
    const entry = { companyId, actor, type: 'project.opened', subjectId: projectId, data: {} };
    await this.appendToCompany(tx, entry);
    await records.insertHead(tx, companyId, projectId, emptyHash);
  }

  /**
   * Adds to the record of the company itself, which stands beside those of its projects under the company's own id. It
   * begins with what there was before anything was recorded of the company.
   */
  async appendToCompany(tx: Tx, entry: Omit<Entry, 'projectId'>): Promise<void> {
    const { companyId } = entry;
    if (await records.insertHead(tx, companyId, companyId, emptyHash)) {
      const { projectIds, costBooks } = await records.readCompany(tx, companyId);
      const opened = { type: 'company.record-opened', subjectId: companyId, data: { projectIds, costBooks } };
      await this.add(tx, { companyId, projectId: companyId, actor: systemActor, ...opened });
    }
    await this.add(tx, { ...entry, projectId: companyId });
  }

  /** Whether the company has this project. */
  async exists(tx: Tx, companyId: string, projectId: string): Promise<boolean> {
    return projectId !== companyId && (await records.findHead(tx, companyId, projectId)) !== null;
  }

  /**
   * Takes the project's turn until the transaction ends, so that what is read next (a number, an earlier row) stays true.
   * @throws ProblemError `not-found`
   */
  async lock(tx: Tx, companyId: string, projectId: string): Promise<RecordHead> {
    if (projectId === companyId) throw notFound('project');
    return this.take(tx, companyId, projectId);
  }

  /** The same for the project of a finding or a change order; answers which project it is. @throws ProblemError `not-found` */
  async lockOf(tx: Tx, companyId: string, subject: records.LockedBy, id: string): Promise<string> {
    const found = await records.lockHeadOf(tx, companyId, subject, id);
    if (!found) throw notFound(subject === 'finding' ? 'finding' : 'change order');
    const { projectId, seq, hash } = found;
    // Where this transaction has its turn already, what it added since is kept beside it.
    if (!this.turns.get(tx)?.has(projectId)) this.keep(tx, projectId, { seq, hash });
    return projectId;
  }

  private async take(tx: Tx, companyId: string, projectId: string): Promise<RecordHead> {
    const held = this.turns.get(tx)?.get(projectId);
    if (held) return held;
    const head = await records.lockHead(tx, companyId, projectId);
    if (!head) throw notFound('project');
    this.keep(tx, projectId, head);
    return head;
  }

  /** Adds one event and returns where the record then stands. @throws ProblemError `not-found` */
  async append(tx: Tx, entry: Entry): Promise<RecordHead> {
    if (entry.projectId === entry.companyId) throw notFound('project');
    return this.add(tx, entry);
  }

  private async add(tx: Tx, { companyId, projectId, actor, type, subjectId, data }: Entry): Promise<RecordHead> {
    const head = await this.take(tx, companyId, projectId);
    const seq = head.seq + 1;
    const at = this.clock.now();
    const body = canonicalJson({ projectId, seq, at: at.toISOString(), type, subjectId, actor, data });
    const hash = chainHash(head.hash, body);
    await records.insertEvent(tx, companyId, projectId, { seq, at, type, subjectId, body, prevHash: head.hash, hash });
    this.keep(tx, projectId, { seq, hash });
    if (witnessed.has(type)) await this.witnesses?.leave(tx, { companyId, recordId: projectId, seq, hash });
    return { seq, hash };
  }

  private keep(tx: Tx, projectId: string, head: RecordHead): void {
    const turns = this.turns.get(tx) ?? new Map<string, RecordHead>();
    this.turns.set(tx, turns.set(projectId, head));
  }

  /** The data of the newest event of one kind about one thing, or undefined. */
  async lastData(tx: Tx, companyId: string, subjectId: string, type: string): Promise<Entry['data'] | undefined> {
    const body = await records.findEventBody(tx, companyId, subjectId, type);
    return body === undefined ? undefined : (JSON.parse(body) as { data: Entry['data'] }).data;
  }

  /** Newest first. @throws ProblemError `not-found` */
  async list(companyId: string, projectId: string, beforeSeq: number, limit: number): Promise<RecordEvent[]> {
    return this.database.inCompany(companyId, async (tx) => {
      if (!(await this.exists(tx, companyId, projectId))) throw notFound('project');
      const events = await records.listEvents(tx, companyId, projectId, beforeSeq, limit);
      return events.map(({ seq, at, type, subjectId, body, prevHash, hash }) => {
        const { actor, data } = JSON.parse(body) as Pick<RecordEvent, 'actor' | 'data'>;
        return { seq, at: at.toISOString(), type, subjectId, actor, data, prevHash, hash };
      });
    });
  }

  /**
   * Compares the record of a project with itself, with its rows, and with where it stood by the witnesses: those kept in
   * the file store, unless others are given, and those handed in.
   * @throws ProblemError `not-found`
   */
  async verify(
    companyId: string,
    projectId: string,
    handed: readonly Witness[] = [],
    given?: readonly KeptWitness[],
  ): Promise<RecordCheck> {
    const kept = given ?? (await this.witnesses?.of(companyId, projectId)) ?? [];
    return this.inOneSnapshot(companyId, async (tx) => {
      // Not asked of the head: one that was removed is a fault to report.
      if (!(await records.hasProject(tx, companyId, projectId))) throw notFound('project');
      const verifier = new RecordVerifier(projectId);
      await eachEvent(tx, companyId, projectId, (event) => verifier.event(event));
      const head = await records.findHead(tx, companyId, projectId);
      return verifier.finish({ head: toWitness(head), rows: await readRows(tx, companyId, projectId), kept, handed });
    });
  }

  /** The same of the record of the company itself: which projects there are, and its cost books. */
  async verifyCompany(
    companyId: string,
    handed: readonly Witness[],
    kept: readonly KeptWitness[],
  ): Promise<CompanyCheck> {
    return this.inOneSnapshot(companyId, async (tx) => {
      const verifier = new CompanyVerifier(companyId);
      await eachEvent(tx, companyId, companyId, (event) => verifier.event(event));
      const head = toWitness(await records.findHead(tx, companyId, companyId));
      return verifier.finish({ head, kept, handed, ...(await records.readCompany(tx, companyId)) });
    });
  }

  /** An event that arrives meanwhile must not look like a fault. */
  private inOneSnapshot<Result>(companyId: string, work: (tx: Tx) => Promise<Result>): Promise<Result> {
    return this.database.inCompany(companyId, work, { isolationLevel: 'RepeatableRead', timeoutMs: 60_000 });
  }
}

const toWitness = (head: Witness | null): Witness | null => head && { seq: head.seq, hash: head.hash };

async function eachEvent(
  tx: Tx,
  companyId: string,
  recordId: string,
  read: (event: StoredEvent) => void,
): Promise<void> {
  for (let after = 0; ; ) {
    const events = await records.walkEvents(tx, companyId, recordId, after, batch);
    for (const event of events) read(event);
    const last = events.at(-1);
    if (!last || events.length < batch) return;
    after = last.seq;
  }
}
