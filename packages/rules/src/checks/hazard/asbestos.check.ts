import {
  assume,
  atLeast,
  type Complete,
  choice,
  count,
  countOf,
  decimal,
  defineCheck,
  feetOf,
  flag,
  type Judgement,
  list,
  number,
  reasonThat,
  squareFeetOf,
  type Text,
  text,
  yesNoOf,
} from '../../kernel/index.ts';
import {
  NESHAP_AREA_SF,
  NESHAP_EXCLUDED_HOMES,
  NESHAP_NOTICE_DAYS,
  NESHAP_PIPE_FT,
  NESHAP_SOURCE,
} from '../../standards/40-cfr-61/asbestos-notice.data.ts';
import { UNKNOWN_SOURCE } from '../../standards/common-practice/unknown.data.ts';
import { VERMICULITE_SOURCE } from '../../standards/epa-vermiculite/vermiculite.data.ts';
import { PRESUMED, PRESUMED_SOURCE, PRESUMED_THROUGH_YEAR } from '../../standards/osha-1926.1101/asbestos.data.ts';
import { asbestosCard } from './asbestos.card.ts';

const inputs = {
  yearBuilt: count({
    min: 1600,
    max: 2200,
    needed: 'optional',
    label: text('Year built, if known', 'Año de construcción, si se sabe'),
    howToMeasure: text('Unknown is treated as old.', 'Si no se sabe, se trata como antigua.'),
  }),
  materials: list({
    orWord: 'kind',
    maxItems: 100,
    label: text('Materials found there', 'Materiales encontrados ahí'),
    howToMeasure: text(
      'Look, do not touch. Leave the list empty if there are none.',
      'Mire sin tocar. Deje la lista vacía si no hay.',
    ),
    item: {
      kind: choice({
        options: [
          {
            value: 'pipe-insulation',
            label: text('Wrap on pipes, boiler or ducts', 'Forro de tubos, caldera o ductos'),
          },
          {
            value: 'surfacing',
            label: text('Sprayed or troweled ceiling or wall', 'Cielo o pared rociados o con llana'),
          },
          {
            value: 'flooring',
            label: text(
              'Old vinyl or asphalt floor, with its glue',
              'Piso viejo de vinilo o asfalto, con su pegamento',
            ),
          },
          { value: 'wallboard', label: text('Wallboard or plaster', 'Tablero o yeso') },
          { value: 'roofing', label: text('Roofing', 'Techado') },
          { value: 'siding', label: text('Cement siding', 'Revestimiento de cemento') },
          {
            value: 'vermiculite',
            label: text(
              'Loose fill of shiny, pebble-like flakes (vermiculite)',
              'Relleno suelto de hojuelas brillantes como piedritas (vermiculita)',
            ),
          },
          { value: 'other', label: text('Something else suspect', 'Otra cosa sospechosa') },
        ],
        label: text('Material', 'Material'),
      }),
      lengthFt: number({
        unit: 'ft',
        min: 0,
        max: 100_000,
        needed: 'optional',
        showWhen: { input: 'kind', is: ['pipe-insulation'] },
        label: text('Length on pipes', 'Largo en tubos'),
      }),
      areaSf: number({
        unit: 'sf',
        min: 0,
        max: 1_000_000,
        needed: 'optional',
        label: text('Area', 'Área'),
      }),
      testedFree: flag({
        needed: 'optional',
        label: text('Tested by an inspector and free of it?', '¿Un inspector lo probó y no tiene?'),
      }),
    },
  }),
  loadBearingRemoved: flag({
    needed: 'optional',
    assumes: assume(
      text(
        'Nothing that carries load is taken out there; if it is, stop and make safe first.',
        'Ahí no se quita nada que carga; si se quita, pare y asegure primero.',
      ),
    ),
    label: text('Will anything that carries load be taken out?', '¿Se quitará algo que carga?'),
  }),
  dwellingUnits: count({
    min: 1,
    max: 10_000,
    needed: 'optional',
    label: text('Homes in the building', 'Viviendas en el edificio'),
  }),
  severalBuildings: flag({
    needed: 'optional',
    label: text('Several houses in one project?', '¿Varias casas en un solo proyecto?'),
  }),
} as const;

type AsbestosInputs = Complete<typeof inputs>;
type Material = AsbestosInputs['materials'][number];

