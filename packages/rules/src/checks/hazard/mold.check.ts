import {
  atMost,
  type Complete,
  compareNumbers,
  decimal,
  defineCheck,
  flag,
  type Judgement,
  number,
  type Reason,
  ratioOf,
  reasonThat,
  squareFeetOf,
  text,
  wordOf,
  yesNoOf,
} from '../../kernel/index.ts';
import {
  MOLD_BANDS_SOURCE,
  MOLD_EPA_SOURCE,
  MOLD_MEDIUM_SF,
  MOLD_NYC_SOURCE,
  MOLD_SMALL_SF,
  MOLD_SPECIALIST_ABOVE_SF,
  type MoldGuide,
} from '../../standards/mold-guidelines/mold.data.ts';
import { moldCard } from './mold.card.ts';

const inputs = {
  areaSf: number({
    unit: 'sf',
    min: 0,
    max: 100_000,
    label: text('Surface with mold, in all', 'Superficie con moho, en total'),
    howToMeasure: text(
      'Both faces and behind the finish, as far as seen. 0 if none.',
      'Ambas caras y detrás del acabado, hasta donde se ve. 0 si no hay.',
    ),
  }),
  sourceFixed: flag({
    needed: 'optional',
    label: text('Is the water that feeds it stopped?', '¿Ya se detuvo el agua que lo alimenta?'),
    howToMeasure: text('Unknown counts as no.', 'Si no se sabe, cuenta como no.'),
  }),
} as const;

type MoldInputs = Complete<typeof inputs>;

const FIX_WATER = text(
  'Find and stop the water first: cleaned mold comes back while it is wet.',
  'Primero encuentre y detenga el agua: el moho limpiado vuelve mientras haya humedad.',
);
const NONE = text('No mold is seen and the water is stopped.', 'No se ve moho y el agua está detenida.');
const CREW_MAY = text(
  'By this guide the crew may clean it, with masks, gloves and the place sealed off.',
  'Según esta guía, el equipo puede limpiarlo con mascarilla, guantes y el lugar aislado.',
);
const SPECIALIST = text(
  'Treat it as a job for a mold specialist. Do not disturb it before.',
  'Trátelo como trabajo de un especialista en moho. No lo toque antes.',
);
const BOTH_GUIDES = text(
  `EPA, HUD and CDC ask for a specialist above ${MOLD_SMALL_SF} SF, New York City above ${MOLD_MEDIUM_SF} SF.`,
  `EPA, HUD y CDC piden un especialista sobre ${MOLD_SMALL_SF} pies², la ciudad de Nueva York sobre ${MOLD_MEDIUM_SF}.`,
);
const NOT_HEALTH = text(
  'The sizes are practical limits, not limits of health: no amount is known to be safe, and hidden mold may be larger.',
  'Los tamaños son prácticos, no de salud: no se sabe de una cantidad segura, y puede haber más moho oculto.',
);

const bandOf = (areaSf: number): string => {
  if (areaSf === 0) return 'none';
  if (atMost(areaSf, MOLD_SMALL_SF)) return 'small';
  return atMost(areaSf, MOLD_MEDIUM_SF) ? 'medium' : 'large';
};

function judgeMold({ areaSf, sourceFixed }: MoldInputs, guide: MoldGuide): Judgement {
  const limitSf = MOLD_SPECIALIST_ABOVE_SF[guide];
  const fixed = sourceFixed === true;
  const own = atMost(areaSf, limitSf);
  const positive = areaSf > 0 || !fixed;
  return {
    verdict: positive ? 'fails' : 'meets',
    ratio: ratioOf(areaSf, limitSf),
    values: () => ({
      band: wordOf(bandOf(areaSf)),
      specialistAboveSf: squareFeetOf(limitSf),
      sourceFixed: yesNoOf(fixed),
    }),
    reasons: () => moldWords(areaSf, limitSf, fixed),
    cautions: () => (areaSf > 0 ? [NOT_HEALTH] : []),
    sources: [MOLD_BANDS_SOURCE, MOLD_EPA_SOURCE, MOLD_NYC_SOURCE],
    referrals: own ? [] : ['specialist'],
    repairs: repairsFor(areaSf, fixed, own),
    facts: { prescriptive: own },
  };
}

function moldWords(areaSf: number, limitSf: number, fixed: boolean): Reason[] {
  const water = reasonThat(fixed, FIX_WATER);
  if (areaSf === 0) return [fixed ? NONE : water];
  const { measured } = compareNumbers(areaSf, limitSf, 'at-most', decimal, 2);
  return [
    reasonThat(false, text(`${measured.en} SF of mold.`, `${measured.es} pies² de moho.`)),
    BOTH_GUIDES,
    atMost(areaSf, limitSf) ? CREW_MAY : SPECIALIST,
    ...(fixed ? [] : [water]),
  ];
}

function repairsFor(areaSf: number, fixed: boolean, own: boolean): string[] {
  if (!own) return fixed ? ['specialist-visit'] : ['specialist-visit', 'dry-out'];
  if (areaSf > 0) return ['mold-cleanup'];
  return fixed ? [] : ['dry-out'];
}

/** Who may clean mold of a given area, and whether its water is stopped. Square feet. */
export const mold = defineCheck({
  ...moldCard,
  editions: [
    { id: 'epa-hud-cdc', title: text('EPA, HUD and CDC: 10 SF', 'EPA, HUD y CDC: 10 pies²') },
    { id: 'nyc', title: text('New York City: 100 SF', 'Ciudad de Nueva York: 100 pies²') },
  ],
  defaultEdition: 'epa-hud-cdc',
  sources: [MOLD_BANDS_SOURCE, MOLD_EPA_SOURCE, MOLD_NYC_SOURCE],
  inputs,
  evaluate: (given, { edition }) => judgeMold(given, edition as MoldGuide),
  knownAlready: ({ sourceFixed }) =>
    sourceFixed === true ? undefined : { reasons: () => [FIX_WATER], repairs: ['dry-out'] },
  repairs: ['mold-cleanup', 'dry-out', 'specialist-visit'],
  client: {
    found: ({ areaSf = 0 }) =>
      areaSf > 0
        ? text(
            `There is mold here, about ${decimal(areaSf, 0)} square feet.`,
            `Aquí hay moho, cerca de ${decimal(areaSf, 0)} pies cuadrados.`,
          )
        : text('We looked for mold and for the water that feeds it.', 'Buscamos moho y el agua que lo alimenta.'),
    why: text(
      'Mold grows where wood stays wet, and can make people sick.',
      'El moho crece donde la madera sigue mojada, y puede enfermar.',
    ),
    ifNot: text('It comes back and spreads while the water runs.', 'Vuelve y se extiende mientras haya agua.'),
  },
  doesNotCover: [
    text('Air tests, and what kind of mold it is.', 'Pruebas del aire y el tipo de moho.'),
    text('State licenses for mold work.', 'Licencias estatales para trabajos de moho.'),
  ],
  cases: () => import('./mold.cases.ts'),
});
