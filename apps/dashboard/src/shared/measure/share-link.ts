import { findingContext } from '@underlath/contract';
import type { Check, Fields, Locale, Situation } from '@underlath/rules';
import { fillMessage } from '../i18n/define.ts';
import { localeTags } from '../i18n/locale.tsx';
import { shareWords } from '../i18n/messages/share.ts';
import { askedInputs, type Inputs } from './form.ts';

/** What a link to a check's sheet carries. */
export type Shared = { inputs: Inputs; edition?: string | undefined; context: Situation };

/** The names in an address that are no inputs: `by` is the edition, `at.shored` and so on what stands around it. */
const EDITION = 'by';
const AROUND = 'at.';
/** A list that was answered with no items, as against one nobody answered. */
const NONE = 'none';
const MAX_ITEMS = 200;

/** The words of an address for these measurements: `diameterIn=0.625&nut=hex&tie.thicknessIn=0.054&members.0.name=joist`. */
export function toSearch(check: Check, { inputs, edition, context }: Shared): Record<string, string> {
  return {
    ...(edition === undefined ? {} : { [EDITION]: edition }),
    ...Object.fromEntries(leaves(askedInputs(check.inputs, inputs), '')),
    ...Object.fromEntries(leaves(context, AROUND)),
  };
}

function leaves(value: unknown, path: string): [string, string][] {
  if (value === undefined || value === null) return [];
  if (typeof value === 'boolean') return [[path, value ? 'yes' : 'no']];
  if (Array.isArray(value) && value.length === 0) return [[path, NONE]];
  if (typeof value !== 'object') return [[path, String(value)]];
  const before = path === '' || path.endsWith('.') ? path : `${path}.`;
  return Object.entries(value).flatMap(([name, part]) => leaves(part, before + name));
}

/** Reads such an address. What can't be used is left out and named in `troubles`, in the reader's language. */
export function fromSearch(
  check: Check,
  search: Readonly<Record<string, string>>,
  locale: Locale,
): { shared: Shared; troubles: string[] } {
  const message = (key: keyof (typeof shareWords)['en'], params: Record<string, string>) =>
    fillMessage(shareWords[locale][key], localeTags[locale], params);
  const troubles: string[] = [];
  const given: Record<string, unknown> = {};
  const context: Record<string, unknown> = {};
  let edition: string | undefined;
  for (const [name, typed] of Object.entries(search)) {
    if (name === EDITION) {
      if (check.editions.some(({ id }) => id === typed)) edition = typed;
      else troubles.push(message('noEdition', { typed, allowed: check.editions.map(({ id }) => id).join(', ') }));
    } else if (name.startsWith(AROUND)) {
      const value = readAround(name.slice(AROUND.length), typed);
      if (value === undefined) troubles.push(message('noContext', { name, typed }));
      else context[name.slice(AROUND.length)] = value;
    } else if (!put(given, check.inputs, name.split('.'), typed)) {
      troubles.push(message('noInput', { name, typed }));
    }
  }
  const { inputs, refused } = readable(check, given);
  return {
    shared: { inputs, edition, context: context as Situation },
    troubles: [...troubles, ...refused.map((message) => message[locale])],
  };
}

/** The inputs the check can read, without those it refuses, and what it said of these. */
function readable(check: Check, given: Inputs) {
  const { issues } = check.read(given);
  const bad = new Set(issues.map(({ path }) => String(path[0])));
  return {
    inputs: Object.fromEntries(Object.entries(given).filter(([name]) => !bad.has(name))),
    refused: issues.map(({ words }) => words),
  };
}

/** Puts one typed word where its path leads; false when the check asks nothing there. */
function put(into: Record<string, unknown>, fields: Fields, [name = '', ...rest]: string[], typed: string): boolean {
  const field = Object.hasOwn(fields, name) ? fields[name] : undefined;
  if (!field) return false;
  if (field.kind === 'group') {
    const part = (into[name] ?? {}) as Record<string, unknown>;
    into[name] = part;
    return put(part, field.fields, rest, typed);
  }
  if (field.kind === 'list' && rest.length === 0) {
    if (typed === NONE) into[name] = [];
    return typed === NONE;
  }
  if (field.kind === 'list') {
    const at = Number(rest[0]);
    if (!Number.isInteger(at) || at < 0 || at >= MAX_ITEMS) return false;
    const items = (into[name] ?? []) as Record<string, unknown>[];
    into[name] = items;
    while (items.length <= at) items.push({});
    return put(items[at] ?? {}, field.item, rest.slice(1), typed);
  }
  if (rest.length > 0) return false;
  into[name] = valueAs(field.kind, typed);
  return true;
}

/** A word as the kind of value it stands for; what it can't be stays a word, which the check then refuses by name. */
function valueAs(kind: 'length' | 'number' | 'count' | 'choice' | 'flag' | 'name', typed: string): unknown {
  if (kind === 'choice' || kind === 'name') return typed;
  if (kind === 'flag') return typed === 'yes' ? true : typed === 'no' ? false : typed;
  return typed.trim() !== '' && Number.isFinite(Number(typed)) ? Number(typed) : typed;
}

function readAround(name: string, typed: string): unknown {
  const known = Object.hasOwn(findingContext.shape, name);
  if (!known) return undefined;
  const tries = [typed, valueAs('flag', typed), valueAs('number', typed)];
  return tries.find((value) => findingContext.shape[name as keyof Situation].safeParse(value).success);
}
