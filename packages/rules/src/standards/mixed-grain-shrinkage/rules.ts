import { type Source, type Text, text } from '../../kernel/index.ts';

/** A rule for boards of mixed or unseen grain. The sources disagree; a check offers the choice. */
export interface MixedGrainRule {
  readonly id: string;
  readonly title: Text;
  readonly source: Source;
  /** The change of a dimension, inches, between two moistures of at most fiber saturation, percent. */
  readonly change: (sizeIn: number, fromPct: number, toPct: number) => number;
}

/** 1% of size for 4% of moisture, per percent. */
const ONE_PER_FOUR = 0.0025;
/** 6% of size over the 30% from fiber saturation to ovendry, per percent. */
const SIX_PER_THIRTY = 0.002;

const perPct = (rate: number) => (sizeIn: number, fromPct: number, toPct: number) => sizeIn * rate * (toPct - fromPct);

/** Grading-rule equation for the width of a board: shrinkage from green, percent, at a moisture of 8 to 19%. */
export const GRADING_RULE_RANGE_PCT = { min: 8, max: 19 } as const;
const widthShrinkagePct = (pct: number): number => 6.031 - 0.215 * pct;

function gradingRuleChange(sizeIn: number, fromPct: number, toPct: number): number {
  const { min, max } = GRADING_RULE_RANGE_PCT;
  const inside = (pct: number) => pct >= min && pct <= max;
  if (!inside(fromPct) || !inside(toPct)) return perPct(ONE_PER_FOUR)(sizeIn, fromPct, toPct);
  return sizeIn * ((100 - widthShrinkagePct(toPct)) / (100 - widthShrinkagePct(fromPct)) - 1);
}

/** The first is the safest: it moves the most. */
export const MIXED_GRAIN_RULES = [
  {
    id: '0.0025',
    title: text('1% for 4% of moisture (0.0025)', '1% por 4% de humedad (0.0025)'),
    source: {
      id: 'awc-one-percent-per-four',
      title: 'AWC answer on shrinkage: 1% of size for 4% of moisture',
      edition: 'as read',
      section: 'frequently asked questions',
      basis: 'published',
    },
    change: perPct(ONE_PER_FOUR),
  },
  {
    id: '0.0020',
    title: text('6% for 30% of moisture (0.0020)', '6% por 30% de humedad (0.0020)'),
    source: {
      id: 'six-percent-per-thirty',
      title: 'University notes on wood design: 6% of size for 30% of moisture',
      edition: 'lecture notes',
      section: 'example 4.34',
      basis: 'second-hand',
    },
    change: perPct(SIX_PER_THIRTY),
  },
  {
    id: 'grading-rule',
    title: text('Grading-rule equation, 8 to 19%', 'Ecuación de clasificación, 8 a 19%'),
    source: {
      id: 'fpl-rp-489',
      title: 'Shrinkage of dimension lumber, grading-rule equation',
      edition: 'FPL-RP-489, abstract',
      section: 'width, 8 to 19%, not redwood or cedar',
      basis: 'second-hand',
    },
    change: gradingRuleChange,
  },
] as const satisfies readonly MixedGrainRule[];

export type MixedGrainRuleId = (typeof MIXED_GRAIN_RULES)[number]['id'];

/** The rule of this id. */
export function mixedGrainRule(id: MixedGrainRuleId): MixedGrainRule {
  return MIXED_GRAIN_RULES.find((rule) => rule.id === id) ?? MIXED_GRAIN_RULES[0];
}
