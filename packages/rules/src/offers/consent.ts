import { text } from '../kernel/index.ts';

/**
 * What a client agrees to when answering online. Its id changes whenever a word does; every answer keeps the words it was given to.
 * The points follow 15 U.S.C. 7001 (E-SIGN), as read in excerpts: intent to sign, paper on request, the right to say no to
 * electronic form, a copy that can be kept. No one here says that it is enough in a given state.
 */
export const consent = {
  id: 'online-answer-2026-11-30',
  text: text(
    'I want to answer online. I type my name as my signature on exactly this version of the change order. ' +
      'I can open this page and the PDF, and I can save or print a copy to keep. ' +
      'I can ask the contractor for a paper copy at no cost, and sign on paper instead. ' +
      'I can decline, ask a question, or close this page; nothing is agreed unless I approve. ' +
      'I can stop using the online form at any time by telling the contractor. ' +
      'This consent covers this change order only.',
    'Quiero responder en línea. Escribo mi nombre como mi firma en exactamente esta versión de la orden de cambio. ' +
      'Puedo abrir esta página y el PDF, y puedo guardar o imprimir una copia. ' +
      'Puedo pedir al contratista una copia en papel sin costo, y firmar en papel en su lugar. ' +
      'Puedo rechazar, hacer una pregunta o cerrar esta página; nada queda acordado si no lo apruebo. ' +
      'Puedo dejar de usar el formulario en línea en cualquier momento si se lo digo al contratista. ' +
      'Este consentimiento cubre solo esta orden de cambio.',
  ),
};
