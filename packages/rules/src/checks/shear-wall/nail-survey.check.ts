import {
  atMost,
  type Complete,
  compareLengths,
  compareShares,
  count,
  countOf,
  defineCheck,
  flag,
  formatLength,
  group,
  inchesOf,
  type Judgement,
  largestRatio,
  length,
  percent,
  type Reason,
  ratioOf,
  reasonThat,
  shareOf,
  shareQuantity,
  type Text,
  text,
  wholeUp,
  yesNoOf,
} from '../../kernel/index.ts';
import {
  DEEP_HEAD_IN,
  EDGE_DISTANCE_SOURCE,
  OVERDRIVEN_PER_ADDED_NAIL,
  OVERDRIVEN_SHARE_LIMIT,
  OVERDRIVEN_SOURCE,
  STAPLES_PER_NAIL,
  THICKNESS_LEFT_SOURCE,
  TIGHT_NAILS_SOURCE,
  TIGHT_SPACING_IN,
} from '../../standards/apa-tt-012/overdriven.data.ts';
import { WILSON_SOURCE, wilson95 } from '../../standards/nist-handbook/wilson.ts';
import { nailSurveyCard } from './nail-survey.card.ts';

const nails = (en: string, es: string) => count({ max: 10_000, label: text(en, es), picture: 'nail-depth' });

const inputs = {
  panelThicknessIn: length({
    unit: 'in',
    min: 0.125,
    max: 2,
    denominator: 32,
    needed: 'optional',
    label: text('Panel thickness, for information', 'Grosor del panel, como información'),
  }),
  specifiedSpacingIn: length({
    unit: 'in',
    min: 0.5,
    max: 24,
    label: text('Edge nail spacing asked for', 'Separación de clavos pedida en el borde'),
    howToMeasure: text('From the plans.', 'De los planos.'),
  }),
  surveyedLengthIn: length({
    unit: 'in',
    min: 1,
    max: 24_000,
    label: text('Length of panel edge looked at', 'Largo de borde revisado'),
    picture: 'nail-survey',
  }),
  counts: group({
    label: text('Nails counted along that edge', 'Clavos contados en ese borde'),
    fields: {
      flush: nails('Flush with the face', 'A ras de la cara'),
      overdrivenSlight: nails('Too deep, up to 1/16 in', 'Hundidos hasta 1/16 in'),
      overdriven: nails('Too deep, 1/16 to 1/8 in', 'Hundidos de 1/16 a 1/8 in'),
      overdrivenDeep: nails('Too deep, over 1/8 in', 'Hundidos más de 1/8 in'),
      nearEdge: nails('Within 3/8 in of the panel edge', 'A menos de 3/8 in del borde'),
      missed: nails('Missed the framing', 'No dieron en la madera'),
    },
  }),
  panelDry: flag({
    needed: 'optional',
    label: text('Panel dry, under 16%?', '¿Panel seco, menos de 16%?'),
  }),
} as const;

type SurveyInputs = Complete<typeof inputs>;

interface Survey {
  readonly total: number;
  readonly good: number;
  /** Nails driven past the skin of the panel by more than the rule forgives one by one. */
  readonly overdriven: number;
  readonly overdrivenShare: number;
  /** More of them than the rule accepts, or one of them deeper. */
  readonly tooMany: boolean;
  readonly toAdd: number;
  /** Between the nails that count; undefined when none does. */
  readonly spacingIn: number | undefined;
  readonly meets: boolean;
}

/** Sorts the counts by the overdriven rule; a wet panel hides depth, so its slight ones count as overdriven. */
function survey({ counts: c, surveyedLengthIn, specifiedSpacingIn }: SurveyInputs, isWet: boolean): Survey {
  const slight = isWet ? 0 : c.overdrivenSlight;
  const overdriven = c.overdriven + c.overdrivenDeep + (isWet ? c.overdrivenSlight : 0);
  const total = c.flush + c.overdrivenSlight + c.overdriven + c.overdrivenDeep + c.nearEdge + c.missed;
  const overdrivenShare = shareOf(overdriven, total) ?? 0;
  const tooMany = c.overdrivenDeep > 0 || !atMost(overdrivenShare, OVERDRIVEN_SHARE_LIMIT);
  const good = c.flush + slight + (tooMany ? 0 : overdriven);
  const wanted = wholeUp(surveyedLengthIn / specifiedSpacingIn);
  const short = Math.max(0, wanted - (c.flush + slight + overdriven));
  const forOverdriven = tooMany ? Math.ceil(overdriven / OVERDRIVEN_PER_ADDED_NAIL) : 0;
  const spacingIn = good > 0 ? surveyedLengthIn / good : undefined;
  const meets = spacingIn !== undefined && atMost(spacingIn, specifiedSpacingIn) && !tooMany;
  return { total, good, overdriven, overdrivenShare, tooMany, toAdd: forOverdriven + short, spacingIn, meets };
}

