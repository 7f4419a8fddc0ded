import { confirmMemory, severityReferrals, standingCautions } from './kernel/cautions.ts';
import {
  type Check,
  type Judgement,
  type Outcome,
  type Referral,
  type Role,
  rateSeverity,
  rulesVersion,
  type SeverityAnswer,
  type Situation,
  type Source,
  type Text,
} from './kernel/index.ts';

/** The ratio, or null when an outcome fails for a reason no ratio shows: a known one of 1 or less would mislead. */
function explainingRatio({ verdict, ratio = null }: Judgement): number | null {
  return verdict === 'fails' && ratio !== null && ratio <= 1 ? null : ratio;
}

/** An outcome whose words are built when they are first read; `toJSON` gives it as plain data. */
export class JudgedOutcome implements Outcome {
  readonly checkId: string;
  readonly rulesVersion = rulesVersion;
  readonly edition: string;
  readonly ratio: number | null;
  readonly remaining: number | null;
  readonly missing: readonly string[];
  readonly #check: Check;
  readonly #judgement: Judgement;
  readonly #role: Role;
  readonly #rated: SeverityAnswer;
  #reasons: readonly Text[] | undefined;
  #cautions: readonly Text[] | undefined;

  constructor(check: Check, edition: string, situation: Situation, judgement: Judgement, missing: readonly string[]) {
    this.checkId = check.id;
    this.edition = edition;
    this.ratio = explainingRatio(judgement);
    this.remaining = judgement.remaining ?? null;
    this.missing = judgement.missing ?? missing;
    this.#check = check;
    this.#judgement = judgement;
    this.#role = judgement.facts?.role ?? situation.role ?? check.role;
    this.#rated = rateSeverity({
      ratio: this.ratio,
      ...situation,
      ...judgement.facts,
      role: this.#role,
      verdict: judgement.verdict,
      remaining: this.remaining,
    });
  }

  get verdict() {
    return this.#judgement.verdict;
  }
  get values() {
    return this.#judgement.values ?? {};
  }
  get repairs() {
    return this.#judgement.repairs ?? [];
  }
  get severity() {
    return this.#rated.severity;
  }
  get severityRow() {
    return this.#rated.row;
  }
  get sources(): readonly Source[] {
    return this.#judgement.sources ?? this.#check.sources;
  }

  get reasons(): readonly Text[] {
    this.#reasons ??= [...this.#judgement.reasons(), ...this.#fromMemory.map(confirmMemory), this.#rated.reason()];
    return this.#reasons;
  }

  get cautions(): readonly Text[] {
    this.#cautions ??= [
      ...standingCautions(this.#role, this.severity, this.sources),
      ...(this.#judgement.cautions?.() ?? []),
    ];
    return this.#cautions;
  }

  get referrals(): readonly Referral[] {
    return [
      ...new Set([
        ...(this.#judgement.referrals ?? []),
        ...severityReferrals(this.#role, this.severity),
        ...(this.#fromMemory.length > 0 ? [whoConfirms(this.#role)] : []),
      ]),
    ];
  }

  /** The remembered sources that decided between meeting and failing. */
  get #fromMemory(): readonly Source[] {
    if (this.verdict !== 'meets' && this.verdict !== 'fails') return [];
    return (this.#judgement.hangsOn ?? this.sources).filter((source) => source.basis === 'memory');
  }

  /** Plain data, as it is stored. */
  toJSON(): Outcome {
    const { checkId, rulesVersion, edition, verdict, ratio, remaining, values, severity, severityRow } = this;
    const { reasons, missing, sources, cautions, referrals, repairs } = this;
    return {
      checkId,
      rulesVersion,
      edition,
      verdict,
      ratio,
      remaining,
      values,
      severity,
      severityRow,
      reasons,
      missing,
      sources,
      cautions,
      referrals,
      repairs,
    };
  }
}

/** Who can say whether a remembered rule is the one in force. */
function whoConfirms(role: Role): Referral {
  if (role === 'hazard') return 'specialist';
  return role === 'gravity' || role === 'lateral' ? 'engineer' : 'official';
}
