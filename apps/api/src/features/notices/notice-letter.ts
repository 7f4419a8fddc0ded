import type { Locale, Text } from '@underlath/rules';

export interface NoticeFacts {
  readonly number: number;
  /** What it is called, and in plain words what was found; empty while it is not measured. */
  readonly title: Text;
  readonly found: Text;
  readonly place: string;
  /** At the site: `YYYY-MM-DD`, and `HH:MM` where its clock is known. */
  readonly seen: { readonly day: string; readonly time: string | null };
  /** People have to keep away until it is made safe. */
  readonly isUnsafe: boolean;
  readonly project: { readonly name: string; readonly siteAddress: string; readonly clientName: string };
  readonly company: { readonly name: string; readonly phone: string | null; readonly email: string | null };
  readonly sender: string;
}

export interface NoticeLetter {
  subject: string;
  text: string;
}

/** A heads-up notice: what, where, when, what happens next. It names no price, asks for nothing, and claims no form of law. */
export const noticeLetter = (facts: NoticeFacts, locale: Locale): NoticeLetter =>
  locale === 'es' ? inSpanish(facts) : inEnglish(facts);

function seenOn({ seen: { day, time } }: NoticeFacts, tag: string): string {
  const date = new Intl.DateTimeFormat(tag, { dateStyle: 'long', timeZone: 'UTC' }).format(
    new Date(`${day}T00:00:00Z`),
  );
  return time === null ? date : `${date}, ${time}`;
}

const signature = ({ sender, company }: NoticeFacts): string =>
  [sender, company.name, [company.phone, company.email].filter(Boolean).join(' · ')].filter(Boolean).join('\n');

function inEnglish(facts: NoticeFacts): NoticeLetter {
  const { number, title, found, place, isUnsafe, project } = facts;
  return {
    subject: `${project.name}: heads-up about a hidden condition, finding ${number}`,
    text: `Hello ${project.clientName},

While working at ${project.siteAddress} we uncovered something that was hidden before. This is a heads-up, so that you know of it early.

What we saw: ${[title.en, found.en].filter(Boolean).join('. ')}
Where: ${place}
First seen: ${seenOn(facts, 'en-US')}
${isUnsafe ? '\nPlease keep everyone away from this place until we tell you that it is made safe.\n' : ''}
We leave the place undisturbed as far as that is safe, so that you can look at it first. Tell us if you want to.

The ways to deal with it, their price and their time follow in writing. You agree to nothing by reading this, and no extra work is ordered by it.

This is a heads-up notice. Your contract may have its own rules for notices; they hold.

${signature(facts)}
`,
  };
}

function inSpanish(facts: NoticeFacts): NoticeLetter {
  const { number, title, found, place, isUnsafe, project } = facts;
  return {
    subject: `${project.name}: aviso previo de una condición oculta, hallazgo ${number}`,
    text: `Hola ${project.clientName}:

Al trabajar en ${project.siteAddress} descubrimos algo que antes estaba oculto. Este es un aviso previo, para que lo sepa pronto.

Qué vimos: ${[title.es, found.es].filter(Boolean).join('. ')}
Dónde: ${place}
Visto por primera vez: ${seenOn(facts, 'es-US')}
${isUnsafe ? '\nPor favor, que nadie se acerque a este lugar hasta que le digamos que ya es seguro.\n' : ''}
Dejamos el lugar sin mover, hasta donde sea seguro, para que usted pueda verlo antes. Avísenos si quiere verlo.

Las formas de resolverlo, su precio y su tiempo le llegarán por escrito. Leer esto no lo compromete a nada, y no ordena ningún trabajo adicional.

Este es un aviso previo. Su contrato puede tener sus propias reglas para los avisos; esas reglas rigen.

${signature(facts)}
`,
  };
}
