import type { RecordCheck, RecordEvent } from '@underlath/contract';
import type { Clock } from '../../platform/clock.ts';
import type { Database, Tx } from '../../platform/database/database.ts';
import { notFound } from '../../platform/problem-error.ts';
import type { Actor } from './record-actor.ts';
import { canonicalJson, chainHash, emptyHash } from './record-hash.ts';
import { RecordVerifier } from './record-verifier.ts';
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

/** Events read at once while verifying; bounds memory, not the record. */
const batch = 1000;

/** The append-only event log of each project. Every change of state appends in its own transaction. */
export class RecordsService {
  /** Where each project's record stands for a transaction that has its turn: nobody else can move it until it ends. */
  private readonly turns = new WeakMap<Tx, Map<string, RecordHead>>();

  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {}

  /** Opens an empty record together with its project. */
  async open(tx: Tx, companyId: string, projectId: string): Promise<void> {
    await records.insertHead(tx, companyId, projectId, emptyHash);
  }

  /** Whether the company has this project. */
  async exists(tx: Tx, companyId: string, projectId: string): Promise<boolean> {
    return (await records.findHead(tx, companyId, projectId)) !== null;
  }

  /**
   * Takes the project's turn until the transaction ends, so that what is read next (a number, an earlier row) stays true.
   * @throws ProblemError `not-found`
   */
  async lock(tx: Tx, companyId: string, projectId: string): Promise<RecordHead> {
    const held = this.turns.get(tx)?.get(projectId);
    if (held) return held;
    const head = await records.lockHead(tx, companyId, projectId);
    if (!head) throw notFound('project');
    this.keep(tx, projectId, head);
    return head;
  }

  /** Adds one event and returns where the record then stands. @throws ProblemError `not-found` */
  async append(tx: Tx, { companyId, projectId, actor, type, subjectId, data }: Entry): Promise<RecordHead> {
    const head = await this.lock(tx, companyId, projectId);
    const seq = head.seq + 1;
    const at = this.clock.now();
    const body = canonicalJson({ projectId, seq, at: at.toISOString(), type, subjectId, actor, data });
    const hash = chainHash(head.hash, body);
    await records.insertEvent(tx, companyId, projectId, { seq, at, type, subjectId, body, prevHash: head.hash, hash });
    this.keep(tx, projectId, { seq, hash });
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
      if (!(await records.findHead(tx, companyId, projectId))) throw notFound('project');
      const events = await records.listEvents(tx, companyId, projectId, beforeSeq, limit);
      return events.map(({ seq, at, type, subjectId, body, prevHash, hash }) => {
        const { actor, data } = JSON.parse(body) as Pick<RecordEvent, 'actor' | 'data'>;
        return { seq, at: at.toISOString(), type, subjectId, actor, data, prevHash, hash };
      });
    });
  }

  /** @throws ProblemError `not-found` */
  async verify(companyId: string, projectId: string): Promise<RecordCheck> {
    const work = async (tx: Tx) => {
      // Not asked of the head: one that was removed is a fault to report.
      if (!(await records.hasProject(tx, companyId, projectId))) throw notFound('project');
      return verifyProject(tx, companyId, projectId);
    };
    // One snapshot: an event that arrives meanwhile must not look like a fault.
    return this.database.inCompany(companyId, work, { isolationLevel: 'RepeatableRead', timeoutMs: 60_000 });
  }
}

async function verifyProject(tx: Tx, companyId: string, projectId: string): Promise<RecordCheck> {
  const verifier = new RecordVerifier(projectId);
  for (let after = 0; ; ) {
    const events = await records.walkEvents(tx, companyId, projectId, after, batch);
    for (const event of events) verifier.event(event);
    const last = events.at(-1);
    if (!last || events.length < batch) break;
    after = last.seq;
  }
  const head = await records.findHead(tx, companyId, projectId);
  return verifier.finish({
    head: head && { seq: head.seq, hash: head.hash },
    versions: await records.listSentVersions(tx, companyId, projectId),
    judgments: await records.listJudgments(tx, companyId, projectId),
    photos: await records.listPhotoHashes(tx, companyId, projectId),
  });
}
