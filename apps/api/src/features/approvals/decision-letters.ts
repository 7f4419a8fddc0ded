import {
  type ChangeOrderDocument,
  type Decision,
  type DocumentItem,
  documentOfAnswer,
  leftOutOf,
  partOf,
} from '@underlath/contract';
import { formatCents } from '@underlath/rules';
import { dayWords } from '../day-words.ts';
import type { RecordHead } from '../records/records.service.ts';
import { sayInstant } from '../site-words.ts';

interface Settled {
  document: ChangeOrderDocument;
  decision: Decision;
  /** Of the site, or null where it is not known. */
  timeZone: string | null;
  /** Where the contract stands with this answer, by the ledger. */
  contractAfter: { sumCents: number; days: number; finish: string | null };
  /** Where the project's record stands with this answer in it; both sides hold a copy. */
  head: RecordHead;
}

/** The copy that both sides keep: what was answered, by whom, when, and the hashes that prove it. */
export function decisionLetter(
  { document: sent, decision, timeZone, contractAfter, head }: Settled,
  locale: 'en' | 'es',
) {
  const part = partOf(sent, decision.findingIds);
  const document = documentOfAnswer(sent, decision);
  const { company, project, number, version, wording, contract, days } = document;
  const names = (items: readonly DocumentItem[]) => items.map((item) => `${item.number}. ${item.title}`).join('; ');
  const [done, left] = [names(document.items), names(leftOutOf(sent, decision.findingIds))];
  const money = (cents: number) => formatCents(cents, locale);
  const approved = decision.kind === 'approved';
  const at = sayInstant(decision.decidedAt, locale, timeZone);
  if (locale === 'es') {
    const what = part ? 'aprobada en parte' : approved ? 'aprobada' : 'rechazada';
    return {
      subject: `${project.name}: orden de cambio ${number} ${what}`,
      text: `${wording.headline.es}

La orden de cambio ${number}, versión ${version}, fue ${what} por ${decision.signerName} el ${at}.
${decision.reason ? `Motivo: ${decision.reason}\n` : ''}${part ? `Aprobado: ${done}.\nFuera: ${left}.\n` : ''}
${approved ? `Precio: ${money(contract.thisChangeCents)}. El monto del contrato pasa de ${money(contract.beforeCents)} a ${money(contractAfter.sumCents)}. ${dayWords(document).es}: +${days}.` : 'El monto del contrato no cambia.'}

SHA-256 del documento: ${decision.sha256}
Registro del proyecto: ${head.seq}: ${head.hash}

Guarde este mensaje. ${company.name}
`,
    };
  }
  const what = part ? 'approved in part' : approved ? 'approved' : 'declined';
  return {
    subject: `${project.name}: change order ${number} ${what}`,
    text: `${wording.headline.en}

Change order ${number}, version ${version}, was ${what} by ${decision.signerName} on ${at}.
${decision.reason ? `Reason: ${decision.reason}\n` : ''}${part ? `Approved: ${done}.\nLeft out: ${left}.\n` : ''}
${approved ? `Price: ${money(contract.thisChangeCents)}. The contract sum goes from ${money(contract.beforeCents)} to ${money(contractAfter.sumCents)}. ${dayWords(document).en}: +${days}.` : 'The contract sum does not change.'}

SHA-256 of the document: ${decision.sha256}
Project record: ${head.seq}: ${head.hash}

Keep this message. ${company.name}
`,
  };
}

export function questionLetter(document: ChangeOrderDocument, name: string, words: string) {
  return {
    subject: `${document.project.name}: a question about change order ${document.number}`,
    text: `${name} asks about change order ${document.number}, version ${document.version} (${document.wording.headline.en}):

${words}

Answer it on the change order's page. Nothing has been decided.
`,
  };
}
