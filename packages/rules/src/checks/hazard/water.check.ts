import {
  assume,
  type Complete,
  choice,
  countOf,
  defineCheck,
  type Judgement,
  named,
  reasonThat,
  type Text,
  text,
  wordOf,
} from '../../kernel/index.ts';
import {
  WATER_CATEGORY,
  WATER_SOURCE,
  WATER_UNKNOWN_SOURCE,
  type WaterCategory,
} from '../../standards/iicrc-s500/water.data.ts';
import { waterCard } from './water.card.ts';

const inputs = {
  source: choice({
    options: [
      { value: 'supply-line', label: text('Clean supply pipe', 'Tubo de agua limpia') },
      { value: 'rain-or-snow', label: text('Rain or melting snow from above', 'Lluvia o nieve derretida de arriba') },
      {
        value: 'tub-or-sink',
        label: text('Tub or sink that ran over, clean', 'Tina o lavabo que se desbordó, limpio'),
      },
      { value: 'appliance', label: text('Washer or dishwasher', 'Lavadora o lavaplatos') },
      { value: 'toilet-bowl', label: text('Toilet bowl, no solids', 'Taza del inodoro, sin sólidos') },
      {
        value: 'seepage',
        label: text('Seeping through walls or floor from the ground', 'Filtración del suelo por paredes o piso'),
      },
      { value: 'sewage', label: text('Sewage', 'Aguas negras') },
      { value: 'toilet-backflow', label: text('Toilet or drain backing up', 'Inodoro o desagüe que se regresa') },
      { value: 'flood', label: text('Flood or rising water', 'Inundación o agua que sube') },
      { value: 'unknown', label: text('Nobody knows', 'Nadie sabe') },
    ],
    label: text('Where the water came from', 'De dónde vino el agua'),
  }),
  since: named({
    needed: 'optional',
    label: text('Wet since', 'Mojado desde'),
    howToMeasure: text('A date, or as people remember it.', 'Una fecha, o lo que recuerden.'),
  }),
  judgedCategory: choice({
    needed: 'optional',
    assumes: assume(
      text(
        'Nobody qualified has judged it worse than its origin says.',
        'Nadie calificado la juzgó peor que por su origen.',
      ),
      WATER_SOURCE,
    ),
    options: [
      { value: '1', label: text('1, clean', '1, limpia') },
      { value: '2', label: text('2, contaminated', '2, contaminada') },
      { value: '3', label: text('3, grossly contaminated', '3, muy contaminada') },
    ],
    label: text('Category judged on site, if any', 'Categoría juzgada en el sitio, si la hay'),
    howToMeasure: text(
      'By somebody qualified. Only a worse one counts.',
      'Por alguien calificado. Solo cuenta una peor.',
    ),
  }),
} as const;

type WaterInputs = Complete<typeof inputs>;

const CATEGORY_WORDS: Record<WaterCategory, Text> = {
  1: text('Category 1, clean water.', 'Categoría 1, agua limpia.'),
  2: text('Category 2, contaminated: treat it as harmful.', 'Categoría 2, contaminada: trátela como dañina.'),
  3: text('Category 3, grossly contaminated: stay out of it.', 'Categoría 3, muy contaminada: no la toque.'),
};
const UNKNOWN_WATER = text(
  'Nobody knows where it came from, so it is treated as the worst.',
  'Nadie sabe de dónde vino, así que se trata como la peor.',
);
const JUDGED_WORSE = text('Judged worse on site than its origin says.', 'Juzgada peor en el sitio que por su origen.');
const NO_DAY_COUNT = text(
  'Time and what it touched can make it worse. The standard counts no days: judge again, and note who judged and when.',
  'El tiempo y lo que tocó pueden empeorarla. La norma no cuenta días: vuelva a juzgar, y anote quién y cuándo.',
);
const DRY_IT = text('Stop it, dry the wood and measure the moisture.', 'Deténgala, seque la madera y mida la humedad.');

function judgeWater({ source, since, judgedCategory }: WaterInputs): Judgement {
  const byOrigin = WATER_CATEGORY[source];
  const judged = Number(judgedCategory ?? 1) as WaterCategory;
  const category = Math.max(judged, byOrigin) as WaterCategory;
  const clean = category === 1;
  return {
    verdict: clean ? 'meets' : 'fails',
    values: () => ({ category: countOf(category), ...(since !== undefined && { since: wordOf(since) }) }),
    reasons: () => [
      reasonThat(clean, CATEGORY_WORDS[category]),
      ...(source === 'unknown' ? [UNKNOWN_WATER] : []),
      ...(judged > byOrigin ? [JUDGED_WORSE] : []),
    ],
    cautions: () => [NO_DAY_COUNT, DRY_IT],
    sources: source === 'unknown' ? [WATER_SOURCE, WATER_UNKNOWN_SOURCE] : [WATER_SOURCE],
    referrals: clean ? [] : ['specialist'],
    repairs: clean ? [] : ['specialist-visit', 'dry-out'],
    // Whoever works there stands in it: grossly contaminated water is a place to leave.
    facts: category === 3 ? { disturbed: true } : {},
  };
}

/** How contaminated water in the house is, by where it came from. */
export const water = defineCheck({
  ...waterCard,
  editions: [{ id: 'iicrc-s500', title: text('IICRC S500 categories', 'Categorías IICRC S500') }],
  defaultEdition: 'iicrc-s500',
  sources: [WATER_SOURCE, WATER_UNKNOWN_SOURCE],
  inputs,
  evaluate: (given) => judgeWater(given),
  repairs: ['specialist-visit', 'dry-out'],
  client: {
    found: (_inputs, outcome) =>
      outcome.verdict === 'fails'
        ? text('Dirty water got into this place.', 'Entró agua sucia en este lugar.')
        : text('Water got into this place.', 'Entró agua en este lugar.'),
    why: text(
      'Dirty water carries germs, and wet wood rots.',
      'El agua sucia trae gérmenes, y la madera mojada se pudre.',
    ),
    ifNot: text(
      'Germs, mold and rot can spread behind the wall.',
      'Gérmenes, moho y pudrición pueden extenderse tras la pared.',
    ),
  },
  doesNotCover: [
    text('Tests of the water.', 'Pruebas del agua.'),
    text('How wet the wood is: use the moisture check.', 'Qué tan mojada está la madera: use la revisión de humedad.'),
  ],
  cases: () => import('./water.cases.ts'),
});
