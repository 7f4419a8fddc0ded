import {
  atMost,
  type Complete,
  count,
  countOf,
  decimal,
  defineCheck,
  flag,
  formatLength,
  group,
  inchesOf,
  type Judgement,
  largestRatio,
  length,
  percent,
  ratioOf,
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
    label: text('Panel dry, under 16 %?', '¿Panel seco, menos de 16 %?'),
  }),
} as const;

type SurveyInputs = Complete<typeof inputs>;

interface Survey {
  readonly total: number;
  readonly good: number;
  /** Nails driven past the skin of the panel by more than the rule forgives one by one. */
  readonly overdriven: number;
  readonly overdrivenShare: number;
  /** The overdriven nails are too many or too deep to be accepted unchanged. */
  readonly tooMany: boolean;
  readonly toAdd: number;
}

/** Sorts the counts by the overdriven rule; a panel known to be wet hides depth, so its slight ones count as overdriven. */
function survey(given: SurveyInputs): Survey {
  const c = given.counts;
  const wet = given.panelDry === false;
  const slight = wet ? 0 : c.overdrivenSlight;
  const overdriven = c.overdriven + c.overdrivenDeep + (wet ? c.overdrivenSlight : 0);
  const total = c.flush + c.overdrivenSlight + c.overdriven + c.overdrivenDeep + c.nearEdge + c.missed;
  const overdrivenShare = shareOf(overdriven, total) ?? 0;
  const tooMany = c.overdrivenDeep > 0 || !atMost(overdrivenShare, OVERDRIVEN_SHARE_LIMIT);
  const good = c.flush + slight + (tooMany ? 0 : overdriven);
  const wanted = wholeUp(given.surveyedLengthIn / given.specifiedSpacingIn);
  const short = Math.max(0, wanted - (c.flush + slight + overdriven));
  const forOverdriven = tooMany ? Math.ceil(overdriven / OVERDRIVEN_PER_ADDED_NAIL) : 0;
  return { total, good, overdriven, overdrivenShare, tooMany, toAdd: forOverdriven + short };
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
  const found = survey(given);
  const spacingIn = found.good > 0 ? given.surveyedLengthIn / found.good : undefined;
  const spacingMeets = spacingIn !== undefined && atMost(spacingIn, given.specifiedSpacingIn);
  const meets = spacingMeets && !found.tooMany;
  const tight = isTooTight(given, found);
  const underHeadIn = leftUnderHeadIn(given);
  const interval = found.total > 0 ? wilson95(found.good, found.total) : undefined;
  const ratio = largestRatio([
    ratioOf(spacingIn, given.specifiedSpacingIn),
    ratioOf(found.overdrivenShare, OVERDRIVEN_SHARE_LIMIT),
  ]);
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio,
    remaining: spacingIn === undefined ? 0 : shareOf(given.specifiedSpacingIn, spacingIn),
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
    reasons: () => surveyReasons(given, found, spacingIn, tight),
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

function surveyReasons(given: SurveyInputs, found: Survey, spacingIn: number | undefined, tight: boolean): Text[] {
  const asked = formatLength(given.specifiedSpacingIn);
  const spaced =
    spacingIn === undefined
      ? text('No nail counts in full.', 'Ningún clavo cuenta por completo.')
      : text(
          `${found.good} of ${found.total} nails count: one every ${decimal(spacingIn)} in; ${asked} is asked for.`,
          `Cuentan ${found.good} de ${found.total} clavos: uno cada ${decimal(spacingIn)} in; se pide ${asked}.`,
        );
  const limit = percent(OVERDRIVEN_SHARE_LIMIT);
  const deep = text(
    `${percent(found.overdrivenShare)} of the nails are overdriven; up to ${limit} and none over 1/8 in is accepted.`,
    `El ${percent(found.overdrivenShare)} de los clavos está muy hundido; se acepta hasta ${limit} y ninguno más de 1/8 in.`,
  );
  const add = text(`Add ${found.toAdd} nails.`, `Agregue ${found.toAdd} clavos.`);
  return [
    spaced,
    ...(found.overdriven > 0 ? [deep] : []),
    ...(found.toAdd > 0 ? [add] : []),
    ...(tight ? [TOO_TIGHT] : []),
  ];
}

const TOO_TIGHT = text(
  'Added nails would stand closer than 4 in and may split the framing: three staples for each nail, as an engineer decides.',
  'Los clavos nuevos quedarían a menos de 4 in y pueden rajar la madera: tres grapas por clavo, según decida un ingeniero.',
);

function surveyCautions(given: SurveyInputs, underHeadIn: number | undefined): Text[] {
  const { overdrivenSlight, nearEdge } = given.counts;
  const left = underHeadIn === undefined ? undefined : formatLength(underHeadIn, { denominator: 32 });
  return [
    ...(overdrivenSlight > 0 && given.panelDry !== true
      ? [
          text(
            'Nails up to 1/16 in deep are accepted only in a panel that was dry, under 16 %.',
            'Los clavos hundidos hasta 1/16 in se aceptan solo en un panel seco, menos de 16 %.',
          ),
        ]
      : []),
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
      const share = outcome.remaining === null ? '' : ` ${decimal(outcome.remaining * 100, 0)} %`;
      return text(
        `The nails that hold the wall panel count for${share} of what was planned.`,
        `Los clavos que sujetan el panel valen el${share} de lo previsto.`,
      );
    },
    why: text(
      'These nails keep the wall from leaning in an earthquake or strong wind.',
      'Estos clavos evitan que la pared se incline en un sismo o viento fuerte.',
    ),
    ifNot: text('The wall is weaker than it was drawn.', 'La pared es más débil que en los planos.'),
  },
  doesNotCover: [
    text('Nails in the middle of the panel, panel grade and framing.', 'Clavos del centro, grado del panel y madera.'),
  ],
  cases: () => import('./nail-survey.cases.ts'),
});
