import {
  assume,
  atMost,
  type Complete,
  compareShares,
  count,
  countOf,
  countText,
  decimal,
  defineCheck,
  type InputIssue,
  type Judgement,
  joinTexts,
  number,
  ratioOf,
  reasonThat,
  shareQuantity,
  text,
} from '../../kernel/index.ts';
import { TOLERABLE_PCT, TOLERABLE_SOURCE } from '../../standards/common-practice/sampling.data.ts';
import {
  binomialTail,
  EXACT_SOURCE,
  exactInterval,
  inspectionsNeeded,
  RANDOM_SAMPLE_SOURCE,
  riskOf,
  upperShare,
  ZERO_BAD_SOURCE,
  zeroBadUpper,
} from '../../standards/nist-handbook/clopper-pearson.ts';
import { WILSON_SOURCE, wilson } from '../../standards/nist-handbook/wilson.ts';
import { proportionCard } from './proportion.card.ts';
import { confidenceInput, countIssue, SPREAD_SAMPLE } from './sample.inputs.ts';

const inputs = {
  inspected: count({
    min: 1,
    max: 10_000,
    label: text('Parts looked at', 'Piezas revisadas'),
    howToMeasure: text(
      'Of one kind: hangers, bolts, nails. Pick them by chance.',
      'De un tipo: estribos, pernos, clavos. Escójalas al azar.',
    ),
  }),
  bad: count({ max: 10_000, label: text('Bad ones among them', 'Malas entre ellas') }),
  confidencePct: confidenceInput,
  tolerablePct: number({
    unit: 'pct',
    min: 0.1,
    max: 50,
    default: TOLERABLE_PCT,
    assumes: assume(
      text(
        `Up to ${TOLERABLE_PCT}% of bad ones could be lived with.`,
        `Se podría aceptar hasta ${TOLERABLE_PCT}% de malas.`,
      ),
      TOLERABLE_SOURCE,
    ),
    label: text('Share of bad ones you could live with', 'Parte de malas que podría aceptar'),
  }),
} as const;

type ProportionInputs = Complete<typeof inputs>;

function judgeProportion({ inspected, bad, confidencePct, tolerablePct }: ProportionInputs): Judgement {
  const allowed = riskOf(confidencePct);
  const tolerable = tolerablePct / 100;
  const risk = binomialTail(bad, inspected, tolerable);
  const meets = atMost(risk, allowed);
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: ratioOf(risk, allowed),
    values: () => {
      const near = wilson(bad, inspected, confidencePct);
      const exact = exactInterval(bad, inspected, confidencePct);
      const further = openMore(bad, inspected, tolerable, allowed);
      return {
        share: shareQuantity(bad / inspected),
        wilsonLow: shareQuantity(near.low),
        wilsonHigh: shareQuantity(near.high),
        exactLow: shareQuantity(exact.low),
        exactHigh: shareQuantity(exact.high),
        ...(bad === 0 && { zeroBadUpper: shareQuantity(zeroBadUpper(inspected, confidencePct)) }),
        upperShare: shareQuantity(upperShare(bad, inspected, allowed)),
        risk: shareQuantity(risk),
        ...(further !== undefined && { openMore: countOf(further) }),
      };
    },
    reasons: () => {
      const { measured: upper, limit } = compareShares(upperShare(bad, inspected, allowed), tolerable, 'at-most');
      const more = openMore(bad, inspected, tolerable, allowed);
      return [
        reasonThat(
          meets,
          text(
            `Bad: ${bad} of ${inspected}. With ${decimal(confidencePct, 1)}% confidence up to ${upper.en} of all may be; you could live with ${limit}.`,
            `Malas: ${bad} de ${inspected}. Con ${decimal(confidencePct, 1)}% de confianza, hasta ${upper.es} de todas pueden serlo; podría aceptar ${limit}.`,
          ),
        ),
        meets ? RULED_OUT : more === undefined ? TREAT_ALL : lookAtMore(more),
        ...(bad > 0 ? [EACH_BAD] : []),
      ];
    },
    cautions: () => [SPREAD_SAMPLE],
    hangsOn: [EXACT_SOURCE],
    sources: [
      EXACT_SOURCE,
      WILSON_SOURCE,
      ...(bad === 0 ? [ZERO_BAD_SOURCE] : []),
      RANDOM_SAMPLE_SOURCE,
      TOLERABLE_SOURCE,
    ],
    repairs: meets ? [] : ['open-more'],
    // The ratio compares chances, not loads.
    facts: { ratio: null },
  };
}

/** More parts to look at with no further bad one; undefined where the share found is over the tolerable one already. */
function openMore(bad: number, inspected: number, tolerable: number, allowed: number): number | undefined {
  if (bad / inspected > tolerable) return undefined;
  return Math.max(0, inspectionsNeeded(bad, tolerable, allowed) - inspected);
}

const RULED_OUT = text(
  'More bad ones than you could live with are ruled out.',
  'Se descartan más malas de las que podría aceptar.',
);
const TREAT_ALL = text(
  'More are bad in the sample than you could live with: look at every one.',
  'En la muestra hay más malas de las que podría aceptar: revise todas.',
);
const EACH_BAD = text(
  'Each bad one found is judged and repaired by its own check.',
  'Cada mala se evalúa y repara con su propia revisión.',
);
const lookAtMore = (more: number) =>
  text(
    `Too many may still be bad: look at ${more} more. If those are good, it is ruled out.`,
    `Aún pueden ser malas demasiadas: revise ${more} más. Si están bien, se descarta.`,
  );

const moreBadThanLookedAt = ({ bad, inspected }: Partial<ProportionInputs>): InputIssue[] =>
  countIssue('bad', [bad, inputs.bad.label], [inspected, text('those looked at', 'las revisadas')]);

/** What share of like parts may be bad, from a sample. Shares 0..1. */
export const proportion = defineCheck({
  ...proportionCard,
  editions: [{ id: 'nist-7.2.4.1', title: text('NIST handbook 7.2.4.1', 'Manual NIST 7.2.4.1') }],
  defaultEdition: 'nist-7.2.4.1',
  sources: [EXACT_SOURCE, WILSON_SOURCE, ZERO_BAD_SOURCE, RANDOM_SAMPLE_SOURCE, TOLERABLE_SOURCE],
  inputs,
  refine: moreBadThanLookedAt,
  evaluate: (given) => judgeProportion(given),
  repairs: ['open-more'],
  client: {
    found: ({ bad, inspected }) =>
      bad === undefined || inspected === undefined
        ? text('We looked at some of many similar parts.', 'Revisamos algunas de muchas piezas iguales.')
        : joinTexts([
            countText(
              inspected,
              text('We looked at one of many similar parts.', 'Revisamos una de muchas piezas iguales.'),
              text('We looked at {count} similar parts.', 'Revisamos {count} piezas iguales.'),
            ),
            countText(
              bad,
              text('One of them was bad.', 'Una estaba mal.'),
              text('{count} of them were bad.', '{count} estaban mal.'),
            ),
          ]),
    why: text('Parts we have not seen may be bad too.', 'Las piezas que no vimos también pueden estar mal.'),
    ifNot: text('Bad parts may stay hidden behind the walls.', 'Pueden quedar piezas dañadas tras las paredes.'),
  },
  doesNotCover: [
    text('Samples taken only where it was easy to look.', 'Muestras tomadas solo donde era fácil ver.'),
    text('How bad each part is.', 'Qué tan mala es cada pieza.'),
  ],
  cases: () => import('./proportion.cases.ts'),
});
