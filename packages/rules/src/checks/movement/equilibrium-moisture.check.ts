import {
  assume,
  atMost,
  type Complete,
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
} from '../../kernel/index.ts';
import { DECAY_MOISTURE_SOURCE, DECAY_STOPS_BELOW_PCT } from '../../standards/wood-handbook-gtr-190/decay.data.ts';
import {
  EMC_RANGE_F,
  EMC_SOURCE,
  equilibriumMoisturePct,
} from '../../standards/wood-handbook-gtr-190/equilibrium-moisture.ts';
import { DRY_LUMBER_PCT, DRY_LUMBER_SOURCE } from '../../standards/wwpa-tech-notes/dry-lumber.data.ts';
import { equilibriumMoistureCard } from './equilibrium-moisture.card.ts';

const inputs = {
  temperatureF: number({
    unit: 'F',
    min: -60,
    max: 250,
    label: text('Air temperature', 'Temperatura del aire'),
    howToMeasure: text('Where the wood is, in the shade.', 'Donde está la madera, a la sombra.'),
  }),
  humidityPct: number({
    unit: 'pct',
    min: 0,
    max: 100,
    label: text('Relative humidity', 'Humedad relativa'),
    howToMeasure: text('Let the meter rest there a while.', 'Deje el medidor ahí un rato.'),
  }),
  limitPct: number({
    unit: 'pct',
    min: 4,
    max: 30,
    default: DRY_LUMBER_PCT,
    assumes: assume(
      text(`${DRY_LUMBER_PCT}% is accepted, as for dry lumber.`, `Se acepta ${DRY_LUMBER_PCT}%, como en madera seca.`),
      DRY_LUMBER_SOURCE,
    ),
    label: text('Moisture you accept', 'Humedad que acepta'),
    howToMeasure: text(
      `${DRY_LUMBER_PCT}% is dry lumber; decay stops below ${DECAY_STOPS_BELOW_PCT}%. Ask less for finishes.`,
      `${DRY_LUMBER_PCT}% es madera seca; la pudrición se detiene bajo ${DECAY_STOPS_BELOW_PCT}%. Pida menos para acabados.`,
    ),
  }),
} as const;

const AT_REST = text(
  'Wood needs days to months to come to rest; a leak or wet ground makes it wetter than the air says.',
  'La madera tarda de días a meses en llegar ahí; una fuga o suelo mojado la humedece más que el aire.',
);
const OTHER_MODEL = text(
  'The handbook also has a newer model (2014), up to about 1.5 points higher in cold, damp air.',
  'El manual trae otro modelo más nuevo (2014), hasta 1.5 puntos más alto con aire frío y húmedo.',
);
const OUTSIDE = text(
  `The equation is used from ${EMC_RANGE_F.min} to ${EMC_RANGE_F.max} F only; read the wood with a meter.`,
  `La ecuación se usa solo de ${EMC_RANGE_F.min} a ${EMC_RANGE_F.max} F; mida la madera con un medidor.`,
);
const SOURCES = [EMC_SOURCE, DRY_LUMBER_SOURCE, DECAY_MOISTURE_SOURCE];

function judgeAir({ temperatureF, humidityPct, limitPct }: Complete<typeof inputs>): Judgement {
  if (temperatureF < EMC_RANGE_F.min || temperatureF > EMC_RANGE_F.max)
    return { verdict: 'undetermined', reasons: () => [OUTSIDE], cautions: () => [AT_REST], sources: SOURCES };
  const moisturePct = equilibriumMoisturePct(temperatureF, humidityPct);
  const meets = atMost(moisturePct, limitPct);
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: ratioOf(moisturePct, limitPct),
    values: () => ({ moisturePct: pctOf(moisturePct), limitPct: pctOf(limitPct) }),
    reasons: () => [reasonThat(meets, airWords(temperatureF, humidityPct, moisturePct, limitPct))],
    cautions: () => [AT_REST, OTHER_MODEL],
    repairs: meets ? [] : ['dry-out'],
    sources: SOURCES,
    facts: { ratio: null },
  };
}

function airWords(temperatureF: number, humidityPct: number, moisturePct: number, limitPct: number): Text {
  const air = `${decimal(temperatureF, 1)} F, ${decimal(humidityPct, 1)}%`;
  const { measured, limit } = compareShares(moisturePct / 100, limitPct / 100, 'at-most');
  return text(
    `In air of ${air} wood settles at ${measured.en} moisture; ${limit} is accepted.`,
    `Con aire a ${air} la madera llega a ${measured.es} de humedad; se acepta ${limit}.`,
  );
}

/** The moisture wood comes to in steady air, against the moisture accepted. Degrees Fahrenheit, percent. */
export const equilibriumMoisture = defineCheck({
  ...equilibriumMoistureCard,
  editions: [{ id: 'wood-handbook-4-5', title: text('Wood Handbook Equation 4-5', 'Wood Handbook, ecuación 4-5') }],
  defaultEdition: 'wood-handbook-4-5',
  sources: SOURCES,
  inputs,
  evaluate: judgeAir,
  repairs: ['dry-out'],
  client: {
    found: (_inputs, outcome) => {
      const moisture = outcome.values.moisturePct?.value;
      return typeof moisture === 'number'
        ? text(
            `The air there keeps wood at about ${decimal(moisture, 0)}% water.`,
            `Ese aire mantiene la madera con cerca de ${decimal(moisture, 0)}% de agua.`,
          )
        : text('The air around the wood was measured.', 'Se midió el aire junto a la madera.');
    },
    why: text(
      'Wood takes up water from damp air. Wet wood swells, molds and rots.',
      'La madera toma agua del aire. Mojada se hincha, cría moho y se pudre.',
    ),
    ifNot: text('The wood stays damp and may rot.', 'La madera seguirá húmeda y puede pudrirse.'),
  },
  doesNotCover: [
    text('Leaks, wet ground and water on the wood.', 'Fugas, suelo mojado y agua sobre la madera.'),
    text('Panels, treated wood and glued members.', 'Paneles, madera tratada y encolada.'),
  ],
  cases: () => import('./equilibrium-moisture.cases.ts'),
});
