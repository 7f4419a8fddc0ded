import { BASIS_WORDS, type Locale, say, type Text, text } from '@underlath/rules';

/** Every fixed word of the report, in both languages. */
const words = {
  changeOrder: text('Change order', 'Orden de cambio'),
  version: text('version', 'versión'),
  versionLabel: text('Version', 'Versión'),
  for: text('For', 'Para'),
  project: text('Project', 'Proyecto'),
  site: text('Site', 'Obra'),
  contractor: text('Contractor', 'Contratista'),
  license: text('License', 'Licencia'),
  found: text('What we found', 'Lo que encontramos'),
  why: text('Why it matters', 'Por qué importa'),
  ifNot: text('If it is not done', 'Si no se hace'),
  note: text('A note from your contractor', 'Una nota de su contratista'),
  inShort: text('The change in short', 'El cambio en breve'),
  was: text('Now', 'Ahora'),
  thisChange: text('This change', 'Este cambio'),
  is: text('With this change', 'Con este cambio'),
  contractSum: text('Contract sum', 'Monto del contrato'),
  finish: text('Finish date', 'Fin de la obra'),
  unknown: text('not set', 'sin fecha'),
  originalSum: text('Original contract sum', 'Monto original del contrato'),
  previousChanges: text('Changes you approved before', 'Cambios que aprobó antes'),
  allowances: text('Allowances settled before', 'Partidas por definir ya ajustadas'),
  payments: text('What it does to the payments', 'Qué cambia en los pagos'),
  finding: text('Finding', 'Hallazgo'),
  place: text('Place', 'Lugar'),
  measured: text('Measured', 'Medido'),
  checkedBy: text('Checked by', 'Revisado por'),
  repair: text('The repair', 'La reparación'),
  sources: text('Rules used', 'Reglas usadas'),
  photos: text('Photos', 'Fotos'),
  share: text('Its part of the price', 'Su parte del precio'),
  priceLines: text('The price, line by line', 'El precio, línea por línea'),
  line: text('Work', 'Trabajo'),
  quantity: text('Quantity', 'Cantidad'),
  amount: text('Amount', 'Importe'),
  subtotal: text('Subtotal', 'Subtotal'),
  overhead: text('Overhead', 'Gastos generales'),
  profit: text('Profit', 'Ganancia'),
  total: text('Total of this change', 'Total de este cambio'),
  allowance: text('Allowance: settled when we know the real cost', 'Partida por definir: se ajusta al costo real'),
  credit: text('Credit', 'Crédito'),
  notCovered: text('What this price does not cover', 'Lo que este precio no cubre'),
  otherWays: text('Other ways to do it, and what they would change', 'Otras maneras de hacerlo, y lo que cambiarían'),
  noPrice: text('no price yet', 'aún sin precio'),
  howLines: text('How each line came about', 'Cómo se llegó a cada línea'),
  record: text('The record', 'El registro'),
  sentBy: text('Sent by', 'Enviado por'),
  sentAt: text('Sent', 'Enviado'),
  answerBy: text('Link open until', 'Enlace abierto hasta'),
  fingerprint: text('SHA-256 of this version', 'SHA-256 de esta versión'),
  recordHead: text('Project record when sent', 'Registro del proyecto al enviar'),
  decision: text('The answer', 'La respuesta'),
  approved: text('Approved', 'Aprobado'),
  declined: text('Declined', 'Rechazado'),
  partApproved: text('Approved in part', 'Aprobado en parte'),
  leftOut: text('Left out', 'Fuera'),
  findings: text('Findings that are done', 'Hallazgos que se hacen'),
  days: text('Days', 'Días'),
  noDecision: text('Not answered yet.', 'Aún sin respuesta.'),
  signedBy: text('Name typed as signature', 'Nombre escrito como firma'),
  answeredAt: text('Time', 'Hora'),
  reason: text('Reason', 'Motivo'),
  consent: text('Consent text agreed to', 'Texto de consentimiento aceptado'),
  consentAsked: text('Consent text that was shown', 'Texto de consentimiento mostrado'),
  notAnswered: text('Not answered yet', 'Aún sin respuesta'),
  answerOnPaper: text(
    'Answer on the page that your link opens, or on paper: the last page has the place to sign.',
    'Responda en la página que abre su enlace, o en papel: la última página tiene el lugar para firmar.',
  ),
  declinedMeans: text('The work in this letter was not agreed.', 'El trabajo de esta carta no se acordó.'),
  onPaper: text('To answer on paper', 'Para responder en papel'),
  onPaperMeans: text(
    'Tick one box, sign and give this page to your contractor. It answers',
    'Marque una casilla, firme y entregue esta página a su contratista. Responde a',
  ),
  tickApprove: text('I approve all of it.', 'Apruebo todo.'),
  tickPart: text('I approve only the findings ticked below.', 'Apruebo solo los hallazgos marcados abajo.'),
  tickDecline: text('I decline it.', 'Lo rechazo.'),
  lineName: text('Full name', 'Nombre completo'),
  lineSignature: text('Signature', 'Firma'),
  lineDate: text('Date', 'Fecha'),
  questions: text('Questions and answers', 'Preguntas y respuestas'),
  noAnswerYet: text('No answer yet.', 'Aún sin respuesta.'),
  readIn: text('Answered in', 'Respondida en'),
  english: text('English', 'inglés'),
  spanish: text('Spanish', 'español'),
  page: text('page', 'página'),
  elevationOf: text('Drawing to scale', 'Dibujo a escala'),
  scale: text('Scale', 'Escala'),
  hatched: text('Hatched: what was found.', 'Rayado: lo que se encontró.'),
  noSize: text('The size of this place is not recorded.', 'El tamaño de este lugar no está registrado.'),
  photoAway: text('The picture could not be read from the store.', 'No se pudo leer la foto del almacén.'),
  photoChanged: text(
    'The picture in the store is no longer the one that was sent.',
    'La foto del almacén ya no es la que se envió.',
  ),
  wide: text('wide', 'de ancho'),
  high: text('high', 'de alto'),
} satisfies Record<string, Text>;

export type Words = Readonly<Record<keyof typeof words, string>>;

export function reportWords(locale: Locale): Words {
  return Object.fromEntries(Object.entries(words).map(([name, word]) => [name, say(word, locale)])) as Words;
}

export const basisWord = (basis: keyof typeof BASIS_WORDS, locale: Locale): string => say(BASIS_WORDS[basis], locale);

/** An instant with its zone, `March 3, 2026 at 2:05 PM UTC`. */
export function formatInstant(instant: string, locale: Locale): string {
  const format = new Intl.DateTimeFormat(locale === 'es' ? 'es-US' : 'en-US', {
    dateStyle: 'long',
    timeStyle: 'short',
    timeZone: 'UTC',
  });
  return `${format.format(new Date(instant))} UTC`;
}

/** A calendar day, `March 3, 2026`. */
export function formatDay(day: string, locale: Locale): string {
  const format = new Intl.DateTimeFormat(locale === 'es' ? 'es-US' : 'en-US', { dateStyle: 'long', timeZone: 'UTC' });
  return format.format(new Date(`${day}T00:00:00Z`));
}
