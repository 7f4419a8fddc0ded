import {
  type Assumed,
  atLeast,
  type Complete,
  choice,
  defineCheck,
  flag,
  formatLength,
  type InputIssue,
  inchesOf,
  type Judgement,
  length,
  type Partials,
  reasonThat,
  refuse,
  type Text,
  text,
  wordOf,
} from '../../kernel/index.ts';
import {
  EATEN_DEPTH_SOURCE,
  EATEN_FOR_ENGINEER_IN,
  INSECT_STRENGTH_SOURCE,
  TUBE_SOURCE,
} from '../../standards/common-practice/insects.data.ts';
import { INFESTED_WOOD_SOURCE } from '../../standards/lamc-91.9204/infested-wood.data.ts';
import { insectsCard } from './insects.card.ts';

const KINDS = {
  'subterranean-termite': text('Termites: mud tubes', 'Termitas: tubos de barro'),
  'drywood-termite': text('Drywood termites: pellets', 'Termitas de madera seca: bolitas'),
  'powderpost-beetle': text('Beetles: small round holes, flour', 'Escarabajos: agujeritos redondos, polvillo'),
  'carpenter-ant': text('Carpenter ants: coarse shavings', 'Hormigas carpinteras: viruta gruesa'),
  unknown: text('Eaten wood, insect unknown', 'Madera comida, insecto desconocido'),
  none: text('Looked, no sign found', 'Se buscó, sin señales'),
} as const;
type Kind = keyof typeof KINDS;

const inputs = {
  kind: choice({
    options: (Object.keys(KINDS) as Kind[]).map((value) => ({ value, label: KINDS[value] })),
    label: text('What the signs look like', 'Cómo son las señales'),
  }),
  liveSeen: flag({
    needed: { when: { not: { input: 'tubesRebuilt', is: [true] } } },
    label: text('Live insects seen?', '¿Se vieron insectos vivos?'),
    howToMeasure: text('Break a tube or lift a chip and look.', 'Rompa un tubo o levante una astilla y mire.'),
  }),
  tubesRebuilt: flag({
    needed: {
      when: { all: [{ input: 'kind', is: ['subterranean-termite'] }, { not: { input: 'liveSeen', is: [true] } }] },
    },
    showWhen: { input: 'kind', is: ['subterranean-termite'] },
    label: text('Broken tubes built again?', '¿Reconstruyeron los tubos rotos?'),
    howToMeasure: text('Break one, look again after some days.', 'Rompa uno y mire otra vez en unos días.'),
  }),
  probeDepthIn: length({
    unit: 'in',
    min: 0,
    max: 24,
    needed: 'optional',
    label: text('How deep a probe sinks in', 'Cuánto entra la punta'),
    howToMeasure: text(
      'With an awl, until hard wood. 0 when sound; a crushed part counts with its whole thickness.',
      'Con un punzón, hasta madera dura. 0 si está sana; lo aplastado cuenta con todo su grueso.',
    ),
  }),
} as const;

type SignInputs = Complete<typeof inputs>;

/** Tubes that were built again are a sign. */
const tubesWithoutSign = ({ kind, tubesRebuilt }: Partials<typeof inputs>): InputIssue[] =>
  kind === 'none' && tubesRebuilt === true
    ? [
        refuse(
          ['tubesRebuilt'],
          'true, none',
          text('true only with signs (kind)', 'true solo con señales (kind)'),
          text(
            'Tubes that were built again are a sign: choose mud tubes.',
            'Los tubos rehechos son una señal: elija tubos de barro.',
          ),
        ),
      ]
    : [];

const ACTIVE = text(
  'Live insects or rebuilt tubes: they are at work.',
  'Insectos vivos o tubos rehechos: están activos.',
);
const OLD = text(
  'Nothing live was seen; empty or dry signs do not prove that they are gone.',
  'No se vio nada vivo; las señales vacías o secas no prueban que se fueron.',
);
const NO_SIGN = text(
  'No sign of insects was found where it was looked.',
  'No hubo señales de insectos donde se buscó.',
);
const NO_LOOKS = text(
  'Wood can be hollow behind small holes: nobody can tell its strength from looks. Replace it where strength matters.',
  'La madera puede estar hueca tras agujeritos: nadie sabe su resistencia a simple vista. Reemplácela donde importe.',
);
const NOT_PROBED = text(
  'Nobody has probed the wood: it may be hollow.',
  'Nadie ha pinchado la madera: puede estar hueca.',
);
const LEAVE_A_TUBE = text(
  'Do not break every tube: leave one whole for the second look.',
  'No rompa todos los tubos: deje uno entero para la segunda revisión.',
);
const BEFORE_CLOSING = text(
  'A licensed inspector decides what it is; treat it before closing in.',
  'Un inspector con licencia decide qué es; trátelo antes de cerrar.',
);

