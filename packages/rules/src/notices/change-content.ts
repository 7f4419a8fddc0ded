import { type Source, type Text, text } from '../kernel/index.ts';
import { COMMON_CONTENT, STATE_PROFILES } from './states.data.ts';

/** What a written change can carry. */
export const CONTENT_ITEMS = [
  'in-writing',
  'signed-by-all',
  'signed-before-work',
  'scope',
  'amount',
  'payment-effect',
  'finish-effect',
  'copy-to-owner',
] as const;
export type ContentItem = (typeof CONTENT_ITEMS)[number];

export const CONTENT_WORDS: Record<ContentItem, Text> = {
  'in-writing': text('The change is in writing', 'El cambio está por escrito'),
  'signed-by-all': text('Everyone the contract names signs it', 'Lo firman todos los que nombra el contrato'),
  'signed-before-work': text('It is signed before its work starts', 'Se firma antes de empezar el trabajo'),
  scope: text('What is added, changed or left out', 'Qué se agrega, se cambia o no se hace'),
  amount: text('The amount added or taken off', 'La cantidad que se suma o se resta'),
  'payment-effect': text('What it does to the payments', 'Qué cambia en los pagos'),
  'finish-effect': text('What it does to the finish date', 'Qué cambia en el fin de la obra'),
  'copy-to-owner': text('The owner gets a copy', 'El dueño recibe una copia'),
};

/** One thing asked for; any of its items is enough. */
export interface ContentRule {
  readonly anyOf: readonly ContentItem[];
  /** `law` as a text of law or a note on it was read; `care` where only prudence asks for it. */
  readonly weight: 'law' | 'care';
  readonly source: Source;
}

export interface StateProfile {
  /** Two letters, as in a postal address. */
  readonly state: string;
  readonly name: string;
  /** The day the sources were last looked at, `YYYY-MM-DD`. */
  readonly checkedOn: string;
  /** False while what the state says of changes, not only of contracts, has not been found. */
  readonly verified: boolean;
  readonly rules: readonly ContentRule[];
  readonly notes: readonly Text[];
}

export interface ContentGap {
  readonly anyOf: readonly ContentItem[];
  readonly words: Text;
  readonly weight: 'law' | 'care';
  readonly source: Source;
}

export interface ContentReview {
  /** Null for a state with no profile or not known: the common list was used. */
  readonly profile: StateProfile | null;
  /** What the state's own list names first. Each warns; going on without it needs a reason that is logged. */
  readonly missing: readonly ContentGap[];
  readonly cautions: readonly Text[];
}

const COUNSEL = text(
  'Check with counsel. Laws change, and a full list does not make a document valid.',
  'Consulte a un abogado. Las leyes cambian, y una lista completa no hace válido un documento.',
);
const UNVERIFIED = text(
  'What this state asks of a change, not only of a contract, was not found; the list is what care asks for.',
  'No se encontró qué pide este estado para un cambio, no solo para un contrato; la lista es lo que pide la prudencia.',
);
const NO_PROFILE = text(
  'There is no list for this state here; the one shown is what changes commonly carry.',
  'Aquí no hay una lista para este estado; la que se muestra es lo que suelen llevar los cambios.',
);

const NO_STATE = text(
  'The state of the site is not said; the list shown is what changes commonly carry.',
  'No se ha dicho el estado del sitio; la lista que se muestra es lo que suelen llevar los cambios.',
);

/**
 * What a written change lacks for its state. It judges no law: it compares with a list of what was read, and says from where.
 * @param state two letters, any case; null where it is not known. That and a state with no profile get the common list
 * @param carried what the change carries
 */
export function reviewContent(state: string | null, carried: readonly ContentItem[]): ContentReview {
  const profile = STATE_PROFILES.find((one) => one.state === state?.toUpperCase()) ?? null;
  const rules = [...(profile?.rules ?? []), ...careOf(profile)];
  const missing = rules
    .filter(({ anyOf }) => !anyOf.some((item) => carried.includes(item)))
    .map(({ anyOf, weight, source }): ContentGap => ({ anyOf, words: wordsOf(anyOf), weight, source }));
  const doubt = profile ? (profile.verified ? [] : [UNVERIFIED]) : [state === null ? NO_STATE : NO_PROFILE];
  return { profile, missing, cautions: [...doubt, ...(profile?.notes ?? []), COUNSEL] };
}

/** The common list, without what the state's own rules name by themselves. */
const careOf = (profile: StateProfile | null): readonly ContentRule[] =>
  COMMON_CONTENT.filter(
    ({ anyOf: [item] }) => !profile?.rules.some(({ anyOf }) => anyOf.length === 1 && anyOf[0] === item),
  );

function wordsOf(items: readonly ContentItem[]): Text {
  const words = items.map((item) => CONTENT_WORDS[item]);
  return text(words.map(({ en }) => en).join(', or: '), words.map(({ es }) => es).join(', o: '));
}
