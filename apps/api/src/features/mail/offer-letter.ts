import type { ChangeOrderDocument } from '@underlath/contract';
import { type Locale, type Text, text } from '@underlath/rules';
import {
  daysText,
  ended,
  greeting,
  keepThis,
  makeSafe,
  momentText,
  money,
  type Paragraph,
  signature,
  type WrittenLetter,
  writeLetter,
} from './letter-words.ts';

export interface LinkLetterFacts {
  readonly document: ChangeOrderDocument;
  readonly sha256: string;
  readonly link: string;
  readonly expiresAt: Date;
  /** Of the site, an IANA name, or null where it is not known. */
  readonly timeZone: string | null;
  /** Answered already: then the link is for reading. */
  readonly isDecided: boolean;
}

/** Brings a client their link. No urging: why, what, how much, how long the link works, and that opening it does nothing. */
export function offerLetter(facts: LinkLetterFacts, locale: Locale): WrittenLetter {
  const { number, company, project } = facts.document;
  const subject = text(
    `${project.name}: change order ${number} from ${company.name}`,
    `${project.name}: orden de cambio ${number} de ${company.name}`,
  );
  const intro = text(
    `While working on ${project.siteAddress} we found something that needs your answer.`,
    `Al trabajar en ${project.siteAddress} encontramos algo que necesita su respuesta.`,
  );
  return writeLetter(locale, subject, lettersWith(intro, facts));
}

/** The same for a link that takes the place of an earlier one. */
export function renewedLetter(facts: LinkLetterFacts, locale: Locale): WrittenLetter {
  const { number, version, company, project } = facts.document;
  const subject = text(
    `${project.name}: a new link to change order ${number} from ${company.name}`,
    `${project.name}: un enlace nuevo a la orden de cambio ${number} de ${company.name}`,
  );
  // Once answered, earlier links go on showing the letter.
  const before = facts.isDecided
    ? text('The letter and its answer are the same.', 'La carta y su respuesta son las mismas.')
    : text(
        'The link you had before has ended; the letter is the same.',
        'El enlace anterior ya no funciona; la carta es la misma.',
      );
  const intro = text(
    `Here is a new link to change order ${number}, version ${version}, for ${project.siteAddress}. ${before.en}`,
    `Aquí tiene un enlace nuevo a la orden de cambio ${number}, versión ${version}, de ${project.siteAddress}. ${before.es}`,
  );
  return writeLetter(locale, subject, lettersWith(intro, facts));
}

function lettersWith(intro: Text, facts: LinkLetterFacts): Paragraph[] {
  const { document, sha256, link, isDecided } = facts;
  const { company, project, wording, record } = document;
  return [
    greeting(project.clientName),
    makeSafe(document),
    intro,
    text(`${wording.headline.en}\n${wording.why.en}`, `${wording.headline.es}\n${wording.why.es}`),
    !isDecided && priceText(document),
    isDecided ? text('Read it here:', 'Léala aquí:') : text(`${ASK.en}:`, `${ASK.es}:`),
    link,
    linkText(facts),
    signature(company),
    keepThis(project, sha256, record),
  ];
}

const ASK = text('Read it, ask, approve or decline here', 'Lea, pregunte, apruebe o rechace aquí');

function priceText(document: ChangeOrderDocument): Text {
  const [price, days] = [money(document.price.totalCents), daysText(document.days, document)];
  if (document.days === 0)
    return text(`The price is ${price.en}. It adds no days.`, `El precio es de ${price.es}. No agrega días.`);
  return text(`The price is ${price.en}. It adds ${days.en}.`, `El precio es de ${price.es}. Agrega ${days.es}.`);
}

function linkText({ expiresAt, timeZone, isDecided }: LinkLetterFacts): Text {
  const until = momentText(expiresAt, timeZone);
  const whose = isDecided
    ? text('It is for you only: whoever has it can read it.', 'Es solo para usted: quien lo tenga puede leerla.')
    : text('It is for you only: whoever has it can answer.', 'Es solo para usted: quien lo tenga puede responder.');
  return text(
    `Opening the link changes nothing. It works until ${until.en}. ${whose.en}`,
    `Abrir el enlace no cambia nada. Funciona hasta el ${ended(until.es)} ${whose.es}`,
  );
}
