import { type Severity, type Text, text } from '../kernel/index.ts';
import { suggestDays } from './days.ts';
import type { ContractEffect, DocumentItem, DocumentPart } from './document/change-order-document.ts';
import { findingEs } from './draft-document.ts';
import { type Group, priceGroup } from './groups.ts';
import { sharesOf } from './shares.ts';

/**
 * What the offer comes to for every choice of its findings short of all. `contractAfter` tells the contract before and after
 * a change of so many cents and days.
 */
export function priceParts(
  group: Group,
  { items, days }: { readonly items: readonly DocumentItem[]; readonly days: number },
  contractAfter: (change: { cents: number; days: number }) => ContractEffect,
): DocumentPart[] {
  const { findings } = group;
  const whole = priceGroup({ ...group, declined: [] });
  const suggested = suggestDays(whole.scope.hours, whole.time).days;
  return choicesOf(findings).map((chosen): DocumentPart => {
    const findingIds = chosen.map(({ id }) => id);
    const left = items.filter(({ findingId }) => !findingIds.includes(findingId));
    const declined = findings.filter((finding) => !chosen.includes(finding));
    const { scope, time, alone, covered } = priceGroup({ ...group, findings: chosen, declined });
    const shares = sharesOf(scope, findingIds, alone);
    const daysLeft = daysOfPart(days, suggested, suggestDays(scope.hours, time).days);
    return {
      findingIds,
      price: withoutSteps(scope),
      shares: findingIds.map((findingId, at) => ({ findingId, cents: shares[at] ?? 0 })),
      days: daysLeft,
      contract: contractAfter({ cents: scope.totalCents, days: daysLeft }),
      cautions: cautionsOfPart(left, covered),
    };
  });
}

/** Every choice short of all and none, the larger ones first, each in the order given. */
export function choicesOf<T>(all: readonly T[]): T[][] {
  const whole = 2 ** all.length - 1;
  const choices = Array.from({ length: Math.max(0, whole - 1) }, (_, at) =>
    all.filter((_one, bit) => Math.floor((at + 1) / 2 ** bit) % 2 === 1),
  );
  return choices.sort((a, b) => b.length - a.length);
}

/** Days typed by the estimator shrink as the suggested ones do. */
export const daysOfPart = (days: number, suggestedForAll: number, suggested: number): number =>
  suggestedForAll === 0 ? days : Math.min(days, Math.ceil((days * suggested) / suggestedForAll));

type LeftOut = Pick<DocumentItem, 'findingId' | 'number' | 'title' | 'titleEs' | 'severity'>;

/** What leaving findings out means, for the client. `covered` are those of them that the rest of the work closes in. */
export const cautionsOfPart = (left: readonly LeftOut[], covered: readonly string[]): Text[] =>
  left.flatMap((item) => [
    ...(severityCaution[item.severity]?.(item) ?? []),
    ...(covered.includes(item.findingId) ? [closedIn(item)] : []),
  ]);

const severityCaution: Partial<Record<Severity, (item: LeftOut) => Text[]>> = {
  'make-safe': ({ number, title, titleEs }) => [
    text(
      `Finding ${number} (${title}) must be made safe now. Leaving it out does not make it safe.`,
      `Hay que asegurar ya el ${findingEs({ number, titleEs })}. Dejarlo fuera no quita el peligro.`,
    ),
  ],
  engineer: ({ number, title, titleEs }) => [
    text(
      `An engineer decides about finding ${number} (${title}). The building official may still ask for it.`,
      `Un ingeniero decide sobre el ${findingEs({ number, titleEs })}. El oficial de construcción puede pedirlo de todos modos.`,
    ),
  ],
};

const closedIn = ({ number, title, titleEs }: LeftOut): Text =>
  text(
    `The other work closes the wall over finding ${number} (${title}). Opening it again later costs extra.`,
    `El otro trabajo cierra la pared sobre el ${findingEs({ number, titleEs })}. Abrirla otra vez más tarde cuesta más.`,
  );

/** The lines of a part without how each came about, which the whole tells. */
export const withoutSteps = (price: DocumentPart['price']): DocumentPart['price'] => ({
  ...price,
  lines: price.lines.map((line) => ({ ...line, steps: [] })),
});
