import * as z from 'zod';
import type { Tx } from '../../platform/database/database.ts';
import type { FileStore } from '../../platform/file-store/file-store.ts';
import { defineJob, handleJob, type JobHandler, type JobSender } from '../../platform/queue.ts';
import type { Witness } from './record-chain.ts';

/** A witness of one record; the record of a company bears the company's own id. */
export interface KeptWitness extends Witness {
  companyId: string;
  recordId: string;
}

export const keepHeadJob = defineJob({
  name: 'record.keep-head',
  data: z.object({ companyId: z.uuid(), recordId: z.uuid(), seq: z.int(), hash: z.string() }),
  retryLimit: 10,
});

export const headsFolder = 'heads/';

/**
 * Where records stood, kept in the file store beside the photos: who cuts the end off a record in the database would have
 * to find these too. They are only added.
 */
export class RecordWitnesses {
  constructor(
    private readonly store: FileStore,
    private readonly queue: JobSender,
  ) {}

  /** Kept once the transaction is committed: one of what was undone would tell of an event that never was. */
  leave(tx: Tx, witness: KeptWitness): Promise<void> {
    return this.queue.enqueue(tx, keepHeadJob, witness);
  }

  keep(witness: KeptWitness): Promise<void> {
    return keepHead(this.store, witness);
  }

  /** Those of one record. */
  async of(companyId: string, recordId: string): Promise<KeptWitness[]> {
    return readHeads(this.store, `${headsFolder}${companyId}/${recordId}/`);
  }
}

export const handleKeepHead = (witnesses: RecordWitnesses): JobHandler =>
  handleJob(keepHeadJob, ({ data }) => witnesses.keep(data));

export const headKey = ({ companyId, recordId, seq, hash }: KeptWitness): string =>
  `${headsFolder}${companyId}/${recordId}/${seq}-${hash}`;

/** The name says it all, so that the same head kept twice is one file. */
export async function keepHead(store: FileStore, head: KeptWitness): Promise<void> {
  await store.put(headKey(head), Buffer.from(`${head.recordId}:${head.seq}:${head.hash}\n`));
}

/** All that were kept, or those below one folder of them. */
export async function readHeads(store: FileStore, folder = headsFolder): Promise<KeptWitness[]> {
  const found: KeptWitness[] = [];
  for await (const key of store.keys(folder)) {
    const [, companyId = '', recordId = '', seq, hash = ''] =
      key.match(/^heads\/([^/]+)\/([^/]+)\/(\d+)-([0-9a-f]{64})$/) ?? [];
    if (seq !== undefined) found.push({ companyId, recordId, seq: Number(seq), hash });
  }
  return found;
}
