import { type Source, type Text, text } from '../../kernel/index.ts';

export type RodEndRule = 'flush' | 'two-pitches' | 'three-threads';

interface RuleRow {
  readonly rule: RodEndRule;
  /** Thread pitches the rod end must stand beyond the outer nut face. */
  readonly pitchesBeyond: number;
  readonly title: Text;
  readonly source: Source;
}

/** The rules disagree; the one chosen decides and the others are shown beside it. The first is taken when none is chosen. */
export const ROD_END_RULES: readonly [RuleRow, ...RuleRow[]] = [
  {
    rule: 'flush',
    pitchesBeyond: 0,
    title: text('flush with the nut face or past it', 'a ras de la cara de la tuerca o más'),
    source: {
      id: 'rcsc-2.3.2',
      title: 'RCSC bolt specification; the AISC Manual asks the same of anchor rods',
      edition: 'as quoted; AISC Manual 13th p. 14-10',
      section: '2.3.2',
      basis: 'second-hand',
    },
  },
  {
    rule: 'two-pitches',
    pitchesBeyond: 2,
    title: text('two thread pitches past the nut face', 'dos pasos de rosca más allá de la tuerca'),
    source: {
      id: 'ifi-two-pitches',
      title: 'Industrial Fasteners Institute, advice on thread engagement',
      edition: 'as quoted, J. Greenslade',
      section: 'two pitches beyond the nut',
      basis: 'second-hand',
    },
  },
  {
    rule: 'three-threads',
    pitchesBeyond: 3,
    title: text('three threads past the nut face', 'tres hilos más allá de la tuerca'),
    source: {
      id: 'trade-three-threads',
      title: 'Trade habit',
      edition: 'none',
      section: 'three threads showing past the nut',
      basis: 'common-practice',
    },
  },
];

/** FHWA sign and luminaire support guide: a nut three quarters engaged is acceptable. */
export const FHWA_ENGAGED_SHARE = 0.75;
export const FHWA_SOURCE: Source = {
  id: 'fhwa-16.3.1.2',
  title: 'FHWA guide for structural supports of signs and luminaires',
  edition: 'as quoted',
  section: '16.3.1.2',
  basis: 'second-hand',
};

/** AISC Design Guide 1: strength in proportion to the threads engaged, only when at least half are. */
export const DESIGN_GUIDE_LEAST_SHARE = 0.5;
export const DESIGN_GUIDE_SOURCE: Source = {
  id: 'aisc-dg1-2.11.3',
  title: 'AISC Design Guide 1, base plate and anchor rod design',
  edition: 'as quoted',
  section: '2.11.3',
  basis: 'second-hand',
};