/** Adding so many nails would bring them closer than the framing stands without splitting. */
const isTooTight = (given: SurveyInputs, found: Survey): boolean =>
  found.toAdd > 0 && given.surveyedLengthIn / (found.total + found.toAdd) < TIGHT_SPACING_IN;

/** Panel left under a head 1/8 in deep, where such heads were counted and the panel was measured. Decides nothing. */
function leftUnderHeadIn({ panelThicknessIn, counts }: SurveyInputs): number | undefined {
  if (panelThicknessIn === undefined || counts.overdriven + counts.overdrivenDeep === 0) return undefined;
  return Math.max(0, panelThicknessIn - DEEP_HEAD_IN);
}

function judgeSurvey(given: SurveyInputs): Judgement {
  const asWet = survey(given, given.panelDry !== true);
  const asDry = survey(given, given.panelDry === false);
  // Where only a dry panel would pass, whether it is dry must be known; else the harder count stands.
  const untold = asDry.meets && !asWet.meets;
  const found = untold ? asDry : asWet;
  const { meets, spacingIn } = found;
  const tight = isTooTight(given, found);
  const underHeadIn = leftUnderHeadIn(given);
  const interval = found.total > 0 ? wilson95(found.good, found.total) : undefined;
  const ratio = largestRatio([
    ratioOf(spacingIn, given.specifiedSpacingIn),
    ratioOf(found.overdrivenShare, OVERDRIVEN_SHARE_LIMIT),
  ]);
  return {
    verdict: untold ? 'undetermined' : meets ? 'meets' : 'fails',
    ratio,
    // While the panel's moisture is not known, no more counts than in a wet one.
    remaining: asWet.spacingIn === undefined ? 0 : shareOf(given.specifiedSpacingIn, asWet.spacingIn),
    missing: untold ? ['panelDry'] : [],
    values: () => ({
      goodNails: countOf(found.good),
      ...(spacingIn !== undefined && { effectiveSpacingIn: inchesOf(spacingIn) }),
      overdrivenShare: shareQuantity(found.overdrivenShare),
      nailsToAdd: countOf(found.toAdd),
      tooTightForNails: yesNoOf(tight),
      ...(tight && { staplesToAdd: countOf(found.toAdd * STAPLES_PER_NAIL) }),
      ...(underHeadIn !== undefined && { leftUnderHeadIn: inchesOf(underHeadIn) }),
      goodShare: shareQuantity(shareOf(found.good, found.total) ?? 0),
      ...(interval && { wilsonLow: shareQuantity(interval.low), wilsonHigh: shareQuantity(interval.high) }),
    }),
    reasons: () => surveyReasons(given, found, tight, untold),
    cautions: () => surveyCautions(given, underHeadIn),
    hangsOn: [OVERDRIVEN_SOURCE],
    sources: [
      OVERDRIVEN_SOURCE,
      ...(tight ? [TIGHT_NAILS_SOURCE] : []),
      ...(given.counts.nearEdge > 0 ? [EDGE_DISTANCE_SOURCE] : []),
      ...(underHeadIn === undefined ? [] : [THICKNESS_LEFT_SOURCE]),
      WILSON_SOURCE,
    ],
    referrals: !meets && (tight || given.counts.nearEdge > 0) ? ['engineer'] : [],
    repairs: meets ? [] : ['add-nails', ...(tight ? ['engineer-letter'] : [])],
    facts: { ratio: null },
  };
}

