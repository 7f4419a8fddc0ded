import {
  atMost,
  type Complete,
  count,
  countOf,
  countText,
  decimal,
  defineCheck,
  type Judgement,
  joinTexts,
  type Partials,
  ratioOf,
  reasonThat,
  shareQuantity,
  text,
} from '../../kernel/index.ts';
import {
  FINITE_LOT_SOME_BAD_SOURCE,
  FINITE_LOT_SOURCE,
  lotRisk,
  openingsNeeded,
  upperBad,
} from '../../standards/astm-e2334/finite-lot.ts';
import { TOLERABLE_SOURCE } from '../../standards/common-practice/sampling.data.ts';
import { RANDOM_SAMPLE_SOURCE, riskOf } from '../../standards/nist-handbook/clopper-pearson.ts';
import { finiteLotCard } from './finite-lot.card.ts';
import { confidenceInput, countIssue, SPREAD_SAMPLE } from './sample.inputs.ts';

const inputs = {
  total: count({
    min: 1,
    max: 10_000,
    label: text('Like places in all', 'Lugares iguales en total'),
    howToMeasure: text(
      'Count from the plans: joist ends, wall ends, bolts.',
      'Cuente en los planos: puntas de vigueta, extremos de pared, pernos.',
    ),
  }),
  opened: count({
    max: 10_000,
    label: text('Opened and looked at', 'Abiertos y revisados'),
    howToMeasure: text('Pick them by chance.', 'Escójalos al azar.'),
  }),
  bad: count({ max: 10_000, label: text('Bad ones among them', 'Malos entre ellos') }),
  confidencePct: confidenceInput,
  tolerableBad: count({
    max: 10_000,
    default: 0,
    label: text('Bad ones in all you could live with', 'Malos en total que podría aceptar'),
    howToMeasure: text(
      'Those found count too. 0 means all but the last few are opened.',
      'Los encontrados cuentan. 0 quiere decir abrir casi todos.',
    ),
  }),
} as const;

type LotInputs = Complete<typeof inputs>;

function judgeLot({ total, opened, bad, confidencePct, tolerableBad }: LotInputs): Judgement {
  const allowed = riskOf(confidencePct);
  const risk = lotRisk(bad, total, opened, tolerableBad);
  const meets = atMost(risk, allowed);
  const more = () => openingsNeeded(bad, total, tolerableBad, allowed) - opened;
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: ratioOf(risk, allowed),
    values: () => ({
      upperBad: countOf(upperBad(bad, total, opened, allowed)),
      openMore: countOf(Math.max(0, more())),
      risk: shareQuantity(risk),
    }),
    reasons: () => {
      const most = upperBad(bad, total, opened, allowed);
      return [
        reasonThat(
          meets,
          text(
            `Bad: ${bad} of ${opened} opened. With ${decimal(confidencePct, 1)}% confidence at most ${most} of all ${total} are; you could live with ${tolerableBad}.`,
            `Malos: ${bad} de ${opened} abiertos. Con ${decimal(confidencePct, 1)}% de confianza, a lo más ${most} de los ${total} lo son; podría aceptar ${tolerableBad}.`,
          ),
        ),
        meets
          ? text('More than you could live with are ruled out.', 'Se descartan más de los que podría aceptar.')
          : bad > tolerableBad
            ? text(
                'More are bad than you could live with: open them all.',
                'Hay más malos de los que podría aceptar: ábralos todos.',
              )
            : openMoreWords(more(), tolerableBad),
        ...(bad > 0 ? [EACH_BAD] : []),
      ];
    },
    cautions: () => [SPREAD_SAMPLE],
    hangsOn: [FINITE_LOT_SOURCE],
    sources: [
      FINITE_LOT_SOURCE,
      ...(bad > 0 ? [FINITE_LOT_SOME_BAD_SOURCE] : []),
      RANDOM_SAMPLE_SOURCE,
      TOLERABLE_SOURCE,
    ],
    repairs: meets ? [] : ['open-more'],
    // The ratio compares chances, not loads.
    facts: { ratio: null },
  };
}

const EACH_BAD = text(
  'Each bad one found is judged and repaired by its own check.',
  'Cada uno malo se evalúa y repara con su propia revisión.',
);
const openMoreWords = (more: number, tolerableBad: number) =>
  text(
    `Open ${more} more. If those are good, more than ${tolerableBad} bad ones are ruled out.`,
    `Abra ${more} más. Si están bien, se descartan más de ${tolerableBad} malos.`,
  );

const IN_ALL = text('all there are', 'todos los que hay');
const tooMany = ({ total, opened, bad, tolerableBad }: Partials<typeof inputs>) => [
  ...countIssue('opened', [opened, inputs.opened.label], [total, IN_ALL]),
  ...countIssue('bad', [bad, inputs.bad.label], [opened, text('those opened', 'los abiertos')]),
  ...countIssue('tolerableBad', [tolerableBad, inputs.tolerableBad.label], [total, IN_ALL]),
];

/** How many of a known number of like places may be bad, and how many more to open. Counts. */
export const finiteLot = defineCheck({
  ...finiteLotCard,
  editions: [{ id: 'astm-e2334', title: text('ASTM E2334, case 2', 'ASTM E2334, caso 2') }],
  defaultEdition: 'astm-e2334',
  sources: [FINITE_LOT_SOURCE, FINITE_LOT_SOME_BAD_SOURCE, RANDOM_SAMPLE_SOURCE, TOLERABLE_SOURCE],
  inputs,
  refine: tooMany,
  evaluate: (given) => judgeLot(given),
  repairs: ['open-more'],
  client: {
    found: ({ total, opened, bad }) =>
      total === undefined || opened === undefined || bad === undefined
        ? text('We opened some of many similar places.', 'Abrimos algunos de muchos lugares iguales.')
        : joinTexts([
            text(`We opened ${opened} of ${total} similar places.`, `Abrimos ${opened} de ${total} lugares iguales.`),
            countText(
              bad,
              text('One of them was bad.', 'Uno estaba mal.'),
              text('{count} of them were bad.', '{count} estaban mal.'),
            ),
          ]),
    why: text('The places still closed may be bad too.', 'Los lugares aún cerrados también pueden estar mal.'),
    ifNot: text('Bad places may stay hidden once it is closed.', 'Pueden quedar defectos ocultos al cerrar.'),
  },
  doesNotCover: [
    text('Places opened only where it was easy.', 'Lugares abiertos solo donde era fácil.'),
    text('How bad each place is.', 'Qué tan malo es cada lugar.'),
  ],
  cases: () => import('./finite-lot.cases.ts'),
});
