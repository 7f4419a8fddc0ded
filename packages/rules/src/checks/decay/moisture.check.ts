import {
  atMost,
  type Complete,
  choice,
  compareShares,
  decimal,
  defineCheck,
  type Judgement,
  number,
  pctOf,
  ratioOf,
  reasonThat,
  type Text,
  text,
  wordOf,
} from '../../kernel/index.ts';
import { METER_RANGE_PCT, METER_RANGE_SOURCE } from '../../standards/common-practice/moisture-meters.data.ts';
import {
  ACTIVE_DECAY_SOURCE,
  DECAY_MOISTURE_SOURCE,
  DECAY_STARTS_FROM_PCT,
  DECAY_STOPS_BELOW_PCT,
  FUNGI_F,
} from '../../standards/wood-handbook-gtr-190/decay.data.ts';
import { DRY_LUMBER_PCT, DRY_LUMBER_SOURCE } from '../../standards/wwpa-tech-notes/dry-lumber.data.ts';
import { moistureCard } from './moisture.card.ts';

const inputs = {
  readingPct: number({
    unit: 'pct',
    min: 0,
    max: 200,
    label: text('Meter reading', 'Lectura del medidor'),
    howToMeasure: text('The highest of several, set to the species.', 'La más alta de varias, ajustada a la especie.'),
  }),
  meter: choice({
    options: [
      { value: 'pin', label: text('With pins', 'Con agujas') },
      { value: 'pinless', label: text('Without pins', 'Sin agujas') },
    ],
    label: text('Meter', 'Medidor'),
  }),
  temperatureF: number({
    unit: 'F',
    min: -60,
    max: 250,
    needed: 'optional',
    label: text('Temperature of the wood', 'Temperatura de la madera'),
  }),
} as const;

type Band = 'dry' | 'near-dry' | 'damp' | 'wet' | 'above-range';
type Growth = 'stopped' | 'slow' | 'active';

const BAND_WORDS: Readonly<Record<Band, Text>> = {
  dry: text('Dry: decay neither starts nor goes on.', 'Seca: la pudrición no empieza ni avanza.'),
  'near-dry': text(
    'Past dry lumber but under the 20% where decay goes on.',
    'Pasa de madera seca, pero bajo el 20% en que la pudrición avanza.',
  ),
  damp: text(
    'Damp: mold can grow, and decay that has begun goes on.',
    'Húmeda: puede crecer moho y seguir la pudrición que ya empezó.',
  ),
  wet: text(
    'Wet, at about fiber saturation (28 to 30%): decay can start by itself.',
    'Mojada, cerca de la saturación (28 a 30%): la pudrición puede empezar sola.',
  ),
  'above-range': text(
    'Above the range of a meter: it says only that the wood is soaked, not how much.',
    'Sobre el rango del medidor: solo dice que la madera está empapada, no cuánto.',
  ),
};
const GROWTH_WORDS: Readonly<Record<Growth, Text>> = {
  stopped: text(
    'At this temperature fungi all but stop; they go on when it changes.',
    'A esta temperatura los hongos casi se detienen; siguen cuando cambia.',
  ),
  slow: text('At this temperature fungi grow slowly.', 'A esta temperatura los hongos crecen despacio.'),
  active: text('At this temperature fungi grow well.', 'A esta temperatura los hongos crecen bien.'),
};
const PROBE = text(
  'Probe the wood for decay, find the water and stop it before closing.',
  'Pinche la madera por si hay pudrición; encuentre el agua y deténgala antes de cerrar.',
);
const COLD_OR_HOT = text(
  'Pin meters are set for about 70 F: correct a reading in cold or hot wood by the table of the maker.',
  'Los medidores de agujas se ajustan a unos 70 F: corrija en madera fría o caliente con la tabla del fabricante.',
);
const PINLESS = text(
  'A meter without pins is moved by metal, density and what lies behind: confirm with pins.',
  'Un medidor sin agujas se altera con metal, densidad y lo que hay detrás: confirme con agujas.',
);
const BELOW_RANGE = text(
  `Under ${METER_RANGE_PCT.from}% a meter only says dry.`,
  `Bajo ${METER_RANGE_PCT.from}% un medidor solo dice seca.`,
);

