import type { Field, Fields } from '@underlath/rules';

/** From 0 up to 1. */
export type Draw = () => number;
type Inputs = Record<string, unknown>;

/** What the kernel takes where a field says nothing else. */
const MOST_ITEMS = 200;
const LONGEST_NAME = 60;

/** Inputs of a check as its own fields allow them, as large as they may be: lists and names at full length, every option. */
export const fullInputs = (fields: Fields, draw: Draw): Inputs =>
  Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, anyValueOf(field, draw)]));

function anyValueOf(field: Field, draw: Draw): unknown {
  switch (field.kind) {
    case 'length':
    case 'number': {
      const { min, max } = field;
      if (field.kind === 'length' && field.oneOf) return field.oneOf[Math.floor(draw() * field.oneOf.length)];
      // Half of them small, as most measurements are: large ones are often refused together.
      const reach = draw() < 0.5 ? Math.min(max - min, 12) : max - min;
      return min + Math.round(draw() * reach * 16) / 16;
    }
    case 'count': {
      const { min = 0, max = 100_000 } = field;
      return min + Math.floor(draw() * (draw() < 0.5 ? Math.min(max - min, 60) : max - min));
    }
    case 'choice':
      return field.options[Math.floor(draw() * field.options.length)]?.value;
    case 'flag':
      return draw() < 0.5;
    case 'name':
      return `${Math.floor(draw() * 1e6)}`.padEnd(field.maxLength ?? LONGEST_NAME, 'x');
    case 'group':
      return fullInputs(field.fields, draw);
    case 'list':
      return Array.from({ length: field.maxItems ?? MOST_ITEMS }, () => fullInputs(field.item, draw));
  }
}

/** Inputs that a check takes, with what its lists hold repeated as often as it may be, and something else drawn in their place at times. */
export function lengthened(inputs: Inputs, fields: Fields, draw: Draw): Inputs {
  const known = Object.entries(inputs).map(([name, value]) => {
    const field = fields[name];
    if (!field || value === null || value === undefined) return [name, value];
    if (field.kind === 'group') return [name, lengthened(value as Inputs, field.fields, draw)];
    if (field.kind === 'list' && Array.isArray(value) && value.length > 0) {
      const length = field.maxItems ?? MOST_ITEMS;
      const item = (at: number) => {
        const like: unknown = value[at % value.length];
        return typeof like === 'object' && like !== null ? lengthened(like as Inputs, field.item, draw) : like;
      };
      return [name, Array.from({ length }, (_, at) => item(at))];
    }
    return [name, draw() < 0.1 ? anyValueOf(field, draw) : value];
  });
  return Object.fromEntries(known);
}
