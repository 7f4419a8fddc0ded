import { type ChangeOrderDocument, partOf } from '@underlath/contract';
import { ExpectedRows } from './expected-rows.ts';
import type { StoredRows } from './record-rows.repository.ts';
import { type ReplayedEvent, replaySteps } from './replay-steps.ts';
import { compareRows } from './row-comparison.ts';

/** Lets the events of a project happen again, and holds the rows they would have made against those that are there. */
export class Replay {
  private readonly expected = new ExpectedRows();
  /** Kinds of events that make rows nobody here knows how to compare. */
  readonly unknownKinds = new Set<string>();

  /** Each version is answered once. */
  isDoubleAnswer({ type, subjectId, data }: ReplayedEvent): boolean {
    return type === 'change-order.decided' && this.expected.of('decision').has(`${subjectId}/${data.version}`);
  }

  /** In order of `seq`. */
  apply(event: ReplayedEvent): void {
    const step = replaySteps[event.type];
    this.expected.at(event.seq);
    if (step) step(this.expected, event);
    else this.unknownKinds.add(event.type);
  }

  finish(rows: StoredRows) {
    this.settleContexts(rows);
    this.settleParts(rows);
    return compareRows(this.expected, rows);
  }

  /** A finding's context is that of its newest judgment, which is held to the record by its hash. */
  private settleContexts(rows: StoredRows): void {
    for (const { columns } of this.expected.of('finding').values()) {
      const newest = columns.get('newestJudgmentId');
      if (!newest) continue;
      const context = rows.get('judgment')?.get(String(newest.value))?.context;
      if (context !== undefined) columns.set('context', { value: context, seq: newest.seq });
    }
  }

  /** What an approved part comes to stands in the document that was signed, which is held to the record by its hash. */
  private settleParts(rows: StoredRows): void {
    for (const [key, { columns }] of this.expected.of('decision')) {
      const findingIds = columns.get('findingIds');
      const chosen = findingIds?.value as string[] | undefined;
      if (!findingIds || !chosen?.length) continue;
      const part = partOf(readDocument(rows.get('change_order_version')?.get(key)?.document), chosen);
      if (!part) continue;
      this.expected.at(findingIds.seq);
      const { price, days } = part;
      this.expected.change('change_order', key.split('/')[0] ?? '', { totalCents: price.totalCents, days });
    }
  }
}

/** One that was damaged offers no part; that it was is told elsewhere. */
function readDocument(text: unknown): Pick<ChangeOrderDocument, 'parts'> {
  try {
    return (JSON.parse(String(text)) as ChangeOrderDocument | null) ?? {};
  } catch (error) {
    if (error instanceof SyntaxError) return {};
    throw error;
  }
}
