import {
  type ChangeOrder,
  type ChangeOrderDocument,
  type DocumentItem,
  letterSections,
  type PricedScope,
  type PriceLine,
  type Wording,
} from '@underlath/contract';
import { allocate, roundCents, type Text, text } from '@underlath/rules';
import { consent } from './consent.ts';

/** What would be sent now: everything but the moment of sending. */
export type DraftDocument = ChangeOrder['draft'];

export interface DraftParts {
  changeOrderId: string;
  number: number;
  version: number;
  company: ChangeOrderDocument['company'];
  project: ChangeOrderDocument['project'];
  wording: Wording;
  items: Omit<DocumentItem, 'shareCents'>[];
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

/**
 * Each finding's part of the total. A line that several need is split in proportion to what that work would cost for
 * each alone; the parts add up to the total.
 */
export function sharesOf(
  price: PricedScope,
  findingIds: readonly string[],
  alone: ReadonlyMap<string, PricedScope>,
): number[] {
  const aloneCents = (id: string, { operation }: PriceLine): number =>
    (alone.get(id)?.lines ?? [])
      .filter((line) => line.operation === operation)
      .reduce((sum, line) => sum + Math.max(0, line.totalCents), 0);
  const part = (id: string, line: PriceLine): number => {
    const whole = line.findingIds.reduce((sum, one) => sum + aloneCents(one, line), 0);
    return whole > 0 ? aloneCents(id, line) / whole : 1 / line.findingIds.length;
  };
  const weights = findingIds.map((id) =>
    price.lines
      .filter((line) => line.findingIds.includes(id))
      .reduce((sum, line) => sum + line.totalCents * part(id, line), 0),
  );
  return allocateSigned(price.totalCents, weights);
}

/** In proportion to weights of which some may be below nothing, as those of a finding that is mostly credits. */
function allocateSigned(totalCents: number, weights: readonly number[]): number[] {
  const [up, down] = [weights.map((weight) => Math.max(0, weight)), weights.map((weight) => Math.max(0, -weight))];
  const [upSum, downSum] = [up, down].map((part) => part.reduce((sum, weight) => sum + weight, 0)) as [number, number];
  if (upSum === downSum) return allocate(totalCents, up);
  const upCents = roundCents((totalCents * upSum) / (upSum - downSum));
  const [gains, losses] = [allocate(upCents, up), allocate(totalCents - upCents, down)];
  return weights.map((_weight, at) => (gains[at] ?? 0) + (losses[at] ?? 0));
}

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
