import {
  assume,
  atMost,
  type Complete,
  type Condition,
  compareNumbers,
  count,
  decimal,
  defineCheck,
  flag,
  type Judgement,
  largestRatio,
  list,
  named,
  number,
  ratioOf,
  reasonThat,
  squareFeetOf,
  type Text,
  text,
  yesNoOf,
} from '../../kernel/index.ts';
import { LEAD_BEFORE_YEAR, LEAD_EXTERIOR_SF, LEAD_ROOM_SF, LEAD_SOURCE } from '../../standards/40-cfr-745/lead.data.ts';
import { leadCard } from './lead.card.ts';

/** Old, or of unknown age, which is treated as old. */
const treatedAsOld: Condition = {
  any: [
    { input: 'yearBuilt', known: false },
    { input: 'yearBuilt', below: LEAD_BEFORE_YEAR },
  ],
};
const neverExempt: Condition = {
  any: [
    { input: 'demolition', is: [true] },
    { input: 'windowReplaced', is: [true] },
  ],
};
const areaCounts: Condition = { all: [treatedAsOld, { not: neverExempt }] };
const oldUnless = (input: string): Condition => ({ all: [treatedAsOld, { not: { input, is: [true] } }] });

const inputs = {
  yearBuilt: count({
    min: 1600,
    max: 2200,
    needed: 'optional',
    label: text('Year built, if known', 'Año de construcción, si se sabe'),
    howToMeasure: text('Unknown is treated as old.', 'Si no se sabe, se trata como antigua.'),
  }),
  interiorSf: list({
    orNumber: 'areaSf',
    item: {
      name: named({ needed: 'optional', label: text('Room', 'Cuarto') }),
      areaSf: number({
        unit: 'sf',
        min: 0,
        max: 100_000,
        label: text('Painted surface disturbed in the room', 'Superficie pintada alterada en el cuarto'),
        howToMeasure: text('The whole piece removed counts.', 'Cuenta la pieza completa que se quita.'),
      }),
    },
    maxItems: 100,
    needed: { when: areaCounts },
    label: text('Painted surface disturbed inside, room by room', 'Superficie pintada alterada adentro, por cuarto'),
  }),
  exteriorSf: number({
    unit: 'sf',
    min: 0,
    max: 100_000,
    needed: { when: areaCounts },
    label: text('Painted surface disturbed outside, in all', 'Superficie pintada alterada afuera, en total'),
    howToMeasure: text('Add up every side of the house.', 'Sume todos los lados de la casa.'),
  }),
  demolition: flag({
    needed: { when: oldUnless('windowReplaced') },
    showWhen: treatedAsOld,
    assumes: assume(
      text(
        'Nothing painted is torn out; if it is, stop and make safe first.',
        'No se arranca nada pintado; si se arranca, pare y asegure primero.',
      ),
    ),
    label: text('Painted surfaces torn out?', '¿Se arrancan superficies pintadas?'),
    howToMeasure: text(
      'Hammering a hole counts; a careful cut may not.',
      'Romper con martillo cuenta; un corte cuidadoso quizá no.',
    ),
  }),
  windowReplaced: flag({
    needed: { when: oldUnless('demolition') },
    label: text('A window replaced?', '¿Se cambia una ventana?'),
  }),
} as const;

type LeadInputs = Complete<typeof inputs>;

const NEWER = text(
  `Built in ${LEAD_BEFORE_YEAR} or later: the rule does not apply.`,
  `Construida en ${LEAD_BEFORE_YEAR} o después: la regla no corresponde.`,
);
const TREAT_AS_LEAD = text(
  'Treat the paint as lead: a certified firm with a certified renovator does this work.',
  'Trate la pintura como plomo: este trabajo lo hace una empresa certificada con un renovador certificado.',
);
const DO_NOT_DISTURB = text(
  'Do not sand, scrape, burn or break it before they come.',
  'No lije, raspe, queme ni rompa antes de que lleguen.',
);
const COUNTS_TOGETHER = text(
  'The same room within 30 days is one job; open flame, power sanding without a vacuum and hot guns are never exempt.',
  'El mismo cuarto en 30 días es un solo trabajo; la llama, la lijadora sin aspiradora y la pistola de calor nunca están exentas.',
);
const SMALL_JOB = text(
  'The surface is within the minor repair limits and nothing painted is torn out.',
  'La superficie está dentro del límite de reparación menor y no se arranca nada pintado.',
);
const UNKNOWN_YEAR = text(
  'The year built is unknown, so the house is treated as old.',
  'No se sabe el año de construcción, así que la casa se trata como antigua.',
);

