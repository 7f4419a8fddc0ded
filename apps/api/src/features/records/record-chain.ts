import type { RecordCheck } from '@underlath/contract';
import { canonicalJson } from '../../platform/hash.ts';
import { chainHash, emptyHash } from './record-hash.ts';
import type { ReplayedEvent } from './replay-steps.ts';

export type Fault = RecordCheck['faults'][number];

export interface StoredEvent {
  seq: number;
  at: Date;
  type: string;
  subjectId: string;
  body: string;
  prevHash: string;
  hash: string;
}

/** Where a record stood, as something outside of the database says. */
export interface Witness {
  seq: number;
  hash: string;
}

type BodyShape = Partial<Record<'projectId' | 'seq' | 'at' | 'type' | 'subjectId', unknown>> &
  Pick<ReplayedEvent, 'actor' | 'data'>;

/** Recomputes a chain of events. Feed it every event in order of `seq`. It finds an edited, removed, swapped or added one. */
export class RecordChain {
  readonly faults: Fault[] = [];
  last: Witness = { seq: 0, hash: emptyHash };
  count = 0;
  private readonly hashes = new Map<number, string>([[0, emptyHash]]);

  constructor(private readonly recordId: string) {}

  /** What the event says, when it can be read. */
  add(event: StoredEvent): ReplayedEvent | undefined {
    const { seq, at, type, subjectId } = event;
    this.count++;
    if (seq !== this.last.seq + 1) {
      this.fault(seq, `Event ${this.last.seq + 1} is missing; event ${seq} comes next.`);
    }
    if (event.prevHash !== this.last.hash) this.fault(seq, `Event ${seq} does not continue the event before it.`);
    if (chainHash(event.prevHash, event.body) !== event.hash) {
      this.fault(seq, `The hash of event ${seq} is not the hash of what it says.`);
    }
    this.last = { seq, hash: event.hash };
    this.hashes.set(seq, event.hash);
    const body = readBody(event.body);
    if (!body) {
      this.fault(seq, `Event ${seq} cannot be read.`);
      return undefined;
    }
    this.compareColumns(event, body);
    return { seq, at, type, subjectId, actor: body.actor, data: body.data ?? {} };
  }

  /** Compares the end with the row that says where the record ends. */
  compareHead(head: Witness | null): void {
    if (!head) this.fault(null, 'The head of the record is missing.');
    else if (head.seq !== this.last.seq || head.hash !== this.last.hash) {
      this.fault(head.seq, `The record should end with event ${head.seq}; it ends with event ${this.last.seq}.`);
    }
  }

  /** Whether the record went through where the witness says it stood; `from` says what kind of witness it is. */
  compareWitness({ seq, hash }: Witness, from: string): boolean {
    if (this.hashes.get(seq) === hash) return true;
    const fault =
      seq > this.last.seq
        ? `The record ends with event ${this.last.seq}, but ${from} knows event ${seq} (${hash}).`
        : `Event ${seq} is not the one that ${from} knows (${hash}).`;
    this.fault(seq, fault);
    return false;
  }

  hashAt(seq: number): string | undefined {
    return this.hashes.get(seq);
  }

  fault(seq: number | null, what: string): void {
    this.faults.push({ seq, what });
  }

  private compareColumns(event: StoredEvent, body: BodyShape): void {
    const { seq, type, subjectId } = event;
    const wanted = { projectId: this.recordId, seq, at: event.at.toISOString(), type, subjectId };
    for (const [name, value] of Object.entries(wanted)) {
      if (body[name as keyof typeof wanted] !== value) {
        this.fault(seq, `Event ${seq} is filed under another ${name} than it says.`);
      }
    }
  }
}

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
