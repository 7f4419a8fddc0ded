import type { RecordCheck } from '@underlath/contract';
import type { StoredEvent, Witness } from './record-chain.ts';
import { RecordChain } from './record-chain.ts';
import type { StoredRows } from './record-rows.repository.ts';
import { moneyTables } from './record-tables.data.ts';
import { Replay } from './replay.ts';
import { compareDocuments } from './sent-documents.ts';

interface Ends {
  head: Witness | null;
  rows: StoredRows;
  /** Kept in the file store. */
  kept: readonly Witness[];
  /** Handed in by whoever asks, from a letter or a backup. */
  handed: readonly Witness[];
}

/**
 * Recomputes a project's record. Feed it every event in order of `seq`, then the rows the events speak of and what is known
 * from outside. It says what it compared, and what no event told.
 */
export class RecordVerifier {
  private readonly chain: RecordChain;
  private readonly replay = new Replay();

  constructor(projectId: string) {
    this.chain = new RecordChain(projectId);
  }

  event(stored: StoredEvent): void {
    const event = this.chain.add(stored);
    if (!event) return;
    if (this.replay.isDoubleAnswer(event)) {
      this.chain.fault(event.seq, `Event ${event.seq} decides a version that was decided before.`);
    }
    this.replay.apply(event);
  }

  finish({ head, rows, kept, handed }: Ends): RecordCheck {
    const { chain, replay } = this;
    chain.compareHead(head);
    compareDocuments(chain, rows);
    const { faults, counts, untold } = replay.finish(rows);
    for (const { seq, what } of faults) chain.fault(seq, what);
    const agreeing = (list: readonly Witness[], from: string) =>
      list.filter((witness) => chain.compareWitness(witness, from));
    const keptAgreeing = agreeing(kept, 'the head kept in the file store');
    const handedAgreeing = agreeing(handed, 'the witness handed in');
    const witnesses = {
      kept: kept.length,
      keptAgreed: keptAgreeing.length,
      handed: handed.length,
      handedAgreed: handedAgreeing.length,
      newestSeq: Math.max(0, ...[...keptAgreeing, ...handedAgreeing].map(({ seq }) => seq)),
    };
    const sum = (numbers: readonly number[]) => numbers.reduce((total, one) => total + one, 0);
    return {
      ok: chain.faults.length === 0,
      events: chain.count,
      head: head ?? chain.last,
      faults: chain.faults,
      compared: {
        rows: sum([...counts.values()]),
        moneyRows: sum(moneyTables.map((table) => counts.get(table) ?? 0)),
        documents: counts.get('change_order_version') ?? 0,
        decisions: counts.get('decision') ?? 0,
      },
      untold: [...untold].map(([what, rowCount]) => ({ what, rows: rowCount })),
      otherKinds: [...replay.unknownKinds],
      witnesses,
    };
  }
}
