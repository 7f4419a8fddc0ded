import type { ChangeOrderDocument } from '@underlath/contract';
import { canonicalJson, sha256Of } from '../../platform/hash.ts';
import type { RecordChain } from './record-chain.ts';
import type { StoredRow, StoredRows } from './record-rows.repository.ts';

type Known = Partial<Pick<ChangeOrderDocument, 'record' | 'items'>>;

/**
 * Holds every sent document against its hash, the place of the record it names, the pictures it shows and the decision on it.
 * The parties hold copies of it, so it also tells when the whole record was written anew.
 */
export function compareDocuments(chain: RecordChain, rows: StoredRows): void {
  for (const [key, row] of rows.get('change_order_version') ?? []) {
    const [orderId, version] = key.split('/');
    compareDocument(chain, `version ${version} of change order ${orderId}`, row, rows, key);
  }
}

function compareDocument(chain: RecordChain, name: string, row: StoredRow, rows: StoredRows, key: string): void {
  const text = String(row.document);
  if (sha256Of(text) !== row.sha256) chain.fault(null, `The document of ${name} was changed.`);
  const document = readDocument(text);
  const { seq, hash } = document?.record ?? {};
  if (hash === undefined || chain.hashAt(Number(seq)) !== hash) {
    chain.fault(null, `The record is not the one that ${name} refers to.`);
  }
  for (const { id, sha256, viewSha256 } of (document?.items ?? []).flatMap(({ photos }) => photos)) {
    const photo = rows.get('photo')?.get(id);
    if (photo?.sha256 !== sha256 || photo.viewSha256 !== viewSha256) {
      chain.fault(null, `Photo ${id} is not the one that ${name} shows.`);
    }
  }
  const decision = rows.get('decision')?.get(key);
  if (decision && decision.sha256 !== row.sha256)
    chain.fault(null, `The decision on ${name} is about another document.`);
}

/** Undefined when it is not in canonical form, which is the only one whose hash is told. */
function readDocument(text: string): Known | undefined {
  try {
    const value: unknown = JSON.parse(text);
    return canonicalJson(value) === text ? (value as Known) : undefined;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}
