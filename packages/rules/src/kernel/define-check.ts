import type * as z from 'zod';
import { holds } from './conditions.ts';
import type { Complete, Field, Fields, Partials } from './fields.ts';
import { type InputIssue, schemaOf } from './input-schema.ts';
import type { Outcome, Quantity, Referral, Severity, Verdict } from './outcome.ts';
import type { Role, SeverityFacts, Situation } from './severity.ts';
import type { Source } from './source.ts';
import type { Text } from './text.ts';

export interface Edition {
  readonly id: string;
  readonly title: Text;
}

/** What a check says; the kernel adds severity, missing names, standing cautions and version. */
export interface Judgement {
  readonly verdict: Verdict;
  readonly ratio?: number | null;
  readonly remaining?: number | null;
  readonly values?: Readonly<Record<string, Quantity>>;
  readonly reasons: readonly Text[];
  readonly cautions?: readonly Text[];
  readonly referrals?: readonly Referral[];
  readonly repairs?: readonly string[];
  /** What this judgement tells the severity table beyond verdict, ratio and remaining. */
  readonly facts?: Partial<Omit<SeverityFacts, 'verdict' | 'remaining'>>;
  /** Optional inputs without which this verdict could not be told. */
  readonly missing?: readonly string[];
  /** The sources this judgement used; all of the check's when left out. */
  readonly sources?: readonly Source[];
}

/** What can be said while something is still to be measured; the verdict is `undetermined`. */
export type KnownAlready = Pick<Judgement, 'reasons' | 'facts' | 'referrals' | 'repairs'>;

export interface JudgeContext {
  readonly edition: string;
  readonly situation: Situation;
}

/** Where the expected numbers of a case come from. */
export type CaseOrigin = 'published' | 'memory' | 'hand-worked' | 'common-practice';

/** A worked case: it documents the check and is run as its test. */
export interface CheckCase {
  /** A fact in words. */
  readonly name: string;
  readonly origin: CaseOrigin;
  /** Document, edition, section, or how it was worked. */
  readonly source: string;
  readonly edition?: string;
  readonly inputs: unknown;
  readonly situation?: Situation;
  readonly expect: {
    readonly verdict: Verdict;
    readonly ratio?: number | null;
    readonly remaining?: number | null;
    readonly severity?: Severity;
    readonly values?: Readonly<Record<string, number | string | boolean>>;
    readonly missing?: readonly string[];
    readonly referrals?: readonly Referral[];
    readonly repairs?: readonly string[];
  };
  /** Largest absolute difference, with why it is not smaller. Left out, numbers agree to 1e-9. */
  readonly tolerance?: { readonly within: number; readonly reason: string };
}

/** Sentences for the owner of the house. */
export interface ClientWords<I> {
  readonly found: (inputs: I, outcome: Outcome) => Text;
  readonly why: Text;
  readonly ifNot: Text;
}

export interface CheckSpec<F extends Fields> {
  readonly id: string;
  readonly title: Text;
  /** How the crew picks this check, in plain words. */
  readonly question: Text;
  readonly element: string;
  readonly picture: string;
  readonly role: Role;
  readonly editions: readonly Edition[];
  readonly defaultEdition: string;
  /** Picks the edition when the request or the inputs name it in another way. */
  readonly chooseEdition?: (asked: string | undefined, inputs: Partials<F>) => string;
  readonly sources: readonly Source[];
  readonly inputs: F;
  /** Impossible combinations of inputs that are each possible alone. */
  readonly refine?: (inputs: Partials<F>) => readonly InputIssue[];
  /** Called when nothing needed is missing. */
  readonly evaluate: (inputs: Complete<F>, context: JudgeContext) => Judgement;
  /** Called when something is missing: what the verdict `undetermined` can already say, or undefined. */
  readonly knownAlready?: (inputs: Partials<F>) => KnownAlready | undefined;
  /** Every repair this check may propose. */
  readonly repairs: readonly string[];
  readonly client: ClientWords<Partials<F>>;
  readonly doesNotCover: readonly Text[];
  readonly cases: readonly CheckCase[];
}

type AnyInputs = Readonly<Record<string, unknown>>;

/** A check with its input types forgotten, as the registry, the API and the forms hold it. */
export interface Check
  extends Omit<CheckSpec<Fields>, 'chooseEdition' | 'refine' | 'evaluate' | 'knownAlready' | 'client'> {
  readonly chooseEdition?: (asked: string | undefined, inputs: AnyInputs) => string;
  readonly refine?: (inputs: AnyInputs) => readonly InputIssue[];
  readonly evaluate: (inputs: AnyInputs, context: JudgeContext) => Judgement;
  readonly knownAlready?: (inputs: AnyInputs) => KnownAlready | undefined;
  readonly client: ClientWords<AnyInputs>;
  readonly schema: z.ZodType<AnyInputs>;
}

/**
 * Defines a check once; its API route, capture form, report text and documentation are drawn from the definition.
 * The input types are checked here and forgotten in the result: the derived schema guarantees them at run time.
 */
export function defineCheck<const F extends Fields>(spec: CheckSpec<F>): Check {
  return { ...(spec as unknown as Omit<Check, 'schema'>), schema: schemaOf(spec.inputs) };
}

/** The zod schema of a check's inputs. */
export const inputSchema = (check: Check): z.ZodType<AnyInputs> => check.schema;

function isNeeded(field: Field, siblings: AnyInputs): boolean {
  const needed = field.needed ?? 'always';
  if (needed === 'optional') return false;
  return needed === 'always' || holds(needed.when, siblings);
}

/** Names of the needed inputs that are absent, nested ones dotted (`counts.flush`, `members.0.sizeIn`). */
export function missingInputs(fields: Fields, inputs: AnyInputs): string[] {
  const missing: string[] = [];
  collectMissing(fields, inputs, '', missing);
  return missing;
}

function collectMissing(fields: Fields, inputs: AnyInputs, prefix: string, missing: string[]): void {
  for (const name in fields) {
    const field = fields[name];
    const value = inputs[name];
    if (field === undefined) continue;
    if (value === undefined || value === null) {
      if (isNeeded(field, inputs)) missing.push(prefix + name);
    } else if (field.kind === 'group') {
      collectMissing(field.fields, value as AnyInputs, `${prefix}${name}.`, missing);
    } else if (field.kind === 'list') {
      for (const [at, item] of (value as AnyInputs[]).entries())
        collectMissing(field.item, item, `${prefix}${name}.${at}.`, missing);
    }
  }
}
