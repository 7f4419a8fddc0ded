import { BASIS_WORDS, type Locale, say, type Text, text } from '@underlath/rules';

/** Every fixed word of the report, in both languages. */
const words = {
  changeOrder: text('Change order', 'Orden de cambio'),
  version: text('version', 'versión'),
  for: text('For', 'Para'),
  project: text('Project', 'Proyecto'),
  site: text('Site', 'Obra'),
  contractor: text('Contractor', 'Contratista'),
  license: text('License', 'Licencia'),
  found: text('What we found', 'Lo que encontramos'),
  why: text('Why it matters', 'Por qué importa'),
  ifNot: text('If it is not done', 'Si no se hace'),
  note: text('Note', 'Nota'),
  inShort: text('The change in short', 'El cambio en breve'),
  was: text('Now', 'Ahora'),
  thisChange: text('This change', 'Este cambio'),
  is: text('With this change', 'Con este cambio'),
  contractSum: text('Contract sum', 'Monto del contrato'),
  contractSumAfter: text('Contract sum with this answer', 'Monto del contrato con esta respuesta'),
  finish: text('Finish date', 'Fecha de término'),
  unknown: text('not set', 'sin fecha'),
  originalSum: text('Original contract sum', 'Monto original del contrato'),
  previousChanges: text('Changes approved before', 'Cambios aprobados antes'),
  allowances: text('Allowances settled before', 'Asignaciones liquidadas antes'),
  payments: text('What it does to the payments', 'Qué cambia en los pagos'),
  finding: text('Finding', 'Hallazgo'),
  place: text('Place', 'Lugar'),
  measured: text('Measured', 'Medido'),
  checkedBy: text('Checked by', 'Revisado por'),
  repair: text('What we will do', 'Lo que haremos'),
  itemCautions: text('Cautions', 'Precauciones'),
  sources: text('Rules used', 'Reglas usadas'),
  photos: text('Photos', 'Fotos'),
  share: text('Its part of the price', 'Su parte del precio'),
  priceLines: text('The price, line by line', 'El precio, línea por línea'),
  line: text('Work', 'Trabajo'),
  quantity: text('Quantity', 'Cantidad'),
  amount: text('Amount', 'Importe'),
  subtotal: text('Subtotal', 'Subtotal'),
  overhead: text('Overhead', 'Gastos generales'),
  profit: text('Profit', 'Utilidad'),
  total: text('Total of this change', 'Total de este cambio'),
  allowance: text('Allowance, reconciled when spent', 'Asignación, se ajusta cuando se gasta'),
  credit: text('Credit', 'Crédito'),
  notCovered: text('What this price does not cover', 'Lo que este precio no cubre'),
  otherWays: text('Other ways to do it, and what they would change', 'Otras maneras de hacerlo, y lo que cambiarían'),
  otherWaysNote: text('None of these is in the price.', 'Ninguna está en el precio.'),
  noPrice: text('no price yet', 'aún sin precio'),
  howLines: text('How each line came about', 'Cómo se llegó a cada línea'),
  placeholder: text(
    'Rates are invented starter values that the contractor has not replaced yet.',
    'Las tarifas son valores iniciales inventados que el contratista aún no ha reemplazado.',
  ),
  cautions: text('Please note', 'Tenga en cuenta'),
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
  parts: text('If findings are left out', 'Si se dejan hallazgos fuera'),
  partsNote: text(
    'Each choice has its own total, because shared work is counted once.',
    'Cada elección tiene su propio total, porque el trabajo compartido se cuenta una vez.',
  ),
  findings: text('Findings that are done', 'Hallazgos que se hacen'),
  days: text('Days', 'Días'),
  noDecision: text('Not answered yet.', 'Aún sin respuesta.'),
  signedBy: text('Name typed as signature', 'Nombre escrito como firma'),
  answeredAt: text('Time', 'Hora'),
  reason: text('Reason', 'Motivo'),
  consent: text('Consent text agreed to', 'Texto de consentimiento aceptado'),
  consentAsked: text('Consent text that was shown', 'Texto de consentimiento mostrado'),
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
