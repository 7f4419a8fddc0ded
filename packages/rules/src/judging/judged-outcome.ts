import { sayUnread, severityReferrals, standingCautions } from '../kernel/cautions.ts';
import {
  type Assumed,
  assumedOfPlace,
  type Check,
  type ElementRole,
  ENGINEER_REPAIR,
  failuresFirst,
  fieldAt,
  type Judgement,
  lacksEngineer,
  type Outcome,
  type Quantity,
  type Referral,
  rateSeverity,
  rulesVersion,
  SCREENING_PRACTICE,
  type SeverityAnswer,
  type SeverityFacts,
  type Situation,
  type Source,
  type Text,
  text,
  type UnreadBasis,
  unreadBases,
  type Verdict,
} from '../kernel/index.ts';
import { stillToMeasureWords } from './still-to-measure.ts';

/** The ratio, or null when an outcome fails for a reason no ratio shows: a known one of 1 or less would mislead. */
function explainingRatio({ verdict, ratio = null }: Judgement): number | null {
  return verdict === 'fails' && ratio !== null && ratio <= 1 ? null : ratio;
}

/** Everything the severity table asks: what the judgement found goes before what the place says. */
function severityFacts(
  role: ElementRole,
  situation: Situation,
  { verdict, facts = NO_FACTS }: Judgement,
  ratio: number | null,
  remaining: number | null,
  nothingToMeasure: boolean,
): SeverityFacts {
  return {
    role,
    verdict,
    ratio: facts.ratio === undefined ? ratio : facts.ratio,
    remaining,
    memberKind: facts.memberKind ?? situation.memberKind,
    storiesAbove: facts.storiesAbove ?? situation.storiesAbove,
    carriesStoryOrRoof: facts.carriesStoryOrRoof ?? situation.carriesStoryOrRoof,
    occupiedBelow: facts.occupiedBelow ?? situation.occupiedBelow,
    shored: facts.shored ?? situation.shored,
    positiveConnection: facts.positiveConnection ?? situation.positiveConnection,
    storyShare: facts.storyShare ?? situation.storyShare,
    disturbed: facts.disturbed ?? situation.disturbed,
    nothingHolds: facts.nothingHolds,
    engineeredCut: facts.engineeredCut,
    engineerAlways: facts.engineerAlways,
    prescriptive: facts.prescriptive,
    calculationOnly: facts.calculationOnly,
    nothingToMeasure,
  };
}
/** What was not said of the inputs: names for which something is assumed, and those whose hardest answer was taken. */
export interface LeftOut {
  readonly names: () => readonly string[];
  readonly hardest: readonly { readonly input: string; readonly answer: Text }[];
}
const NOTHING_LEFT_OUT: LeftOut = { names: () => [], hardest: [] };

const hardestWords = (answer: Text): Text =>
  text(
    `Not seen; the hardest answer is taken: ${answer.en}.`,
    `No se vio; se toma la respuesta más dura: ${answer.es}.`,
  );

const pathOf = (name: string): (string | number)[] =>
  name.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step));

const NO_FACTS: NonNullable<Judgement['facts']> = {};
const NO_VALUES = {};

/** An outcome whose severity is rated and whose words are built when they are first read; `toJSON` gives it as plain data. */
export class JudgedOutcome implements Outcome {
  readonly verdict: Verdict;
  readonly ratio: number | null;
  readonly remaining: number | null;
  readonly edition: string;
  readonly missing: readonly string[];
  private readonly check: Check;
  private readonly situation: Situation;
  private readonly judgement: Judgement;
  private readonly role: ElementRole;
  private rating: SeverityAnswer | undefined;
  private facts: SeverityFacts | undefined;
  private readonly leftOut: LeftOut;

  constructor(
    check: Check,
    edition: string,
    situation: Situation,
    judgement: Judgement,
    missing: readonly string[],
    leftOut: LeftOut = NOTHING_LEFT_OUT,
  ) {
    this.verdict = judgement.verdict;
    this.ratio = explainingRatio(judgement);
    this.remaining = judgement.remaining ?? null;
    this.edition = edition;
    this.missing = judgement.missing ?? missing;
    this.check = check;
    this.situation = situation;
    this.judgement = judgement;
    this.role = judgement.facts?.role ?? situation.role ?? check.role;
    this.rating = undefined;
    this.facts = undefined;
    this.leftOut = leftOut;
  }

