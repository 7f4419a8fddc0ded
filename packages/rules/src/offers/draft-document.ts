import { type Text, text } from '../kernel/index.ts';
import { consent } from './consent.ts';
import type { ChangeOrderDocument, DocumentItem, Wording } from './document/change-order-document.ts';
import { letterSections } from './document/letter-sections.ts';
import type { PricedScope } from './document/priced-scope.ts';
import { sharesOf } from './shares.ts';

/** What would be sent now: everything but the moment of sending. */
export type DraftDocument = Omit<ChangeOrderDocument, 'sentAt' | 'sentBy' | 'expiresAt' | 'record'>;

interface DraftParts {
  changeOrderId: string;
  number: number;
  version: number;
  company: ChangeOrderDocument['company'];
  project: ChangeOrderDocument['project'];
  wording: Wording;
  items: readonly Omit<DocumentItem, 'shareCents'>[];
  price: PricedScope;
  /** What each finding would cost alone, by its id. */
  alone: ReadonlyMap<string, PricedScope>;
  days: number;
  contract: ChangeOrderDocument['contract'];
  questions: NonNullable<ChangeOrderDocument['questions']>;
}

export function toDraft({ alone, questions, ...parts }: DraftParts): DraftDocument {
  const shares = sharesOf(
    parts.price,
    parts.items.map((item) => item.findingId),
    alone,
  );
  return withSections({
    format: 'underlath.change-order/2',
    ...parts,
    items: parts.items.map((item, at) => ({
      ...item,
      shareCents: shares[at] ?? 0,
      aloneCents: alone.get(item.findingId)?.totalCents ?? 0,
    })),
    cautions: cautionsOf(parts),
    ...(questions.length > 0 && { questions }),
    consent,
  });
}

/** With the sections that follow from all that is in it; the last step before it is shown or frozen. */
export const withSections = <D extends DraftDocument>(document: D): D => ({
  ...document,
  sections: letterSections(document),
});

/** A finding in a Spanish sentence, with its title where that has Spanish. */
export const findingEs = ({ number, titleEs }: Pick<DocumentItem, 'number' | 'titleEs'>): string =>
  titleEs ? `hallazgo ${number} (${titleEs})` : `hallazgo ${number}`;

const screening = text(
  'This is a screening by measurement, not an engineering design. A licensed engineer and the building official decide about the structure, and local codes govern.',
  'Esto es una revisión con medidas, no un diseño de ingeniería. Un ingeniero con licencia y el oficial de construcción deciden sobre la estructura, y rigen los códigos locales.',
);
const law = text(
  'State laws differ on what a change order must say, on canceling and on signing electronically. Nothing here says that this document meets them. Ask a lawyer if you are not sure.',
  'Las leyes estatales varían sobre lo que debe decir una orden de cambio, sobre cancelar y sobre firmar por medios electrónicos. Nada aquí dice que este documento las cumpla. Pregunte a un abogado si no está seguro.',
);
const noPhoto = (item: Pick<DocumentItem, 'number' | 'title' | 'titleEs'>): Text =>
  text(`Finding ${item.number} (${item.title}) has no photo.`, `El ${findingEs(item)} no tiene foto.`);

function cautionsOf({ items }: Pick<DraftParts, 'items'>): Text[] {
  const bare = items.filter((item) => item.photos.length === 0).map(noPhoto);
  return [screening, law, ...bare];
}
