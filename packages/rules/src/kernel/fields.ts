import type { Condition } from './conditions.ts';
import type { Source } from './source.ts';
import type { Text } from './text.ts';

/** What is taken for an input that was left out, where somebody can read it and where that comes from. */
export interface Assumption {
  readonly text: Text;
  readonly source: Source;
}

/** Whether a check can answer without this input. `optional` is never asked for; the default is `always`. */
export type Needed = 'always' | 'optional' | { readonly when: Condition };

interface FieldBase {
  readonly label: Text;
  readonly howToMeasure?: Text;
  /** Id of the drawing that shows where the tape goes. */
  readonly picture?: string;
  readonly needed?: Needed;
  /**
   * What a verdict takes for granted while this input is left out. Without it, leaving the input out must never be kinder
   * than its worst value: `hardest` sees to that by trying every answer, or the check asks for it among `missing`.
   */
  readonly assumes?: Assumption;
  /** The form shows the field only then; the API always accepts it. */
  readonly showWhen?: Condition;
}

export interface LengthSpec extends FieldBase {
  readonly unit: 'in' | 'ft';
  readonly min: number;
  readonly max: number;
  /** Finest fraction of an inch offered for typing: 16 means sixteenths. */
  readonly denominator?: 8 | 16 | 32;
  /** What a length below zero is called, told without its sign: `Rod end short of the nut face`. */
  readonly belowZero?: Text;
  /** Only these sizes exist. */
  readonly oneOf?: readonly number[];
  readonly default?: number;
}
export interface NumberSpec extends FieldBase {
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly default?: number;
}
export interface CountSpec extends FieldBase {
  readonly min?: number;
  readonly max?: number;
  readonly default?: number;
}
export interface Option<V extends string = string> {
  readonly value: V;
  readonly label: Text;
}
/** Left out, every answer is tried and the hardest outcome stands. Only for inputs of the check itself, not of its lists. */
interface MayBeHardest {
  readonly hardest?: true;
}
export interface ChoiceSpec extends FieldBase, MayBeHardest {
  readonly options: readonly Option[];
  readonly default?: string;
}
export interface FlagSpec extends FieldBase, MayBeHardest {
  readonly default?: boolean;
}
export interface NameSpec extends FieldBase {
  readonly maxLength?: number;
}
export interface GroupSpec extends FieldBase {
  readonly fields: Fields;
}
export interface ListSpec extends FieldBase {
  readonly item: Fields;
  readonly minItems?: number;
  readonly maxItems?: number;
  /** A bare number is also accepted, alone or in the list, and read as an item with this field set. */
  readonly orNumber?: string;
  /** A bare word is also accepted in the list, and read as an item with this field set. */
  readonly orWord?: string;
}

export type LengthField = LengthSpec & { readonly kind: 'length' };
export type NumberField = NumberSpec & { readonly kind: 'number' };
export type CountField = CountSpec & { readonly kind: 'count' };
export type ChoiceField = ChoiceSpec & { readonly kind: 'choice' };
export type FlagField = FlagSpec & { readonly kind: 'flag' };
export type NameField = NameSpec & { readonly kind: 'name' };
export type GroupField = GroupSpec & { readonly kind: 'group' };
export type ListField = ListSpec & { readonly kind: 'list' };
/** One input of a check, as plain JSON: the reader, the form and the documentation are all drawn from it. */
export type Field =
  | LengthField
  | NumberField
  | CountField
  | ChoiceField
  | FlagField
  | NameField
  | GroupField
  | ListField;
export type Fields = { readonly [name: string]: Field };

/** A length in decimal inches or feet. */
export const length = <const S extends LengthSpec>(spec: S): S & { kind: 'length' } => ({ ...spec, kind: 'length' });
/** A measured number that is not a length. */
export const number = <const S extends NumberSpec>(spec: S): S & { kind: 'number' } => ({ ...spec, kind: 'number' });
/** A whole number of things, zero or more. */
export const count = <const S extends CountSpec>(spec: S): S & { kind: 'count' } => ({ ...spec, kind: 'count' });
/** One of several named answers. */
export const choice = <const S extends ChoiceSpec>(spec: S): S & { kind: 'choice' } => ({ ...spec, kind: 'choice' });
/** Yes or no; left out, null or "unknown" means not known. */
export const flag = <const S extends FlagSpec>(spec: S): S & { kind: 'flag' } => ({ ...spec, kind: 'flag' });
/** A short name given by the person who measures. */
export const named = <const S extends NameSpec>(spec: S): S & { kind: 'name' } => ({ ...spec, kind: 'name' });
/** Inputs that belong together. */
export const group = <const S extends GroupSpec>(spec: S): S & { kind: 'group' } => ({ ...spec, kind: 'group' });
/** Any number of like groups. */
export const list = <const S extends ListSpec>(spec: S): S & { kind: 'list' } => ({ ...spec, kind: 'list' });

type ScalarOf<F> = F extends { kind: 'length' | 'number' | 'count' }
  ? number
  : F extends { kind: 'choice'; options: readonly { value: infer V }[] }
    ? V
    : F extends { kind: 'flag' }
      ? boolean
      : F extends { kind: 'name' }
        ? string
        : never;

/** What may arrive: anything may be absent. */
export type Partials<F> = { readonly [K in keyof F]?: PartialOf<F[K]> | undefined };
type PartialOf<F> = F extends { kind: 'group'; fields: infer G }
  ? Partials<G>
  : F extends { kind: 'list'; item: infer I }
    ? readonly Partials<I>[]
    : ScalarOf<F>;

type MayBeAbsent<F> = F extends { default: unknown }
  ? false
  : F extends { needed: 'optional' | { when: Condition } }
    ? true
    : false;
/** What a check is handed when nothing it needs is missing. */
export type Complete<F> = {
  readonly [K in keyof F]: MayBeAbsent<F[K]> extends true ? CompleteOf<F[K]> | undefined : CompleteOf<F[K]>;
};
type CompleteOf<F> = F extends { kind: 'group'; fields: infer G }
  ? Complete<G>
  : F extends { kind: 'list'; item: infer I }
    ? readonly Complete<I>[]
    : ScalarOf<F>;
