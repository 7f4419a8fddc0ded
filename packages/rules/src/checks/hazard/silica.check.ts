import {
  assume,
  atMost,
  type Complete,
  choice,
  countOf,
  defineCheck,
  flag,
  type Judgement,
  number,
  ratioOf,
  reasonThat,
  type Source,
  type Text,
  text,
  yesNoOf,
} from '../../kernel/index.ts';
import {
  SILICA_ACTION_UG_M3,
  SILICA_LIMIT_SOURCE,
  SILICA_LIMIT_UG_M3,
  SILICA_LONG_SHIFT_HOURS,
  SILICA_TABLE,
  type SilicaRow,
} from '../../standards/osha-1926.1153/silica.data.ts';
import { silicaCard } from './silica.card.ts';

const inTable = { not: { input: 'task', is: ['other', 'none'] } };

const inputs = {
  task: choice({
    options: [
      { value: 'masonry-saw', label: text('Table saw for masonry', 'Sierra de mesa para mampostería') },
      {
        value: 'handheld-saw',
        label: text('Hand-held saw in concrete, brick or stone', 'Sierra de mano en concreto, ladrillo o piedra'),
      },
      { value: 'fiber-cement-saw', label: text('Saw in fiber-cement board', 'Sierra en tablero de fibrocemento') },
      { value: 'walk-behind-saw', label: text('Walk-behind saw', 'Cortadora de piso') },
      { value: 'drill', label: text('Drill or rotary hammer', 'Taladro o rotomartillo') },
      { value: 'jackhammer', label: text('Jackhammer or chipping hammer', 'Martillo neumático o cincelador') },
      { value: 'mortar-grinder', label: text('Grinding mortar out of joints', 'Amolar mortero de las juntas') },
      { value: 'grinder', label: text('Grinding otherwise', 'Amolar otra cosa') },
      {
        value: 'other',
        label: text(
          'Other dust of concrete, brick, stone or plaster',
          'Otro polvo de concreto, ladrillo, piedra o yeso',
        ),
      },
      {
        value: 'none',
        label: text('None of these: wood and other dust without silica', 'Nada de esto: madera y polvo sin sílice'),
      },
    ],
    label: text('What makes the dust', 'Qué levanta el polvo'),
  }),
  controlled: flag({
    needed: 'optional',
    showWhen: inTable,
    label: text(
      'Water or a dust collector at the tool, as Table 1 asks?',
      '¿Agua o aspiradora en la herramienta, como pide la Tabla 1?',
    ),
    howToMeasure: text(
      'And the mask it asks for. Unknown counts as no.',
      'Y la mascarilla que pide. Si no se sabe, cuenta como no.',
    ),
  }),
  indoors: flag({
    needed: 'optional',
    showWhen: inTable,
    label: text('Indoors or closed in?', '¿Adentro o encerrado?'),
    howToMeasure: text('Unknown counts as indoors.', 'Si no se sabe, cuenta como adentro.'),
  }),
  hoursPerShift: number({
    unit: 'h',
    min: 0,
    max: 24,
    needed: 'optional',
    showWhen: inTable,
    label: text('Hours a shift', 'Horas por turno'),
    howToMeasure: text('Unknown counts as more than 4.', 'Si no se sabe, cuenta como más de 4.'),
  }),
  measuredUgM3: number({
    unit: 'ug/m3',
    min: 0,
    max: 100_000,
    needed: 'optional',
    showWhen: inTable,
    assumes: assume(
      text(
        'The air was not measured; where Table 1 is kept to, it is taken as within the limit.',
        'No se midió el aire; donde se cumple la Tabla 1 se toma como dentro del límite.',
      ),
      SILICA_LIMIT_SOURCE,
    ),
    label: text('Exposure measured, 8-hour mean', 'Exposición medida, media de 8 horas'),
  }),
} as const;

type SilicaInputs = Complete<typeof inputs>;

const NO_SILICA = text(
  'No dust of concrete, brick, stone or plaster is made.',
  'No se levanta polvo de concreto, ladrillo, piedra o yeso.',
);
const CONTROLLED = text(
  'The tool keeps its dust as Table 1 asks.',
  'La herramienta contiene su polvo como pide la Tabla 1.',
);
const TREAT_AS_OVER = text(
  'Treat it as over the limit: water or a dust collector at the tool, and the mask of Table 1, before work goes on.',
  'Trátelo como sobre el límite: agua o aspiradora en la herramienta y la mascarilla de la Tabla 1 antes de seguir.',
);
const NOT_IN_TABLE = text(
  'Table 1 has no row for this work: have the exposure assessed.',
  'La Tabla 1 no tiene renglón para esto: haga evaluar la exposición.',
);
const OVER_IN_SPITE = text(
  'Over the limit in spite of the control: stop, mend it, and have the exposure assessed.',
  'Sobre el límite a pesar del control: pare, corríjalo y haga evaluar la exposición.',
);
const NO_SWEEPING = text(
  'No dry sweeping and no compressed air; wet it or use a HEPA vacuum.',
  'No barra en seco ni sople con aire; moje o use aspiradora HEPA.',
);

