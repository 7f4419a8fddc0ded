import { JudgedOutcome } from './judged-outcome.ts';
import {
  type AnyInputs,
  type Check,
  fieldAt,
  type InputIssue,
  type Judgement,
  joinTexts,
  type KnownAlready,
  type ReadResult,
  type Situation,
  type Text,
  text,
} from './kernel/index.ts';

/** The check has no such edition; `allowed` lists those it has. */
export class UnknownEditionError extends Error {
  override readonly name = 'UnknownEditionError';
  readonly edition: string;
  readonly allowed: readonly string[];
  constructor(edition: string, allowed: readonly string[]) {
    super(`There is no edition "${edition}"; allowed are ${allowed.join(', ')}.`);
    this.edition = edition;
    this.allowed = allowed;
  }
}

/** The inputs are of a wrong type, impossible, or unknown; each issue names the input, what came and what is allowed. */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly issues: readonly InputIssue[];
  constructor(issues: readonly InputIssue[]) {
    super(issues.map((issue) => issue.message.en).join(' '));
    this.issues = issues;
  }
}

export interface EvaluateRequest {
  readonly edition?: string | undefined;
  readonly inputs: unknown;
  /** What the place says (stories above, shored already, …); unknown facts are taken cautiously. */
  readonly context?: Situation | undefined;
}

/**
 * Judges measurements by a check in hand, registered or not. A missing measurement is an `undetermined` outcome, never an
 * error. Throws UnknownEditionError or InputError.
 */
export function runCheck(check: Check, request: EvaluateRequest): JudgedOutcome {
  const { inputs, missing } = readInputs(check, request.inputs);
  const edition = readEdition(check, request.edition, inputs);
  const situation = request.context ?? NOWHERE;
  const judgement =
    missing.length === 0
      ? check.evaluate(inputs, { edition, situation })
      : stillToMeasure(check, missing, check.knownAlready?.(inputs));
  return new JudgedOutcome(check, edition, situation, judgement, missing);
}

function readInputs(check: Check, raw: unknown): ReadResult {
  const read = check.read(raw);
  const wrong = read.issues.length === 0 ? check.refine?.(read.inputs) : read.issues;
  if (wrong && wrong.length > 0) throw new InputError(wrong);
  return read;
}

function readEdition(check: Check, asked: string | undefined, inputs: AnyInputs): string {
  const chosen = check.chooseEdition ? check.chooseEdition(asked, inputs) : (asked ?? check.defaultEdition);
  if (chosen !== check.defaultEdition && !check.editions.some((edition) => edition.id === chosen))
    throw new UnknownEditionError(
      chosen,
      check.editions.map((edition) => edition.id),
    );
  return chosen;
}

const NONE: readonly never[] = [];
const NO_FACTS = {};
/** Nothing is known of the place. */
const NOWHERE: Situation = {};

function stillToMeasure(check: Check, missing: readonly string[], known: KnownAlready | undefined): Judgement {
  return {
    verdict: 'undetermined',
    reasons: () => [...(known?.reasons() ?? []), stillToMeasureWords(check, missing)],
    referrals: known?.referrals ?? NONE,
    repairs: known?.repairs ?? NONE,
    facts: known?.facts ?? NO_FACTS,
  };
}

/** The names of missing inputs in the words of the form. */
function stillToMeasureWords(check: Check, missing: readonly string[]): Text {
  const labels = missing.map((path) => {
    const steps = path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));
    return fieldAt(check.inputs, steps)?.label ?? text(path, path);
  });
  const names = joinTexts([...new Map(labels.map((label) => [label.en, label])).values()], ', ');
  return text(`Still to be measured: ${names.en}.`, `Falta medir: ${names.es}.`);
}
