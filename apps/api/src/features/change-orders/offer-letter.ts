import type { ChangeOrderDocument } from '@underlath/contract';
import { formatCents } from '@underlath/rules';
import { dayWords } from '../day-words.ts';
import { sayDayOf } from '../site-words.ts';

/** The mail that brings a client their link. No urging: it says what, how much, how long the link works, and that nothing happens by opening it. */
export function offerLetter(document: ChangeOrderDocument, link: string, locale: string | undefined) {
  return locale === 'es' ? inSpanish(document, link) : inEnglish(document, link);
}

function inEnglish(document: ChangeOrderDocument, link: string) {
  const { company, project, wording, price, days, number, expiresAt } = document;
  return {
    subject: `${project.name}: change order ${number} from ${company.name}`,
    text: `Hello ${project.clientName},

While working on ${project.siteAddress} we found something that needs your answer:
${wording.headline.en}

Price: ${formatCents(price.totalCents, 'en')}. ${dayWords(document).en}: ${days}.

Read it, ask, approve or decline here:
${link}

Opening the link changes nothing. It works until ${sayDayOf(expiresAt, 'en', project.timeZone ?? null)}. It is for you only: whoever has it can answer.

${company.name}
${[company.phone, company.email].filter(Boolean).join(' · ')}
`,
  };
}

function inSpanish(document: ChangeOrderDocument, link: string) {
  const { company, project, wording, price, days, number, expiresAt } = document;
  return {
    subject: `${project.name}: orden de cambio ${number} de ${company.name}`,
    text: `Hola ${project.clientName}:

Al trabajar en ${project.siteAddress} encontramos algo que necesita su respuesta:
${wording.headline.es}

Precio: ${formatCents(price.totalCents, 'es')}. ${dayWords(document).es}: ${days}.

Lea, pregunte, apruebe o rechace aquí:
${link}

Abrir el enlace no cambia nada. Funciona hasta el ${sayDayOf(expiresAt, 'es', project.timeZone ?? null)}. Es solo para usted: quien lo tenga puede responder.

${company.name}
${[company.phone, company.email].filter(Boolean).join(' · ')}
`,
  };
}
