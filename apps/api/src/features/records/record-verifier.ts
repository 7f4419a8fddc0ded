import type { RecordCheck } from '@underlath/contract';
import { type DecidedData, eventTypes, type JudgmentContent, judgmentHash, type SentData } from './record-events.ts';
import { canonicalJson, chainHash, emptyHash, sha256Of } from './record-hash.ts';

type Fault = RecordCheck['faults'][number];

interface StoredEvent {
  seq: number;
  at: Date;
  type: string;
  subjectId: string;
  body: string;
  prevHash: string;
  hash: string;
}

export interface StoredDecision {
  kind: string;
  signerName: string;
  reason: string;
  sha256: string;
  consentId: string;
  consentText: string;
  decidedAt: Date;
  findingIds: readonly string[];
}

export interface StoredVersion {
  changeOrderId: string;
  version: number;
  document: string;
  sha256: string;
  decision: StoredDecision | null;
}

export interface Rows {
  head: { seq: number; hash: string } | null;
  versions: StoredVersion[];
  judgments: (JudgmentContent & { id: string })[];
  photos: { id: string; sha256: string }[];
}

interface Announced<Data> {
  seq: number;
  data: Data;
}

interface BodyShape {
  projectId?: unknown;
  seq?: unknown;
  at?: unknown;
  type?: unknown;
  subjectId?: unknown;
  data?: Record<string, unknown>;
}

/**
 * Recomputes a project's record from its rows. Feed it every event in order of `seq`, then the rows the events speak of.
 * It finds an edited, removed, swapped or added event, a cut tail, and any sent document, decision, judgment or photo hash
 * that is not the one the record announced.
 */
export class RecordVerifier {
  private readonly faults: Fault[] = [];
  private readonly hashes = new Map<number, string>([[0, emptyHash]]);
  private readonly sent = new Map<string, Announced<SentData>>();
  private readonly decided = new Map<string, Announced<DecidedData>>();
  private readonly judged = new Map<string, Announced<{ sha256: string }>>();
  private readonly photos = new Map<string, Announced<{ sha256: string }>>();
  private last = { seq: 0, hash: emptyHash };
  private count = 0;

  constructor(private readonly projectId: string) {}

  event(event: StoredEvent): void {
    this.count++;
    if (event.seq !== this.last.seq + 1) {
      this.fault(event.seq, `Event ${this.last.seq + 1} is missing; event ${event.seq} comes next.`);
    }
    if (event.prevHash !== this.last.hash) {
      this.fault(event.seq, `Event ${event.seq} does not continue the event before it.`);
    }
    if (chainHash(event.prevHash, event.body) !== event.hash) {
      this.fault(event.seq, `The hash of event ${event.seq} is not the hash of what it says.`);
    }
    const body = readBody(event.body);
    if (body) this.compareColumns(event, body);
    else this.fault(event.seq, `Event ${event.seq} cannot be read.`);
    this.last = { seq: event.seq, hash: event.hash };
    this.hashes.set(event.seq, event.hash);
    if (body) this.remember(event, body.data ?? {});
  }

  finish({ head, versions, judgments, photos }: Rows): RecordCheck {
    this.compareHead(head);
    for (const version of versions) this.compareVersion(version);
    this.compareHashes('judgment', this.judged, new Map(judgments.map((one) => [one.id, judgmentHash(one)])));
    this.compareHashes('photo', this.photos, new Map(photos.map(({ id, sha256 }) => [id, sha256])));
    this.findLost(versions);
    return { ok: this.faults.length === 0, events: this.count, head: head ?? this.last, faults: this.faults };
  }

  private compareColumns(event: StoredEvent, body: BodyShape): void {
    const { seq, type, subjectId } = event;
    const wanted = { projectId: this.projectId, seq, at: event.at.toISOString(), type, subjectId };
    for (const [name, value] of Object.entries(wanted)) {
      if (body[name as keyof typeof wanted] !== value) {
        this.fault(seq, `Event ${seq} is filed under another ${name} than it says.`);
      }
    }
  }

  private remember({ seq, type, subjectId }: StoredEvent, data: Record<string, unknown>): void {
    if (type === eventTypes.changeOrderSent) {
      this.sent.set(`${subjectId}/${data.version}`, { seq, data: data as unknown as SentData });
    }
    if (type === eventTypes.changeOrderDecided) {
      const key = `${subjectId}/${data.version}`;
      if (this.decided.has(key)) this.fault(seq, `Event ${seq} decides a version that was decided before.`);
      this.decided.set(key, { seq, data: data as unknown as DecidedData });
    }
    if (type === eventTypes.findingJudged) {
      this.judged.set(String(data.judgmentId), { seq, data: { sha256: String(data.sha256) } });
    }
    if (type === eventTypes.photoReceived) this.photos.set(subjectId, { seq, data: { sha256: String(data.sha256) } });
  }