function bandOf(readingPct: number): Band {
  if (readingPct > METER_RANGE_PCT.to) return 'above-range';
  if (readingPct >= DECAY_STARTS_FROM_PCT) return 'wet';
  if (readingPct >= DECAY_STOPS_BELOW_PCT) return 'damp';
  return atMost(readingPct, DRY_LUMBER_PCT) ? 'dry' : 'near-dry';
}

/** How decay fungi grow at a temperature, degrees Fahrenheit. */
function growthAt(temperatureF: number): Growth {
  const { stops, slows } = FUNGI_F;
  if (temperatureF <= stops.below || temperatureF >= stops.above) return 'stopped';
  return temperatureF < slows.below || temperatureF > slows.above ? 'slow' : 'active';
}

function judgeReading({ readingPct, meter, temperatureF }: Complete<typeof inputs>): Judgement {
  const band = bandOf(readingPct);
  const growth = temperatureF === undefined ? undefined : growthAt(temperatureF);
  const soaked = band === 'above-range';
  const dry = band === 'dry';
  return {
    verdict: soaked ? 'undetermined' : dry ? 'meets' : 'fails',
    ratio: soaked ? null : ratioOf(readingPct, DRY_LUMBER_PCT),
    values: () => ({
      band: wordOf(band),
      limitPct: pctOf(DRY_LUMBER_PCT),
      ...(growth && { growth: wordOf(growth) }),
    }),
    reasons: () => [
      reasonThat(dry || soaked, readingWords(readingPct)),
      BAND_WORDS[band],
      ...(growth && !dry ? [GROWTH_WORDS[growth]] : []),
    ],
    cautions: () => [
      ...(dry ? [] : [PROBE]),
      ...(meter === 'pinless' ? [PINLESS] : [COLD_OR_HOT]),
      ...(readingPct < METER_RANGE_PCT.from ? [BELOW_RANGE] : []),
    ],
    repairs: dry ? [] : ['dry-out'],
    hangsOn: [DRY_LUMBER_SOURCE],
    sources: SOURCES,
    // How wet is not known beyond the range of the meter, but it is too wet, and the repair is that of any wet wood.
    facts: { ratio: null, ...(soaked && { prescriptive: true }) },
  };
}

const SOURCES = [DRY_LUMBER_SOURCE, DECAY_MOISTURE_SOURCE, ACTIVE_DECAY_SOURCE, METER_RANGE_SOURCE];

const readingWords = (readingPct: number): Text => {
  const { measured, limit } = compareShares(readingPct / 100, DRY_LUMBER_PCT / 100, 'at-most');
  return text(
    `The meter reads ${measured.en}; dry is at most ${limit}.`,
    `El medidor marca ${measured.es}; seca es ${limit} o menos.`,
  );
};

/** Whether wood is dry enough to close in and not to decay, by a moisture meter. Percent of dry weight. */
export const moisture = defineCheck({
  ...moistureCard,
  editions: [{ id: 'moisture-bands', title: text('Dry lumber and decay', 'Madera seca y pudrición') }],
  defaultEdition: 'moisture-bands',
  sources: SOURCES,
  inputs,
  evaluate: judgeReading,
  repairs: ['dry-out'],
  client: {
    found: ({ readingPct }) =>
      readingPct === undefined
        ? text('Wood in the house is wet.', 'Hay madera mojada en la casa.')
        : text(
            `Wood in the house holds about ${decimal(readingPct, 0)}% water.`,
            `Madera de la casa tiene cerca de ${decimal(readingPct, 0)}% de agua.`,
          ),
    why: text('Wet wood grows mold and rots. Dry wood does not.', 'La madera mojada cría moho y se pudre. La seca no.'),
    ifNot: text('Closed in wet, it can rot where no one sees.', 'Si se cierra mojada puede pudrirse sin que se vea.'),
  },
  doesNotCover: [
    text('Where the water comes from.', 'De dónde viene el agua.'),
    text('Treated wood, panels and glued members.', 'Madera tratada, paneles y elementos encolados.'),
  ],
  cases: () => import('./moisture.cases.ts'),
});