function surveyReasons(given: SurveyInputs, found: Survey, tight: boolean, untold: boolean): Reason[] {
  const { specifiedSpacingIn } = given;
  const { spacingIn } = found;
  const deep = compareShares(found.overdrivenShare, OVERDRIVEN_SHARE_LIMIT, 'at-most');
  const overdriven = text(
    `${deep.measured.en} of the nails are overdriven; up to ${deep.limit} and none over 1/8 in is accepted.`,
    `${deep.measured.es} de los clavos están muy hundidos; se acepta hasta ${deep.limit} y ninguno más de 1/8 in.`,
  );
  const add =
    found.toAdd === 1
      ? text('Add 1 nail.', 'Agregue 1 clavo.')
      : text(`Add ${found.toAdd} nails.`, `Agregue ${found.toAdd} clavos.`);
  return [
    ...(untold ? [DRY_DECIDES] : []),
    reasonThat(
      spacingIn !== undefined && atMost(spacingIn, specifiedSpacingIn),
      spacingWords(found, spacingIn, specifiedSpacingIn),
    ),
    ...(found.overdriven > 0 ? [reasonThat(!found.tooMany, overdriven)] : []),
    ...(found.toAdd > 0 ? [add] : []),
    ...(tight ? [TOO_TIGHT] : []),
  ];
}

function spacingWords({ good, total }: Survey, spacingIn: number | undefined, specifiedSpacingIn: number): Text {
  if (spacingIn === undefined) return text('No nail counts in full.', 'Ningún clavo cuenta por completo.');
  const { measured, limit } = compareLengths(spacingIn, specifiedSpacingIn, 'at-most');
  return text(
    `${good} of ${total} nails count: one every ${measured.en}; ${limit} is asked for.`,
    `Cuentan ${good} de ${total} clavos: uno cada ${measured.es}; se pide ${limit}.`,
  );
}

const DRY_DECIDES = text(
  'Nails up to 1/16 in deep count only in a panel that was dry, under 16%: measure its moisture.',
  'Los clavos hundidos hasta 1/16 in cuentan solo en un panel seco, menos de 16%: mida su humedad.',
);

const TOO_TIGHT = text(
  'Added nails would stand closer than 4 in and may split the framing: three staples for each nail, as an engineer decides.',
  'Los clavos nuevos quedarían a menos de 4 in y pueden rajar la madera: tres grapas por clavo, según decida un ingeniero.',
);

function surveyCautions(given: SurveyInputs, underHeadIn: number | undefined): Text[] {
  const { nearEdge } = given.counts;
  const left = underHeadIn === undefined ? undefined : formatLength(underHeadIn, { denominator: 32 });
  return [
    ...(nearEdge > 0
      ? [
          text(
            'The 3/8 in to the panel edge is from memory for walls; confirm it.',
            'La distancia de 3/8 in al borde del panel es de memoria para paredes; confírmela.',
          ),
        ]
      : []),
    ...(left
      ? [
          text(
            `A head 1/8 in deep leaves ${left} of panel under it, a deeper one less: for information, nothing is counted from it.`,
            `Una cabeza hundida 1/8 in deja ${left} de panel debajo, una más honda menos: es información, no se cuenta.`,
          ),
        ]
      : []),
    text(
      'A sample speaks for the edge looked at; other crews and floors may differ.',
      'Una muestra vale para el borde revisado; otras cuadrillas y pisos pueden diferir.',
    ),
  ];
}

/** What the edge nailing of a shear panel is worth, from a count along its edges. Inches and counts. */
export const nailSurvey = defineCheck({
  ...nailSurveyCard,
  editions: [{ id: 'apa-tt-012', title: text('APA TT-012 as summarized', 'APA TT-012 según resumen') }],
  defaultEdition: 'apa-tt-012',
  sources: [OVERDRIVEN_SOURCE, TIGHT_NAILS_SOURCE, EDGE_DISTANCE_SOURCE, THICKNESS_LEFT_SOURCE, WILSON_SOURCE],
  inputs,
  evaluate: judgeSurvey,
  repairs: ['add-nails', 'engineer-letter'],
  client: {
    found: (_inputs, outcome) => {
      if (outcome.remaining === null)
        return text(
          'We cannot tell yet how much the nails of the wall panel hold.',
          'Aún no se puede saber cuánto sostienen los clavos del panel.',
        );
      const share = percent(outcome.remaining, 0);
      return text(
        `The nails that hold the wall panel count for ${share} of what was planned.`,
        `Los clavos que sujetan el panel resisten el ${share} de lo previsto.`,
      );
    },
    why: text(
      'These nails keep the wall from leaning in an earthquake or strong wind.',
      'Estos clavos evitan que la pared se incline en un sismo o viento fuerte.',
    ),
    ifNot: text('The wall is weaker than the plans call for.', 'La pared es más débil de lo que piden los planos.'),
  },
  doesNotCover: [
    text('Nails in the middle of the panel, panel grade and framing.', 'Clavos del centro, grado del panel y madera.'),
  ],
  cases: () => import('./nail-survey.cases.ts'),
});
