import { severityReferrals, standingCautions } from './kernel/cautions.ts';
import {
  type Check,
  fieldAt,
  type InputIssue,
  issuesOf,
  type Judgement,
  joinTexts,
  type KnownAlready,
  missingInputs,
  type Outcome,
  rateSeverity,
  rulesVersion,
  type Situation,
  text,
} from './kernel/index.ts';
import { checks } from './registry.ts';

/** No check has this id. */
export class UnknownCheckError extends Error {
  override readonly name = 'UnknownCheckError';
  readonly checkId: string;
  constructor(checkId: string) {
    super(`There is no check "${checkId}".`);
    this.checkId = checkId;
  }
}

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

const byId = new Map(checks.map((check) => [check.id, check]));

/** The check with this id, or undefined. */
export const findCheck = (id: string): Check | undefined => byId.get(id);

/**
 * Judges measurements by a check. A missing measurement is an `undetermined` outcome, never an error.
 * Throws UnknownCheckError, UnknownEditionError or InputError.
 */
export function evaluateCheck(id: string, request: EvaluateRequest): Outcome {
  const check = findCheck(id);
  if (!check) throw new UnknownCheckError(id);
  return runCheck(check, request);
}

/** The same for a check in hand, registered or not. */
export function runCheck(check: Check, request: EvaluateRequest): Outcome {
  const inputs = readInputs(check, request.inputs);
  const edition = readEdition(check, request.edition, inputs);
  const situation = request.context ?? {};
  const missing = missingInputs(check.inputs, inputs);
  const judgement =
    missing.length === 0
      ? check.evaluate(inputs, { edition, situation })
      : stillToMeasure(check, missing, check.knownAlready?.(inputs));
  return finish(check, edition, situation, judgement, missing);
}

function readInputs(check: Check, raw: unknown): Readonly<Record<string, unknown>> {
  const parsed = check.schema.safeParse(raw);
  if (!parsed.success) throw new InputError(issuesOf(parsed.error, check.inputs, raw));
  const issues = check.refine?.(parsed.data) ?? [];
  if (issues.length > 0) throw new InputError(issues);
  return parsed.data;
}

function readEdition(check: Check, asked: string | undefined, inputs: Readonly<Record<string, unknown>>): string {
  const chosen = check.chooseEdition ? check.chooseEdition(asked, inputs) : (asked ?? check.defaultEdition);
  const allowed = check.editions.map((edition) => edition.id);
  if (!allowed.includes(chosen)) throw new UnknownEditionError(chosen, allowed);
  return chosen;
}

/** The names of missing inputs in the words of the form. */
function stillToMeasure(check: Check, missing: readonly string[], known: KnownAlready | undefined): Judgement {
  const labels = missing.map((path) => {
    const label = fieldAt(
      check.inputs,
      path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step)),
    )?.label;
    return label ?? text(path, path);
  });
  const names = joinTexts([...new Map(labels.map((label) => [label.en, label])).values()], ', ');
  const stillToDo = text(`Still to be measured: ${names.en}.`, `Falta medir: ${names.es}.`);
  return { ...known, verdict: 'undetermined', reasons: [...(known?.reasons ?? []), stillToDo] };
}

/** The ratio, or null when an outcome fails for a reason no ratio shows: a known one of 1 or less would mislead. */
function explainingRatio({ verdict, ratio = null }: Judgement): number | null {
  return verdict === 'fails' && ratio !== null && ratio <= 1 ? null : ratio;
}

function finish(
  check: Check,
  edition: string,
  situation: Situation,
  judgement: Judgement,
  missing: readonly string[],
): Outcome {
  const ratio = explainingRatio(judgement);
  const remaining = judgement.remaining ?? null;
  const role = judgement.facts?.role ?? situation.role ?? check.role;
  const rated = rateSeverity({
    ratio,
    ...situation,
    ...judgement.facts,
    role,
    verdict: judgement.verdict,
    remaining,
  });
  const sources = judgement.sources ?? check.sources;
  return {
    checkId: check.id,
    rulesVersion,
    edition,
    verdict: judgement.verdict,
    ratio,
    remaining,
    values: judgement.values ?? {},
    severity: rated.severity,
    severityRow: rated.row,
    reasons: [...judgement.reasons, rated.reason],
    missing: judgement.missing ?? missing,
    sources,
    cautions: [...standingCautions(role, rated.severity, sources), ...(judgement.cautions ?? [])],
    referrals: [...new Set([...(judgement.referrals ?? []), ...severityReferrals(role, rated.severity)])],
    repairs: judgement.repairs ?? [],
  };
}