  get checkId() {
    return this.check.id;
  }
  get rulesVersion() {
    return rulesVersion;
  }
  get values(): Readonly<Record<string, Quantity>> {
    return this.judgement.values?.() ?? NO_VALUES;
  }
  /** What the check proposes, and the engineer's look wherever an engineer decides. */
  get repairs(): readonly string[] {
    const proposed = this.judgement.repairs ?? [];
    return lacksEngineer(this.severity, proposed) ? [...proposed, ENGINEER_REPAIR] : proposed;
  }
  private get rated(): SeverityAnswer {
    const { role, situation, judgement, ratio, remaining } = this;
    this.facts ??= severityFacts(role, situation, judgement, ratio, remaining, this.missing.length === 0);
    this.rating ??= rateSeverity(this.facts);
    return this.rating;
  }
  get severity() {
    return this.rated.severity;
  }
  get severityRow() {
    return this.rated.row;
  }
  /** The documents that were used, then those that say what may be taken for inputs left out. */
  get sources(): readonly Source[] {
    const more = this.assumed.map(({ source }) => source);
    return more.length === 0 ? this.used : [...new Set([...this.used, ...more])];
  }
  private get used(): readonly Source[] {
    return this.judgement.sources ?? this.check.sources;
  }
  get assumed(): readonly Assumed[] {
    if (this.isHardest) return [];
    const { names, hardest } = this.leftOut;
    const rated = this.rated;
    return [
      ...names().flatMap((input) => {
        const assumes = fieldAt(this.check.inputs, pathOf(input))?.assumes;
        return assumes ? [{ input, ...assumes }] : [];
      }),
      ...hardest.map(({ input, answer }) => ({ input, text: hardestWords(answer), source: SCREENING_PRACTICE })),
      ...(this.facts ? assumedOfPlace(this.facts, rated) : []),
      ...(this.judgement.assumed ?? []),
    ];
  }

  /** It fails, is as grave as its role can be and nothing is left of it: no input left out could make it harder. */
  private get isHardest(): boolean {
    const gravest = this.role === 'lateral' ? 'engineer' : 'make-safe';
    return this.verdict === 'fails' && this.severity === gravest && !this.remaining;
  }

  get reasons(): readonly Text[] {
    const rating = this.rated.reason();
    // The severity is always the last sentence; what it repeats is not said twice.
    const found = failuresFirst(this.judgement.reasons()).filter(({ en }) => en !== rating.en);
    return [...this.stillMissing, ...found, ...sayUnread(this.deciding), rating];
  }
  /** What the check itself asks for once it has judged the rest; a load for a figure is asked for by the severity. */
  private get stillMissing(): readonly Text[] {
    const { missing = [], facts } = this.judgement;
    return missing.length === 0 || facts?.calculationOnly ? [] : [stillToMeasureWords(this.check, missing)];
  }
  get cautions(): readonly Text[] {
    return [...standingCautions(this.role, this.severity, this.used), ...(this.judgement.cautions?.() ?? [])];
  }
  get referrals(): readonly Referral[] {
    return [
      ...new Set([
        ...(this.judgement.referrals ?? []),
        ...severityReferrals(this.role, this.severity),
        ...(this.restsOn.includes('memory') ? [whoConfirms(this.role)] : []),
      ]),
    ];
  }

  get restsOn(): readonly UnreadBasis[] {
    return unreadBases(this.deciding);
  }
  /** The sources that decided; none while nothing is decided. */
  private get deciding(): readonly Source[] {
    return this.verdict === 'undetermined' ? [] : (this.judgement.hangsOn ?? this.used);
  }

  /** Plain data, as it is stored. */
  toJSON(): Outcome {
    const { checkId, rulesVersion, edition, verdict, ratio, remaining, values, severity, severityRow } = this;
    const { reasons, missing, assumed, restsOn, sources, cautions, referrals, repairs } = this;
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
      assumed,
      restsOn,
      sources,
      cautions,
      referrals,
      repairs,
    };
  }
}

/** Who can say whether a remembered rule is the one in force. */
function whoConfirms(role: ElementRole): Referral {
  if (role === 'hazard') return 'specialist';
  return role === 'gravity' || role === 'lateral' ? 'engineer' : 'official';
}
