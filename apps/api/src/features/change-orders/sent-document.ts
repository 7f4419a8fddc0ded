import { type ChangeOrderDocument, documentOfAnswer, letterSections } from '@underlath/contract';
import { SEVERITY_CONSEQUENCE } from '@underlath/rules';
import { StoredValueError } from '../../shared/stored/stored-value.ts';
import type { VersionRecord } from './change-orders.repository.ts';
import { toDecision } from './decisions.mapper.ts';

type Stored = Pick<VersionRecord, 'document' | 'changeOrderId' | 'version'>;

/** How each format that was ever frozen is read today; their bytes and hashes stay what was sent. */
const formats: Readonly<Record<string, (document: ChangeOrderDocument) => ChangeOrderDocument>> = {
  // It froze no sections: for its reader they are made as they would be today.
  'underlath.change-order/1': (document) => {
    const items = document.items.map((item) => ({ ...item, consequence: SEVERITY_CONSEQUENCE[item.severity] }));
    return { ...document, items, sections: letterSections({ ...document, items }) };
  },
  'underlath.change-order/2': (document) => document,
};

/** The frozen document of a version; its bytes were checked before they were stored. @throws StoredValueError for a format not known here */
export function toDocument({ document, changeOrderId, version }: Stored): ChangeOrderDocument {
  const stored = JSON.parse(document) as ChangeOrderDocument;
  const read = formats[stored.format];
  if (read) return read(stored);
  const row = `change order ${changeOrderId}, version ${version},`;
  const known = Object.keys(formats).join(', ');
  throw new StoredValueError(
    'change_order_version.document',
    row,
    `is of format ${JSON.stringify(stored.format)}; known here is ${known}.`,
  );
}

/** The document as it was answered: without the findings that the client left out, with the contract as the answer made it. */
export function approvedOf(version: Stored & Pick<VersionRecord, 'decision'>): ChangeOrderDocument {
  return documentOfAnswer(toDocument(version), version.decision && toDecision(version.decision));
}
