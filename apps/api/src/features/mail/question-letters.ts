import type { ChangeOrderDocument } from '@underlath/contract';
import { type Locale, text } from '@underlath/rules';
import { greeting, momentText, type Paragraph, signature, type WrittenLetter, writeLetter } from './letter-words.ts';

interface Asked {
  readonly document: ChangeOrderDocument;
  readonly name: string;
  readonly question: string;
}

/** To the office. The page is the way to answer: a reply to the mail would reach nobody who asked. */
export function questionLetter({ document, name, question }: Asked, pageUrl: string): WrittenLetter {
  const { project, number, version, wording } = document;
  return writeLetter('en', both(`${project.name}: a question about change order ${number}`), [
    `${name} asks about change order ${number}, version ${version} (${wording.headline.en}):`,
    question,
    `Answer it on the change order’s page; a reply to this e-mail does not reach ${name}.`,
    pageUrl,
    'Nothing has been decided.',
  ]);
}

const both = (words: string) => text(words, words);

export interface Answered extends Asked {
  readonly askedAt: Date;
  readonly answer: string;
  readonly answeredBy: string;
  /** When the link went out by mail, and until when it works; null where it went another way, or has ended. */
  readonly linkMailedAt: Date | null;
  readonly linkWorksUntil: Date | null;
  /** Of the site, an IANA name, or null where it is not known. */
  readonly timeZone: string | null;
}

/**
 * To the client. It brings the whole answer, and no link: the secret of the one that works is not kept, and a new one
 * would end it under the reader's hands.
 */
export function answerLetter(answered: Answered, locale: Locale): WrittenLetter {
  const { document, name, question, askedAt, answer, answeredBy, timeZone } = answered;
  const { project, company, number } = document;
  const asked = momentText(askedAt, timeZone);
  const subject = text(
    `${project.name}: an answer about change order ${number} from ${company.name}`,
    `${project.name}: una respuesta sobre la orden de cambio ${number} de ${company.name}`,
  );
  return writeLetter(locale, subject, [
    greeting(project.clientName),
    text(`${name} asked on ${asked.en}:`, `${name} preguntó el ${asked.es}:`),
    question,
    text(`${answeredBy} answers:`, `${answeredBy} responde:`),
    answer,
    text('Nothing has been decided by this.', 'Con esto no se decidió nada.'),
    wayBack(answered),
    signature(company),
  ]);
}

function wayBack({ linkMailedAt, linkWorksUntil, timeZone }: Answered): Paragraph {
  if (linkWorksUntil === null) {
    return text(
      'The link to the letter has ended. Tell us, and we send you a new one.',
      'El enlace a la carta ya no funciona. Avísenos y le mandamos uno nuevo.',
    );
  }
  const until = momentText(linkWorksUntil, timeZone);
  const mailed = linkMailedAt && momentText(linkMailedAt, timeZone);
  return text(
    `To read the letter again, use the link ${mailed ? `in our e-mail of ${mailed.en}` : 'we gave you'}. It works until ${until.en}. If you no longer have it, tell us, and we send you a new one.`,
    `Para volver a leer la carta, use el enlace ${mailed ? `de nuestro correo del ${mailed.es}` : 'que le dimos'}. Funciona hasta el ${until.es}. Si ya no lo tiene, avísenos y le mandamos uno nuevo.`,
  );
}
