import {
  type AnyInputs,
  type Check,
  firstIssues,
  type HardestInput,
  type InputIssue,
  type Judgement,
  type KnownAlready,
  type Outcome,
  type ReadResult,
  SEVERITIES,
  type Situation,
  type Text,
  type Verdict,
} from '../kernel/index.ts';
import { JudgedOutcome } from './judged-outcome.ts';
import { stillToMeasureWords } from './still-to-measure.ts';

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
  /** What the place says (stories above, shored already, …); what is unknown and could matter is listed as assumed. */
  readonly context?: Situation | undefined;
}

/**
 * Judges measurements by a check in hand, registered or not. A missing measurement is an `undetermined` outcome, never an
 * error. Throws UnknownEditionError or InputError.
 */
export function runCheck(check: Check, request: EvaluateRequest): JudgedOutcome {
  const read = readInputs(check, request.inputs);
  const situation = request.context ?? NOWHERE;
  if (check.hardest.length > 0) {
    const open = check.hardest.filter(({ name, isShown }) => read.inputs[name] === undefined && isShown(read.inputs));
    if (open.length > 0) return judgeHardest(check, request, situation, open);
  }
  return judge(check, request.edition, situation, read, NO_ANSWERS);
}

interface TriedAnswer {
  readonly input: string;
  readonly value: string | boolean;
  readonly answer: Text;
}

function judge(
  check: Check,
  asked: string | undefined,
  situation: Situation,
  { inputs, missing, assumed }: ReadResult,
  hardest: readonly TriedAnswer[],
): JudgedOutcome {
  const edition = readEdition(check, asked, inputs);
  const judgement =
    missing.length === 0
      ? check.evaluate(inputs, { edition, situation })
      : stillToMeasure(check, missing, check.knownAlready?.(inputs));
  return new JudgedOutcome(check, edition, situation, judgement, missing, { names: assumed, hardest });
}

/** Tries every answer of the inputs left open and keeps the hardest outcome; combinations that cannot be are passed over. */
function judgeHardest(
  check: Check,
  { edition, inputs }: EvaluateRequest,
  situation: Situation,
  open: readonly HardestInput[],
): JudgedOutcome {
  let hardest: JudgedOutcome | undefined;
  for (const answers of everyAnswer(open)) {
    const read = check.read({
      ...(inputs as AnyInputs),
      ...Object.fromEntries(answers.map(({ input, value }) => [input, value])),
    });
    if (read.issues.length > 0 || (check.refine?.(read.inputs) ?? NONE).length > 0) continue;
    const outcome = judge(check, edition, situation, read, answers);
    if (!hardest || compareHardness(outcome, hardest) < 0) hardest = outcome;
  }
  if (!hardest) throw new Error(`${check.id} has no answer that fits for ${open.map(({ name }) => name).join(', ')}`);
  return hardest;
}

const everyAnswer = (open: readonly HardestInput[]): TriedAnswer[][] =>
  open.reduce<TriedAnswer[][]>(
    (before, { name, answers }) =>
      before.flatMap((tried) => answers.map(({ value, label }) => [...tried, { input: name, value, answer: label }])),
    [[]],
  );

/** From hard to kind: what fails, what cannot be told, what meets or does not apply. */
const HARDNESS: Record<Verdict, number> = { fails: 0, undetermined: 1, meets: 2, 'not-applicable': 2 };

/** Below zero when `a` is the harder outcome: by verdict, then severity, then what is left. */
const compareHardness = (a: Outcome, b: Outcome): number =>
  HARDNESS[a.verdict] - HARDNESS[b.verdict] ||
  SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
  (a.remaining ?? 1) - (b.remaining ?? 1);

function readInputs(check: Check, raw: unknown): ReadResult {
  const read = check.read(raw);
  const wrong = read.issues.length === 0 ? check.refine?.(read.inputs) : read.issues;
  if (wrong && wrong.length > 0) throw new InputError(firstIssues(wrong));
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
const NO_ANSWERS: readonly TriedAnswer[] = [];
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