const limits = (): Text =>
  text(
    `The limit is ${SILICA_LIMIT_UG_M3} micrograms per cubic meter over 8 hours; from ${SILICA_ACTION_UG_M3} on the standard applies.`,
    `El límite es ${SILICA_LIMIT_UG_M3} microgramos por metro cúbico en 8 horas; desde ${SILICA_ACTION_UG_M3} rige la norma.`,
  );

/** The row of Table 1 for the work, undefined when it has none. */
const rowOf = (task: SilicaInputs['task']): SilicaRow | undefined =>
  task === 'other' || task === 'none' ? undefined : SILICA_TABLE[task];

/** Protection factor of the mask, 0 for none; undefined where the table has no row. Unknown place and time are taken as the worse. */
function maskFactor(row: SilicaRow | undefined, given: SilicaInputs): number | undefined {
  const place = given.indoors === false ? row?.outdoors : row?.indoors;
  const short = given.hoursPerShift !== undefined && atMost(given.hoursPerShift, SILICA_LONG_SHIFT_HOURS);
  return place?.[short ? 0 : 1];
}

const maskWords = (factor: number): Text =>
  factor === 0
    ? text('With that control Table 1 asks for no mask.', 'Con ese control la Tabla 1 no pide mascarilla.')
    : text(
        `Table 1 asks for a mask with a protection factor of ${factor} or more besides.`,
        `La Tabla 1 pide además una mascarilla con factor de protección de ${factor} o más.`,
      );

const OVER = reasonThat(false, TREAT_AS_OVER);

function judgeSilica(given: SilicaInputs): Judgement {
  if (given.task === 'none')
    return { verdict: 'not-applicable', reasons: () => [NO_SILICA], sources: [SILICA_LIMIT_SOURCE] };
  const row = rowOf(given.task);
  const factor = maskFactor(row, given);
  const byTable = factor !== undefined && given.controlled === true;
  const { measuredUgM3 } = given;
  const measuredMeets = measuredUgM3 !== undefined && atMost(measuredUgM3, SILICA_LIMIT_UG_M3);
  // Table 1 spares the measuring; air measured over the limit says its control does not work here.
  const meets = measuredMeets || (byTable && measuredUgM3 === undefined);
  const needsAssessing = !meets && (byTable || factor === undefined);
  const sources: readonly Source[] =
    row && factor !== undefined ? [SILICA_LIMIT_SOURCE, row.source] : [SILICA_LIMIT_SOURCE];
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: ratioOf(measuredUgM3, SILICA_LIMIT_UG_M3),
    values: () => ({
      inTable1: yesNoOf(factor !== undefined),
      ...(factor !== undefined && { maskFactor: countOf(factor) }),
      ...(measuredUgM3 !== undefined && { actionLevelReached: yesNoOf(measuredUgM3 >= SILICA_ACTION_UG_M3) }),
    }),
    reasons: () => [
      ...(meets
        ? byTable
          ? [CONTROLLED]
          : []
        : byTable
          ? [reasonThat(false, OVER_IN_SPITE)]
          : factor === undefined
            ? [OVER, NOT_IN_TABLE]
            : [OVER]),
      ...(factor === undefined ? [] : [maskWords(factor)]),
      limits(),
    ],
    cautions: () => [NO_SWEEPING],
    sources,
    hangsOn: measuredMeets || !meets ? [SILICA_LIMIT_SOURCE] : sources,
    referrals: needsAssessing ? ['specialist'] : [],
    repairs: meets ? [] : ['dust-control', ...(needsAssessing ? ['specialist-visit'] : [])],
    facts: { prescriptive: factor !== undefined },
  };
}

/** Whether dust of silica is kept at the tool as OSHA Table 1 asks, or measured within the limit. Micrograms per cubic meter, hours. */
export const silica = defineCheck({
  ...silicaCard,
  editions: [{ id: 'osha-1926.1153', title: text('OSHA 1926.1153', 'OSHA 1926.1153') }],
  defaultEdition: 'osha-1926.1153',
  sources: [SILICA_LIMIT_SOURCE, ...new Set(Object.values(SILICA_TABLE).map((row) => row.source))],
  inputs,
  evaluate: (given) => judgeSilica(given),
  repairs: ['dust-control', 'specialist-visit'],
  client: {
    found: (_inputs, outcome) =>
      outcome.verdict === 'fails'
        ? text(
            'The work makes stone dust that must be kept down.',
            'El trabajo levanta polvo de piedra que hay que contener.',
          )
        : text('The work makes stone dust, and it is kept down.', 'El trabajo levanta polvo de piedra, y se contiene.'),
    why: text('This fine dust harms the lungs for good.', 'Este polvo fino daña los pulmones para siempre.'),
    ifNot: text('Anyone near the work would breathe it.', 'Cualquiera cerca del trabajo lo respiraría.'),
  },
  doesNotCover: [
    text('Rows of Table 1 for large machines.', 'Renglones de la Tabla 1 para máquinas grandes.'),
    text('Training, medical checks and the written plan.', 'Capacitación, exámenes médicos y el plan escrito.'),
  ],
  cases: () => import('./silica.cases.ts'),
});
