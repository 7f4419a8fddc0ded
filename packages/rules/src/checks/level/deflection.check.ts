import {
  assume,
  atMost,
  type Complete,
  choice,
  compareLengths,
  compareNumbers,
  decimal,
  defineCheck,
  factorOf,
  feetToInches,
  flag,
  formatLength,
  inchesOf,
  type Judgement,
  length,
  ratioOf,
  reasonThat,
  type Source,
  type Text,
  text,
} from '../../kernel/index.ts';
import {
  type DeflectionLimits,
  IBC_DEFLECTION,
  IBC_DEFLECTION_SOURCE,
} from '../../standards/ibc-table-1604.3/deflection.data.ts';
import { IRC_DEFLECTION, IRC_DEFLECTION_SOURCE } from '../../standards/irc-r301.7/deflection.data.ts';
import { deflectionCard } from './deflection.card.ts';

const inputs = {
  sagIn: length({
    unit: 'in',
    min: 0,
    max: 240,
    denominator: 32,
    label: text('Sag', 'Flecha'),
    howToMeasure: text(
      'From a string between the supports down to the member, at the deepest; at the tip of a cantilever.',
      'De un hilo entre los apoyos hasta el elemento, en lo más bajo; en la punta de un voladizo.',
    ),
  }),
  spanFt: length({
    unit: 'ft',
    min: 0.5,
    max: 200,
    label: text('Span', 'Claro'),
    howToMeasure: text(
      'From support to support; a cantilever from its support to the tip; a wall its height.',
      'De apoyo a apoyo; un voladizo, del apoyo a la punta; una pared, su altura.',
    ),
  }),
  member: choice({
    options: [
      { value: 'floor', label: text('Floor', 'Piso') },
      { value: 'roof-plaster-ceiling', label: text('Roof over plaster ceiling', 'Techo con cielo de yeso') },
      { value: 'roof-other-ceiling', label: text('Roof over another ceiling', 'Techo con otro cielo') },
      { value: 'roof-no-ceiling', label: text('Roof with no ceiling', 'Techo sin cielo') },
      {
        value: 'rafter-steep-no-ceiling',
        label: text('Rafter over 3:12, no ceiling', 'Cabio de más de 3:12, sin cielo'),
      },
      { value: 'ceiling-plaster', label: text('Ceiling of plaster', 'Cielo de yeso') },
      { value: 'ceiling-gypsum', label: text('Ceiling of gypsum board', 'Cielo de tablero de yeso') },
      { value: 'wall-interior', label: text('Wall inside', 'Pared interior') },
      { value: 'wall-plaster', label: text('Outside wall, plaster or stucco', 'Pared exterior, estuco') },
      { value: 'wall-brittle', label: text('Outside wall, brittle finish', 'Pared exterior, acabado frágil') },
      { value: 'wall-flexible', label: text('Outside wall, flexible finish', 'Pared exterior, acabado flexible') },
      { value: 'lintel-veneer', label: text('Lintel under masonry veneer', 'Dintel bajo mampostería') },
      { value: 'other', label: text('Another member', 'Otro elemento') },
    ],
    label: text('What sags', 'Qué tiene flecha'),
  }),
  cantilever: flag({ default: false, label: text('Cantilever?', '¿Voladizo?') }),
  load: choice({
    options: [
      { value: 'total', label: text('All of it, as found', 'Toda, como se encontró') },
      {
        value: 'live',
        label: text('Only what people, snow or wind add', 'Solo lo que añaden personas, nieve o viento'),
      },
    ],
    default: 'total',
    assumes: assume(
      text('The sag is that of all the load, as found.', 'La flecha es la de toda la carga, como se encontró.'),
    ),
    label: text('Sag measured', 'Flecha medida'),
  }),
} as const;

type SagInputs = Complete<typeof inputs>;

interface SagEdition {
  readonly id: string;
  readonly title: Text;
  readonly limits: Readonly<Record<string, DeflectionLimits>>;
  readonly source: Source;
}
const DEFAULT_EDITION = 'ibc-table-1604.3';
const EDITIONS: readonly SagEdition[] = [
  {
    id: DEFAULT_EDITION,
    title: text('IBC Table 1604.3', 'IBC Tabla 1604.3'),
    limits: IBC_DEFLECTION,
    source: IBC_DEFLECTION_SOURCE,
  },
  { id: 'irc-r301.7', title: text('IRC R301.7', 'IRC R301.7'), limits: IRC_DEFLECTION, source: IRC_DEFLECTION_SOURCE },
];

const COMPUTED = text(
  'The code limits the deflection computed under load. Old sag also holds creep, settling and crooked lumber.',
  'El código limita la flecha calculada bajo carga. La flecha vieja también trae fluencia, asentamiento y madera torcida.',
);
const CODES_DIFFER = text(
  'For floors the codes limit the live load alone to span/360; the building code allows span/240 with the dead load, as found here.',
  'En pisos los códigos limitan la carga viva a claro/360; el de edificación permite claro/240 con la carga muerta, como aquí.',
);
const NO_LIMIT = text(
  'This document sets no limit for that member.',
  'Este documento no fija límite para ese elemento.',
);
const LOOK_FOR = text(
  'Look for cuts, cracks, decay and added weight before calling it only old.',
  'Busque cortes, grietas, pudrición y peso añadido antes de decir que solo es vieja.',
);