function triggers(given: LeadInputs, largestRoomSf: number, exteriorSf: number): Text[] {
  const found: Text[] = [];
  const room = compareNumbers(largestRoomSf, LEAD_ROOM_SF, 'at-most', decimal, 2);
  const outside = compareNumbers(exteriorSf, LEAD_EXTERIOR_SF, 'at-most', decimal, 2);
  if (given.demolition)
    found.push(
      text('Painted surfaces are torn out: never a minor repair.', 'Se arranca lo pintado: nunca es reparación menor.'),
    );
  if (given.windowReplaced)
    found.push(
      text('A window is replaced: never a minor repair.', 'Se cambia una ventana: nunca es reparación menor.'),
    );
  if (!atMost(largestRoomSf, LEAD_ROOM_SF))
    found.push(
      text(
        `${room.measured.en} SF in one room; up to ${room.limit} SF is a minor repair.`,
        `${room.measured.es} pies² en un cuarto; hasta ${room.limit} es reparación menor.`,
      ),
    );
  if (!atMost(exteriorSf, LEAD_EXTERIOR_SF))
    found.push(
      text(
        `${outside.measured.en} SF outside in all; up to ${outside.limit} SF is a minor repair.`,
        `${outside.measured.es} pies² afuera en total; hasta ${outside.limit} es reparación menor.`,
      ),
    );
  return found;
}

function judgeLead(given: LeadInputs, disturbed: boolean | undefined): Judgement {
  if (given.yearBuilt !== undefined && given.yearBuilt >= LEAD_BEFORE_YEAR)
    return { verdict: 'not-applicable', reasons: () => [NEWER], values: () => ({ treatAsOld: yesNoOf(false) }) };
  const largestRoomSf = Math.max(0, ...(given.interiorSf ?? []).map((room) => room.areaSf));
  const exteriorSf = given.exteriorSf ?? 0;
  const found = triggers(given, largestRoomSf, exteriorSf);
  const positive = found.length > 0;
  const areaRatio = largestRatio([ratioOf(largestRoomSf, LEAD_ROOM_SF), ratioOf(exteriorSf, LEAD_EXTERIOR_SF)]);
  return {
    verdict: positive ? 'fails' : 'meets',
    ratio: areaRatio,
    remaining: null,
    values: () => ({
      treatAsOld: yesNoOf(true),
      largestRoomSf: squareFeetOf(largestRoomSf),
      exteriorSf: squareFeetOf(exteriorSf),
    }),
    reasons: () => [
      ...(given.yearBuilt === undefined ? [UNKNOWN_YEAR] : []),
      ...(positive ? [...found, TREAT_AS_LEAD].map((words) => reasonThat(false, words)) : [SMALL_JOB]),
    ],
    cautions: () => (positive ? [DO_NOT_DISTURB, COUNTS_TOGETHER] : [COUNTS_TOGETHER]),
    referrals: positive ? ['specialist'] : [],
    repairs: positive ? ['lead-safe-work'] : [],
    facts: { disturbed: given.demolition === true ? true : disturbed },
  };
}

/** Whether work on painted surfaces falls under the lead rule for old housing. Square feet. */
export const lead = defineCheck({
  ...leadCard,
  editions: [{ id: '40-cfr-745', title: text('EPA rule, 40 CFR 745.83', 'Regla de la EPA, 40 CFR 745.83') }],
  defaultEdition: '40-cfr-745',
  sources: [LEAD_SOURCE],
  inputs,
  evaluate: (given, { situation }) => judgeLead(given, situation.disturbed),
  knownAlready: ({ yearBuilt }) =>
    yearBuilt !== undefined && yearBuilt >= LEAD_BEFORE_YEAR
      ? undefined
      : { reasons: () => [TREAT_AS_LEAD], referrals: ['specialist'] },
  repairs: ['lead-safe-work'],
  client: {
    found: (_inputs, outcome) =>
      outcome.verdict === 'fails'
        ? text(
            'The work touches old paint that must be treated as lead paint.',
            'El trabajo toca pintura vieja que se debe tratar como pintura con plomo.',
          )
        : text('We asked whether the work touches old paint.', 'Vimos si el trabajo toca pintura vieja.'),
    why: text(
      'Dust from lead paint harms children and anyone who breathes it.',
      'El polvo de la pintura con plomo daña a los niños y a quien lo respire.',
    ),
    ifNot: text('The dust can spread through the house.', 'El polvo puede regarse por la casa.'),
  },
  doesNotCover: [
    text('Testing of the paint, and state or local lead rules.', 'Pruebas de la pintura y reglas estatales o locales.'),
    text('Asbestos and other hazards.', 'Asbesto y otros peligros.'),
  ],
  cases: () => import('./lead.cases.ts'),
});
