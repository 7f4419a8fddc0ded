import {
  type Complete,
  choice,
  defineCheck,
  failuresFirst,
  flag,
  formatLength,
  inchesOf,
  type Judgement,
  length,
  reasonThat,
  type Text,
  text,
  wordOf,
} from '../../kernel/index.ts';
import { INSECT_STRENGTH_SOURCE, TUBE_SOURCE } from '../../standards/common-practice/insects.data.ts';
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
      'With an awl, until hard wood. 0 when sound.',
      'Con un punzón, hasta madera dura. 0 si está sana.',
    ),
  }),
} as const;

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
const BEFORE_CLOSING = text(
  'A licensed inspector decides what it is; treat it before closing in.',
  'Un inspector con licencia decide qué es; trátelo antes de cerrar.',
);

function judgeSigns({ kind, liveSeen, tubesRebuilt, probeDepthIn }: Complete<typeof inputs>): Judgement {
  const active = liveSeen === true || tubesRebuilt === true;
  const eaten = probeDepthIn !== undefined && probeDepthIn > 0;
  const clear = kind === 'none' && !active && !eaten;
  const untold = !clear && !active && !eaten;
  const unprobed = untold && probeDepthIn === undefined;
  return {
    verdict: clear ? 'meets' : untold ? 'undetermined' : 'fails',
    values: () => ({
      activity: wordOf(active ? 'active' : kind === 'none' ? 'no-sign' : 'not-seen'),
      ...(probeDepthIn !== undefined && { softIn: inchesOf(probeDepthIn) }),
    }),
    reasons: () =>
      clear
        ? [NO_SIGN]
        : failuresFirst([
            reasonThat(untold, evidenceWords(kind)),
            active ? reasonThat(false, ACTIVE) : OLD,
            ...(eaten ? [reasonThat(false, eatenWords(probeDepthIn))] : []),
          ]),
    cautions: () => (clear ? [] : [NO_LOOKS, BEFORE_CLOSING]),
    referrals: clear ? [] : eaten ? ['specialist', 'engineer'] : ['specialist'],
    repairs: clear ? [] : eaten ? ['specialist-visit', 'member-replace', 'member-sister'] : ['specialist-visit'],
    missing: unprobed ? ['probeDepthIn'] : [],
    // Insects are no hazard to breathe or touch: opening them up is not what makes a place unsafe. Wood nobody probed
    // may be hollow, so it counts as carrying until it is.
    facts: { disturbed: false, ...(unprobed && { role: 'gravity' }) },
  };
}

const evidenceWords = (kind: Kind): Text =>
  text(`Evidence of insects. ${KINDS[kind].en}.`, `Indicios de insectos. ${KINDS[kind].es}.`);
const eatenWords = (depthIn: number): Text =>
  text(
    `A probe sinks in ${formatLength(depthIn)}: judge what is left as rotten wood.`,
    `La punta entra ${formatLength(depthIn)}: evalúe lo que queda como madera podrida.`,
  );

/** Evidence of wood-eating insects: active, or not seen to be. Never says which house is infested. Inches. */
export const insects = defineCheck({
  ...insectsCard,
  editions: [{ id: 'signs', title: text('Signs of insects', 'Señales de insectos') }],
  defaultEdition: 'signs',
  sources: [INSECT_STRENGTH_SOURCE, TUBE_SOURCE],
  inputs,
  evaluate: judgeSigns,
  knownAlready: ({ kind }) =>
    kind === undefined || kind === 'none'
      ? undefined
      : {
          reasons: () => [evidenceWords(kind)],
          referrals: ['specialist'],
          repairs: ['specialist-visit'],
          facts: { disturbed: false, role: 'gravity' },
        },
  repairs: ['specialist-visit', 'member-replace', 'member-sister'],
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