function judgeSag(given: SagInputs, edition: SagEdition): Judgement {
  const { sagIn, spanFt, member, cantilever, load } = given;
  // A cantilever is held to twice its length.
  const spanIn = feetToInches(spanFt) * (cantilever ? 2 : 1);
  const over = edition.limits[member]?.[load];
  const measured = () => ({
    effectiveSpanIn: inchesOf(spanIn),
    ...(!atMost(sagIn, 0) && { spanOverSag: factorOf(spanIn / sagIn) }),
  });
  const sources = [edition.source];
  if (over === undefined)
    return { verdict: 'not-applicable', values: measured, reasons: () => [sagWords(sagIn, spanIn), NO_LIMIT], sources };
  const allowedIn = spanIn / over;
  const meets = atMost(sagIn, allowedIn);
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio: ratioOf(sagIn, allowedIn),
    values: () => ({ ...measured(), spanOverLimit: factorOf(over), allowedIn: inchesOf(allowedIn) }),
    reasons: () => [reasonThat(meets, limitWords(sagIn, spanIn, over))],
    cautions: () => [
      COMPUTED,
      ...(member === 'floor' && load === 'total' ? [CODES_DIFFER] : []),
      ...(meets ? [] : [LOOK_FOR]),
    ],
    referrals: meets ? [] : ['engineer'],
    repairs: meets ? [] : ['member-sister', 'engineer-letter'],
    sources,
    facts: { ratio: null },
  };
}

function sagWords(sagIn: number, spanIn: number): Text {
  const [sag, span] = [formatLength(sagIn, { denominator: 32 }), formatLength(spanIn)];
  const over = !atMost(sagIn, 0) ? ` (1/${decimal(spanIn / sagIn, 0)})` : '';
  return text(`It sags ${sag} in ${span}${over}.`, `Tiene flecha de ${sag} en ${span}${over}.`);
}

function limitWords(sagIn: number, spanIn: number, over: number): Text {
  const { measured, limit } = compareLengths(sagIn, spanIn / over, 'at-most', 32);
  const span = formatLength(spanIn);
  const { en, es } = atMost(sagIn, 0) ? text('', '') : oneIn(spanIn / sagIn, over);
  return text(
    `It sags ${measured.en} in ${span}${en}; the limit is span/${over}, ${limit}.`,
    `Tiene flecha de ${measured.es} en ${span}${es}; el límite es claro/${over}, ${limit}.`,
  );
}

/** The sag as a part of the span, beside the part that is allowed: ` (1/239.8)`. */
function oneIn(spanOverSag: number, over: number): Text {
  const { measured } = compareNumbers(spanOverSag, over, 'at-least');
  const seen = measured.en.match(/^[\d.]+$/) ? measured.en : undefined;
  return seen === undefined ? text('', '') : text(` (1/${seen})`, ` (1/${seen})`);
}

/** How far a member sags against the code's deflection limit for its kind. Inches, feet. */
export const deflection = defineCheck({
  ...deflectionCard,
  editions: EDITIONS.map(({ id, title }) => ({ id, title })),
  defaultEdition: DEFAULT_EDITION,
  chooseEdition: (asked, { member, load = 'total' }) =>
    asked ?? EDITIONS.find(({ limits }) => member && limits[member]?.[load])?.id ?? DEFAULT_EDITION,
  sources: [IBC_DEFLECTION_SOURCE, IRC_DEFLECTION_SOURCE],
  inputs,
  evaluate: (given, { edition }) => {
    const found = EDITIONS.find((one) => one.id === edition);
    if (!found) throw new RangeError(`No deflection limits ${edition}`);
    return judgeSag(given, found);
  },
  repairs: ['member-sister', 'engineer-letter'],
  client: {
    found: ({ sagIn }) =>
      sagIn === undefined
        ? text('A beam or joist in the house sags.', 'Una viga o vigueta de la casa está combada.')
        : text(
            `A beam or joist in the house sags ${formatLength(sagIn)}.`,
            `Una viga o vigueta de la casa está combada ${formatLength(sagIn)}.`,
          ),
    why: text(
      'A beam that sags too far may be cut, cracked or carry too much.',
      'Una viga muy combada puede estar cortada, rajada o cargar demasiado.',
    ),
    ifNot: text('Floors bounce, and new walls and tile can crack.', 'El piso rebota y lo nuevo puede agrietarse.'),
  },
  doesNotCover: [
    text('How strong the member is.', 'La resistencia del elemento.'),
    text('Bounce and vibration.', 'Rebote y vibración.'),
  ],
  cases: () => import('./deflection.cases.ts'),
});
