import {
  type ChangeOrderDocument,
  type Decision,
  documentOfAnswer,
  documentOfPart,
  leftOutOf,
  partOf,
} from '@underlath/contract';
import { type Locale, type Text, text } from '@underlath/rules';
import type { RecordHead } from '../records/records.service.ts';
import {
  daysText,
  dayText,
  ended,
  greeting,
  keepThis,
  listItems,
  makeSafe,
  momentText,
  money,
  type Paragraph,
  signature,
  type WrittenLetter,
  writeLetter,
} from './letter-words.ts';

export interface Settled {
  readonly document: ChangeOrderDocument;
  readonly decision: Decision;
  /** Where the project's record stands with this answer in it; both sides hold a copy. */
  readonly head: RecordHead;
  /** Of the site, an IANA name, or null where it is not known. */
  readonly timeZone: string | null;
}

/** To the office: what was answered, by whom, when, and the hashes that prove it. */
export const decisionLetter = (settled: Settled, locale: Locale): WrittenLetter =>
  writeLetter(locale, subjectOf(settled), [...told(settled), ...proven(settled)]);

/** The same for whoever the offer went to, with the PDF; it names the signer, who may be somebody else of the house. */
export function decisionCopy(settled: Settled, locale: Locale): WrittenLetter {
  const { document, decision } = settled;
  const declinedUnsafe = decision.kind === 'declined' && makeSafe(document);
  return writeLetter(locale, subjectOf(settled), [
    greeting(document.project.clientName),
    declinedUnsafe,
    ...told(settled),
    text(
      'The attached PDF has the whole letter, the photos and the answer.',
      'El PDF adjunto tiene toda la carta, las fotos y la respuesta.',
    ),
    ...proven(settled),
  ]);
}

function answerWord({ document, decision }: Settled): Text {
  if (decision.kind === 'declined') return text('declined', 'rechazada');
  const isPart = partOf(document, decision.findingIds) !== undefined;
  return isPart ? text('approved in part', 'aprobada en parte') : text('approved', 'aprobada');
}

function subjectOf(settled: Settled): Text {
  const { project, number } = settled.document;
  const what = answerWord(settled);
  return text(
    `${project.name}: change order ${number} ${what.en}`,
    `${project.name}: orden de cambio ${number} ${what.es}`,
  );
}

function told(settled: Settled): Paragraph[] {
  const { document, decision, timeZone } = settled;
  const { number, version, wording } = document;
  const { signerName, reason } = decision;
  const [what, when] = [answerWord(settled), momentText(new Date(decision.decidedAt), timeZone)];
  return [
    text(
      `Change order ${number}, version ${version}, was ${what.en} by ${signerName} on ${when.en}.`,
      `La orden de cambio ${number}, versión ${version}, fue ${what.es} por ${signerName} el ${ended(when.es)}`,
    ),
    wording.headline,
    reason !== '' && text(`Reason given: ${reason}`, `Motivo dado: ${reason}`),
    chosen(settled),
    effect(settled),
  ];
}

function chosen({ document, decision }: Settled): Paragraph {
  const part = partOf(document, decision.findingIds);
  if (!part) return false;
  const done = listItems(documentOfPart(document, part).items);
  const left = listItems(leftOutOf(document, decision.findingIds));
  return text(`Approved: ${done.en}.\nLeft out: ${left.en}.`, `Aprobado: ${done.es}.\nFuera: ${left.es}.`);
}

/** What the answer did to the contract, by the ledger at that moment. */
function effect({ document: sent, decision }: Settled): Text {
  if (decision.kind === 'declined') {
    return text('The contract sum and its days do not change.', 'El monto y los días del contrato no cambian.');
  }
  const document = documentOfAnswer(sent, decision);
  const { thisChangeCents, afterCents, daysAfter, finishAfter } = document.contract;
  const [price, sum] = [money(thisChangeCents), money(afterCents)];
  const added = document.days === 0 ? text('no days', 'cero días') : daysText(document.days, document);
  const inAll = daysText(daysAfter, document);
  const end = finishAfter === null ? text('', '') : dayText(finishAfter);
  return text(
    `The price is ${price.en}, and the contract sum is now ${sum.en}.\nIt adds ${added.en}, ${inAll.en} in all${end.en && `; the work ends on ${end.en}`}.`,
    `El precio es de ${price.es}, y el monto del contrato es ahora ${sum.es}.\nAgrega ${added.es}, ${inAll.es} en total${end.es && `; la obra termina el ${end.es}`}.`,
  );
}

const proven = ({ document, decision, head }: Settled): Paragraph[] => [
  signature(document.company),
  keepThis(document.project, decision.sha256, head),
];