function judgeSigns(
  { kind, liveSeen, tubesRebuilt, probeDepthIn }: SignInputs,
  carries: boolean | undefined,
): Judgement {
  const active = liveSeen === true || tubesRebuilt === true;
  const unprobed = probeDepthIn === undefined;
  const eaten = !unprobed && probeDepthIn > 0;
  const evidence = kind !== 'none' || active || eaten;
  // Signs on a part that carries nothing need no probe to be a matter for the specialist, nor do live insects.
  const toProbe = unprobed && !active && (kind === 'none' || carries !== false);
  return {
    verdict: toProbe ? 'undetermined' : evidence ? 'fails' : 'meets',
    values: () => ({
      activity: wordOf(active ? 'active' : kind === 'none' ? 'no-sign' : 'not-seen'),
      ...(!unprobed && { softIn: inchesOf(probeDepthIn) }),
    }),
    reasons: () => [
      ...(evidence ? [reasonThat(toProbe, evidenceWords(kind)), active ? reasonThat(false, ACTIVE) : OLD] : [NO_SIGN]),
      ...(unprobed ? [NOT_PROBED] : eaten ? [reasonThat(false, eatenWords(probeDepthIn))] : []),
    ],
    cautions: () =>
      evidence ? [NO_LOOKS, BEFORE_CLOSING, ...(kind === 'subterranean-termite' ? [LEAVE_A_TUBE] : [])] : [],
    referrals: evidence ? ['specialist'] : [],
    repairs: !evidence ? [] : eaten ? ['specialist-visit', 'member-replace', 'member-sister'] : ['specialist-visit'],
    sources: eaten ? [...SOURCES, EATEN_DEPTH_SOURCE, INFESTED_WOOD_SOURCE] : SOURCES,
    hangsOn: SOURCES,
    missing: toProbe ? ['probeDepthIn'] : [],
    ...(eaten && carries === undefined && !mayBeWeak(probeDepthIn, carries) && { assumed: [CARRIES_NOTHING] }),
    // Insects are no hazard to breathe or touch: opening them up is not what makes a place unsafe.
    facts: { disturbed: false, ...(evidence && mayBeWeak(probeDepthIn, carries) && { role: 'gravity' }) },
  };
}

const CARRIES_NOTHING: Assumed = {
  input: 'context.carriesStoryOrRoof',
  text: text(
    'It is taken to carry neither story nor roof; where it does, an engineer decides at any depth.',
    'Se toma que no carga piso ni techo; donde carga, decide un ingeniero a cualquier profundidad.',
  ),
  source: EATEN_DEPTH_SOURCE,
};

/** Whether a line that carries weight may be weakened: wood nobody probed may be hollow, and unknown counts as carrying. */
function mayBeWeak(probeDepthIn: number | undefined, carries: boolean | undefined): boolean {
  if (carries === false) return false;
  if (probeDepthIn === undefined || atLeast(probeDepthIn, EATEN_FOR_ENGINEER_IN)) return true;
  return carries === true && probeDepthIn > 0;
}

const SOURCES = [INSECT_STRENGTH_SOURCE, TUBE_SOURCE];

const evidenceWords = (kind: Kind): Text =>
  kind === 'none'
    ? text('Evidence of insects.', 'Indicios de insectos.')
    : text(`Evidence of insects. ${KINDS[kind].en}.`, `Indicios de insectos. ${KINDS[kind].es}.`);
const eatenWords = (depthIn: number): Text =>
  text(
    `A probe sinks in ${formatLength(depthIn)}: judge what is left as rotten wood; strengthen or replace it until its sound wood equals the original size.`,
    `La punta entra ${formatLength(depthIn)}: evalúe lo que queda como madera podrida; refuerce o reemplace hasta que la madera sana iguale el tamaño original.`,
  );

/** Evidence of wood-eating insects: active, or not seen to be. Never says which house is infested. Inches. */
export const insects = defineCheck({
  ...insectsCard,
  editions: [{ id: 'signs', title: text('Signs of insects', 'Señales de insectos') }],
  defaultEdition: 'signs',
  sources: [...SOURCES, EATEN_DEPTH_SOURCE, INFESTED_WOOD_SOURCE],
  inputs,
  refine: tubesWithoutSign,
  evaluate: (given, { situation }) => judgeSigns(given, situation.carriesStoryOrRoof),
  knownAlready: ({ kind }) =>
    kind === undefined || kind === 'none'
      ? undefined
      : {
          reasons: () => [evidenceWords(kind)],
          referrals: ['specialist'],
          repairs: ['specialist-visit'],
          facts: { disturbed: false, role: 'gravity' },
        },
  repairs: ['specialist-visit', 'member-replace', 'member-sister', 'engineer-letter'],
  client: {
    found: () => text('There is evidence of insects that eat wood.', 'Hay indicios de insectos que comen madera.'),
    why: text(
      'They hollow out wood from the inside. It can look sound and be weak.',
      'Vacían la madera por dentro. Puede verse sana y estar débil.',
    ),
    ifNot: text('If they are at work, the damage spreads.', 'Si están activos, el daño avanza.'),
  },
  doesNotCover: [
    text('Which insect it is, and treatment.', 'Qué insecto es y su tratamiento.'),
    text('How much strength is left: see rotten wood.', 'Cuánta resistencia queda: vea madera podrida.'),
  ],
  cases: () => import('./insects.cases.ts'),
});
