import { type Test, testOf } from './conditions.ts';
import type { Drawing } from './drawing.ts';
import type { Complete, Fields, Partials } from './fields.ts';
import type { LossMode } from './loss-modes.ts';
import type { Assumed, Outcome, Quantity, Referral, Severity, Verdict } from './outcome.ts';
import { type AnyInputs, type InputIssue, inputReader, type ReadInputs } from './read-inputs.ts';
import { type ElementRole, ENGINEER_REPAIR, type SeverityFacts, type Situation } from './severity.ts';
import type { Basis, Source } from './source.ts';
import { type Text, text } from './text.ts';

export interface Edition {
  readonly id: string;
  readonly title: Text;
}

/** What a check says; the kernel adds severity, missing names, standing cautions and version. */
export interface Judgement {
  readonly verdict: Verdict;
  readonly ratio?: number | null;
  readonly remaining?: number | null;
  readonly values?: () => Readonly<Record<string, Quantity>>;
  /** Built only when somebody reads them: judging thousands of findings needs no words. */
  readonly reasons: () => readonly Text[];
  readonly cautions?: () => readonly Text[];
  readonly referrals?: readonly Referral[];
  readonly repairs?: readonly string[];
  /** What this judgement tells the severity table beyond verdict, ratio and remaining. */
  readonly facts?: Partial<Omit<SeverityFacts, 'verdict' | 'remaining'>>;
  /** What this judgement took of the place because nobody said it; inputs say so themselves. */
  readonly assumed?: readonly Assumed[];
  /** Optional inputs without which this verdict could not be told. */
  readonly missing?: readonly string[];
  /** The sources this judgement used; all of the check's when left out. */
  readonly sources?: readonly Source[];
  /**
   * The sources on which the verdict hangs; all that were used when left out. With one of them not read in print the
   * outcome says so among its reasons; with one from memory it also refers.
   */
  readonly hangsOn?: readonly Source[];
}

/** What can be said while something is still to be measured; the verdict is `undetermined`. */
export type KnownAlready = Pick<Judgement, 'reasons' | 'facts' | 'referrals' | 'repairs'>;

export interface JudgeContext {
  readonly edition: string;
  readonly situation: Situation;
}

/** Where the expected numbers of a case come from. */
export type CaseOrigin = Basis | 'hand-worked';

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

/** The name of a value a check answers and, in words, how it is worked out. */
export interface ValueWord {
  readonly label: Text;
  readonly how: Text;
}
/** By value name; `changeIn` also stands for `changeIn.joist A`. */
export type ValueWords = Readonly<Record<string, ValueWord>>;

/** What the cases file beside a check exports. */
export interface CheckEvidence {
  readonly cases: readonly CheckCase[];
  readonly values: ValueWords;
  /** What the rule asks, in our own words. */
  readonly rule: Text;
}

/** Sentences for the owner of the house. */
export interface ClientWords<I> {
  readonly found: (inputs: I, outcome: Outcome) => Text;
  readonly why: Text;
  readonly ifNot: Text;
}

/** What a list shows of a check before the check itself is loaded. */
export interface CheckCard {
  readonly id: string;
  readonly title: Text;
  /** How the crew picks this check, in plain words. */
  readonly question: Text;
  readonly element: string;
  readonly role: ElementRole;
  /** False for a calculation that needs figures nobody measures on site: the phone does not offer it. */
  readonly forCrew?: false;
  /** The way of losing strength it measures; two findings of one way on one link multiply. */
  readonly lossMode?: LossMode;
  /** Where the tape goes, loaded when it is drawn. */
  readonly drawing: () => Promise<{ readonly drawing: Drawing }>;
}

export interface CheckSpec<F extends Fields> extends CheckCard {
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
  /** Loaded when asked for: a phone that judges needs neither the worked cases nor the words of the values. */
  readonly cases: () => Promise<CheckEvidence>;
}

/** A check with its input types forgotten, as the registry, the API and the forms hold it. */
export interface Check
  extends Omit<CheckSpec<Fields>, 'chooseEdition' | 'refine' | 'evaluate' | 'knownAlready' | 'client'> {
  readonly chooseEdition?: (asked: string | undefined, inputs: AnyInputs) => string;
  readonly refine?: (inputs: AnyInputs) => readonly InputIssue[];
  readonly evaluate: (inputs: AnyInputs, context: JudgeContext) => Judgement;
  readonly knownAlready?: (inputs: AnyInputs) => KnownAlready | undefined;
  readonly client: ClientWords<AnyInputs>;
  readonly read: ReadInputs;
  /** Its inputs of which the hardest answer counts while they are left out, with their possible answers. */
  readonly hardest: readonly HardestInput[];
}

/** An input that is tried with every answer while it is left out. */
export interface HardestInput {
  readonly name: string;
  readonly isShown: Test;
  readonly answers: readonly { readonly value: string | boolean; readonly label: Text }[];
}

const YES_NO = [
  { value: true, label: text('yes', 'sí') },
  { value: false, label: text('no', 'no') },
] as const;

const hardestOf = (fields: Fields): HardestInput[] =>
  Object.entries(fields).flatMap(([name, field]) => {
    if ((field.kind !== 'choice' && field.kind !== 'flag') || !field.hardest) return [];
    const isShown = field.showWhen ? testOf(field.showWhen) : () => true;
    return [{ name, isShown, answers: field.kind === 'choice' ? field.options : YES_NO }];
  });

/** Where a part carries load an engineer may decide, whatever the check itself proposes. */
const repairsOf = ({ role, repairs }: Pick<CheckSpec<Fields>, 'role' | 'repairs'>): readonly string[] =>
  (role === 'gravity' || role === 'lateral') && !repairs.includes(ENGINEER_REPAIR)
    ? [...repairs, ENGINEER_REPAIR]
    : repairs;

/**
 * Defines a check once; its API route, capture form, report text and documentation are drawn from the definition.
 * The input types are checked here and forgotten in the result: the derived reader guarantees them at run time.
 */
export function defineCheck<const F extends Fields>(spec: CheckSpec<F>): Check {
  return {
    ...(spec as unknown as Omit<Check, 'read' | 'hardest'>),
    repairs: repairsOf(spec),
    read: inputReader(spec.inputs),
    hardest: hardestOf(spec.inputs),
  };
}