const TREAT_AS_ASBESTOS = text(
  'Treat it as asbestos until an accredited inspector has sampled it.',
  'Trátelo como asbesto hasta que un inspector acreditado tome muestras.',
);
const DO_NOT_DISTURB = text(
  'Do not cut, break, sand, scrape or sweep it. Once torn, keep everyone out.',
  'No lo corte, rompa, lije, raspe ni barra. Si está roto, que nadie entre.',
);
const UNKNOWN_YEAR = text(
  'The year built is unknown, so it is treated as old.',
  'No se sabe el año, así que se trata como antigua.',
);
const NEWER = text(
  `Built after ${PRESUMED_THROUGH_YEAR}: nothing is presumed. It may still contain asbestos; ask before it is disturbed.`,
  `Construida después de ${PRESUMED_THROUGH_YEAR}: no se presume. Aun así puede tener asbesto; pregunte antes de tocarlo.`,
);
const NOTHING_SUSPECT = text('No suspect material is left untested.', 'No queda material sospechoso sin probar.');
const LOCAL_RULES = text(
  'State and local rules are often stricter for houses: ask before work starts.',
  'Las reglas estatales y locales suelen ser más estrictas para casas: pregunte antes de empezar.',
);

const VERMICULITE = text(
  'Vermiculite is taken as asbestos whatever the year: most of what was sold came from one contaminated mine.',
  'La vermiculita se toma como asbesto sin importar el año: casi toda vino de una mina contaminada.',
);
const LEAVE_THE_FILL = text(
  'Leave the fill where it lies: store nothing there, keep children out, and do not open the ceiling or wall below it to look.',
  'Deje el relleno donde está: no guarde nada ahí, sin niños, y no abra el cielo o la pared de abajo para ver.',
);

interface Suspects {
  readonly presumed: number;
  readonly mayContain: number;
  /** How many of those that may contain it are vermiculite. */
  readonly vermiculite: number;
  readonly pipeFt: number;
  readonly areaSf: number;
}

/** Adds up what is there and not tested free. */
function suspectsOf(materials: readonly Material[]): Suspects {
  let [presumed, mayContain, vermiculite, pipeFt, areaSf] = [0, 0, 0, 0, 0];
  for (const material of materials) {
    if (material.testedFree) continue;
    if (PRESUMED[material.kind]) presumed++;
    else mayContain++;
    if (material.kind === 'vermiculite') vermiculite++;
    pipeFt += material.lengthFt ?? 0;
    areaSf += material.areaSf ?? 0;
  }
  return { presumed, mayContain, vermiculite, pipeFt, areaSf };
}

/** Whether the federal notice is due; undefined while nobody says how many homes the building has. */
function federalNotice(given: AsbestosInputs, found: Suspects): boolean | undefined {
  const { dwellingUnits, severalBuildings } = given;
  if (severalBuildings !== true) {
    if (dwellingUnits === undefined) return undefined;
    if (dwellingUnits <= NESHAP_EXCLUDED_HOMES) return false;
  }
  // Taking out any load-supporting member is demolition there, and needs notice whatever the amount.
  if (given.loadBearingRemoved !== false) return true;
  return atLeast(found.pipeFt, NESHAP_PIPE_FT) || atLeast(found.areaSf, NESHAP_AREA_SF);
}

function noticeWords(given: AsbestosInputs, notice: boolean | undefined): Text[] {
  const said: Text[] = [];
  if (notice === undefined)
    said.push(
      text(
        `The federal notice rule leaves out buildings of up to ${NESHAP_EXCLUDED_HOMES} homes, unless several are one project.`,
        `La regla federal de aviso excluye edificios de hasta ${NESHAP_EXCLUDED_HOMES} viviendas, salvo varios en un proyecto.`,
      ),
    );
  if (notice)
    said.push(
      text(
        `Federal written notice is due ${NESHAP_NOTICE_DAYS} working days before the work.`,
        `Se debe dar aviso federal escrito ${NESHAP_NOTICE_DAYS} días hábiles antes del trabajo.`,
      ),
    );
  if (notice && given.loadBearingRemoved !== false)
    said.push(
      text(
        'Taking out anything that carries load counts as demolition there.',
        'Quitar algo que carga cuenta ahí como demolición.',
      ),
    );
  return said;
}

function foundWords({ presumed, mayContain, vermiculite }: Suspects, newer: boolean): Text[] {
  const said: Text[] = vermiculite > 0 ? [VERMICULITE] : [];
  const others = presumed + mayContain > vermiculite;
  if (newer) return others ? [...said, NEWER] : said;
  if (presumed > 0)
    said.push(
      text(
        `Presumed to be asbestos in a building of ${PRESUMED_THROUGH_YEAR} or before: ${decimal(presumed)} of the materials.`,
        `Se presumen asbesto en un edificio de ${PRESUMED_THROUGH_YEAR} o antes: ${decimal(presumed)} de los materiales.`,
      ),
    );
  if (mayContain > 0)
    said.push(
      text(
        `Not presumed, but may contain it: ${decimal(mayContain)} of the materials.`,
        `No se presumen, pero pueden tenerlo: ${decimal(mayContain)} de los materiales.`,
      ),
    );
  return said;
}

