import { canBeParted, type DocumentItem, type DocumentPart, MOST_IN_PARTS, type Severity } from '@underlath/contract';
import { type Text, text } from '@underlath/rules';
import { invalidInput } from '../../platform/problem-error.ts';
import { findingEs } from './offer-document.ts';

/** @throws ProblemError `invalid-input` for findings so few or so many that none can be left out */
export function assertCanPart(count: number): void {
  if (canBeParted(count)) return;
  throw invalidInput(
    '/byPart',
    `came as true for ${count === 1 ? 'one finding' : `${count} findings`}; allowed is true for 2 to ${MOST_IN_PARTS} findings`,
  );
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
