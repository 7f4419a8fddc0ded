import { countText, decimal, type Text, text } from '../../kernel/index.ts';

const UNIT_WORDS: Readonly<Record<string, readonly [one: Text, other: Text]>> = {
  each: [text('each', 'pieza'), text('each', 'piezas')],
  sf: [text('sf', 'pie²'), text('sf', 'pies²')],
  lf: [text('lf', 'pie'), text('lf', 'pies')],
};

/** A unit of work as it stands behind a quantity; one typed by hand stays as it was typed, in both languages. */
export function unitText(unit: string, quantity: number): Text {
  const [one, other] = UNIT_WORDS[unit] ?? [text(unit, unit), text(unit, unit)];
  return countText(quantity, one, other);
}

/** A quantity with its unit: `16 each`, `16 piezas`. */
export function amountText(quantity: number, unit: string): Text {
  const { en, es } = unitText(unit, quantity);
  return text(`${decimal(quantity)} ${en}`, `${decimal(quantity)} ${es}`);
}