function judgeAsbestos(given: AsbestosInputs, disturbed: boolean | undefined): Judgement {
  const { yearBuilt } = given;
  const found = suspectsOf(given.materials);
  const notice = federalNotice(given, found);
  const suspect = found.presumed + found.mayContain > 0;
  const newer = yearBuilt !== undefined && yearBuilt > PRESUMED_THROUGH_YEAR;
  const fill = found.vermiculite > 0;
  const positive = fill || (suspect && !newer);
  const main = suspect ? foundWords(found, newer) : [NOTHING_SUSPECT];
  return {
    verdict: positive ? 'fails' : suspect ? 'not-applicable' : 'meets',
    values: () => ({
      treatAsAsbestos: yesNoOf(positive),
      presumed: countOf(found.presumed),
      mayContain: countOf(found.mayContain),
      pipeFt: feetOf(found.pipeFt),
      areaSf: squareFeetOf(found.areaSf),
      ...(notice !== undefined && { federalNotice: yesNoOf(notice) }),
    }),
    reasons: () => [
      ...(positive && yearBuilt === undefined ? [UNKNOWN_YEAR] : []),
      ...main.map((words) => reasonThat(!positive, words)),
      ...(positive ? [TREAT_AS_ASBESTOS] : []),
      ...noticeWords(given, notice),
    ],
    cautions: () => [...(suspect ? [DO_NOT_DISTURB] : []), ...(fill ? [LEAVE_THE_FILL] : []), LOCAL_RULES],
    sources: [
      ...(fill ? [VERMICULITE_SOURCE] : []),
      PRESUMED_SOURCE,
      NESHAP_SOURCE,
      ...(positive && yearBuilt === undefined ? [UNKNOWN_SOURCE] : []),
    ],
    hangsOn: [fill ? VERMICULITE_SOURCE : PRESUMED_SOURCE],
    referrals: [...(suspect ? (['specialist'] as const) : []), ...(notice ? (['official'] as const) : [])],
    repairs: positive ? ['specialist-visit'] : [],
    facts: { disturbed: given.loadBearingRemoved === true ? true : disturbed },
  };
}

/** Whether materials met in a building are treated as asbestos, and whether the federal notice is due. Feet and square feet. */
export const asbestos = defineCheck({
  ...asbestosCard,
  editions: [
    { id: 'osha-1926.1101', title: text('OSHA 1926.1101 and EPA 40 CFR 61', 'OSHA 1926.1101 y EPA 40 CFR 61') },
  ],
  defaultEdition: 'osha-1926.1101',
  sources: [PRESUMED_SOURCE, VERMICULITE_SOURCE, NESHAP_SOURCE, UNKNOWN_SOURCE],
  inputs,
  evaluate: (given, { situation }) => judgeAsbestos(given, situation.disturbed),
  knownAlready: ({ yearBuilt }) =>
    yearBuilt !== undefined && yearBuilt > PRESUMED_THROUGH_YEAR
      ? undefined
      : { reasons: () => [TREAT_AS_ASBESTOS], referrals: ['specialist'] },
  repairs: ['specialist-visit'],
  client: {
    found: (_inputs, outcome) =>
      outcome.verdict === 'fails'
        ? text(
            'There is old material here that must be treated as asbestos.',
            'Aquí hay material viejo que se debe tratar como asbesto.',
          )
        : text('We looked for material that may hold asbestos.', 'Buscamos material que puede tener asbesto.'),
    why: text(
      'Torn asbestos sheds dust that can make people very sick years later.',
      'El asbesto roto suelta polvo que puede enfermar gravemente años después.',
    ),
    ifNot: text(
      'Work there could spread the dust through the house.',
      'El trabajo ahí podría regar el polvo por la casa.',
    ),
  },
  doesNotCover: [
    text('Samples and lab tests.', 'Muestras y pruebas de laboratorio.'),
    text(
      'State and local rules, often stricter for houses.',
      'Reglas estatales y locales, a menudo más estrictas para casas.',
    ),
    text(
      'The notice limit of 35 cubic feet for material that cannot be measured in place.',
      'El límite de aviso de 35 pies³ para material que no se puede medir en su lugar.',
    ),
  ],
  cases: () => import('./asbestos.cases.ts'),
});