  private compareHead(head: Rows['head']): void {
    if (!head) this.fault(null, 'The head of the record is missing.');
    else if (head.seq !== this.last.seq || head.hash !== this.last.hash) {
      this.fault(head.seq, `The record should end with event ${head.seq}; it ends with event ${this.last.seq}.`);
    }
  }

  private compareVersion(row: StoredVersion): void {
    const name = `version ${row.version} of change order ${row.changeOrderId}`;
    const announced = this.sent.get(`${row.changeOrderId}/${row.version}`);
    if (sha256Of(row.document) !== row.sha256)
      this.fault(announced?.seq ?? null, `The document of ${name} was changed.`);
    if (!announced) this.fault(null, `The record does not say that ${name} was sent.`);
    else if (announced.data.sha256 !== row.sha256) {
      this.fault(announced.seq, `${capital(name)} is not the one that was sent.`);
    }
    this.compareAnchor(row, name, announced?.seq ?? null);
    if (row.decision) this.compareDecision(row, row.decision, name);
  }

  /** The document says where the record stood when it was sent; the parties hold copies of it. */
  private compareAnchor(row: StoredVersion, name: string, seq: number | null): void {
    const document = readBody(row.document) as { record?: { seq?: unknown; hash?: unknown } } | undefined;
    const anchor = document?.record;
    if (this.hashes.get(Number(anchor?.seq)) !== anchor?.hash || anchor?.hash === undefined) {
      this.fault(seq, `The record is not the one that ${name} refers to.`);
    }
  }

  private compareDecision(row: StoredVersion, decision: StoredDecision, name: string): void {
    const announced = this.decided.get(`${row.changeOrderId}/${row.version}`);
    if (!announced) {
      this.fault(null, `The record does not say that ${name} was decided.`);
      return;
    }
    const { kind, signerName, reason, sha256, consentId } = decision;
    const wanted: DecidedData = {
      version: row.version,
      kind: kind as DecidedData['kind'],
      sha256,
      signerName,
      consentId,
      consentSha256: sha256Of(decision.consentText),
      reason,
      decidedAt: decision.decidedAt.toISOString(),
    };
    const whatWasChosen = { ...wanted, findingIds: decision.findingIds.join(' ') };
    const told = { ...announced.data, findingIds: (announced.data.findingIds ?? []).join(' ') };
    for (const [field, value] of Object.entries(whatWasChosen)) {
      if (told[field as keyof typeof whatWasChosen] !== value) {
        this.fault(announced.seq, `The decision on ${name} has another ${field} than the record.`);
      }
    }
    if (sha256 !== row.sha256) this.fault(announced.seq, `The decision on ${name} is about another document.`);
  }

  private compareHashes(
    what: string,
    announced: Map<string, Announced<{ sha256: string }>>,
    rows: Map<string, string>,
  ) {
    for (const [id, sha256] of rows) {
      const event = announced.get(id);
      if (!event) this.fault(null, `The record does not know ${what} ${id}.`);
      else if (event.data.sha256 !== sha256) this.fault(event.seq, `${capital(what)} ${id} was changed.`);
    }
    for (const [id, { seq }] of announced) {
      if (!rows.has(id)) this.fault(seq, `${capital(what)} ${id} is gone.`);
    }
  }

  private findLost(versions: StoredVersion[]): void {
    const sent = new Set(versions.map((row) => `${row.changeOrderId}/${row.version}`));
    const decided = new Set(versions.filter((row) => row.decision).map((row) => `${row.changeOrderId}/${row.version}`));
    for (const [key, { seq }] of this.sent) if (!sent.has(key)) this.fault(seq, `Sent version ${key} is gone.`);
    for (const [key, { seq }] of this.decided)
      if (!decided.has(key)) this.fault(seq, `The decision on ${key} is gone.`);
  }

  private fault(seq: number | null, what: string): void {
    this.faults.push({ seq, what });
  }
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Undefined when it is no JSON object or not in canonical form: two texts of one meaning would hide an edit. */
function readBody(text: string): BodyShape | undefined {
  try {
    const value: unknown = JSON.parse(text);
    const isObject = typeof value === 'object' && value !== null && !Array.isArray(value);
    return isObject && canonicalJson(value) === text ? (value as BodyShape) : undefined;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
