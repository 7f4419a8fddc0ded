import {
  assume,
  atLeast,
  atMost,
  type Complete,
  compareLengths,
  compareNumbers,
  count,
  countOf,
  decimal,
  defineCheck,
  flag,
  group,
  type InputIssue,
  inchesOf,
  type Judgement,
  type KnownAlready,
  largestRatio,
  length,
  type Partials,
  percent,
  ratioOf,
  reasonThat,
  refuse,
  shareQuantity,
  type Text,
  text,
} from '../../kernel/index.ts';
import {
  HANGER_DEPTH_SOURCE,
  HANGER_FIT_SOURCE,
  HANGER_GAP_IN,
  HANGER_HOLES_SOURCE,
  LEAST_HANGER_DEPTH_SHARE,
  SHORT_HANGER_GAP_IN,
} from '../../standards/common-practice/hangers.data.ts';
import { hangerCard } from './hanger.card.ts';

const holes = (label: Text) =>
  group({
    label,
    picture: 'hanger-nails',
    fields: {
      specified: count({
        min: 1,
        max: 200,
        label: text('Holes to be filled', 'Agujeros que se deben llenar'),
        howToMeasure: text('From the maker or the plans; else every round hole.', 'Del fabricante o los planos.'),
      }),
      installed: count({
        max: 200,
        label: text('Nails that are in', 'Clavos puestos'),
        howToMeasure: text('Only nails driven home.', 'Solo clavos bien hundidos.'),
      }),
    },
  });

const inputs = {
  memberWidthIn: length({
    unit: 'in',
    min: 0.25,
    max: 48,
    label: text('Joist or beam width', 'Ancho de la vigueta o viga'),
    picture: 'hanger-width',
  }),
  hangerWidthIn: length({
    unit: 'in',
    min: 0.25,
    max: 48,
    label: text('Hanger width inside', 'Ancho interior del estribo'),
    picture: 'hanger-width',
  }),
  seatGapIn: length({
    unit: 'in',
    min: 0,
    max: 12,
    label: text('Gap under the joist in the hanger', 'Espacio bajo la vigueta en el estribo'),
    picture: 'hanger-seat-gap',
  }),
  endGapIn: length({
    unit: 'in',
    min: 0,
    max: 24,
    label: text('Gap between joist end and header', 'Espacio entre la punta y el cabezal'),
    picture: 'hanger-end-gap',
  }),
  hangerDepthIn: length({
    unit: 'in',
    min: 0.5,
    max: 48,
    needed: 'optional',
    assumes: assume(
      text(
        'The hanger is deep enough to keep the joist upright.',
        'El estribo es tan alto que no deja girar la vigueta.',
      ),
    ),
    label: text('Hanger depth', 'Altura del estribo'),
    howToMeasure: text('From its seat to its top.', 'Del asiento a su borde de arriba.'),
  }),
  joistDepthIn: length({
    unit: 'in',
    min: 0.5,
    max: 48,
    needed: { when: { input: 'hangerDepthIn', known: true } },
    showWhen: { input: 'hangerDepthIn', known: true },
    label: text('Joist or beam depth', 'Altura de la vigueta o viga'),
  }),
  header: holes(text('Nails into the header', 'Clavos en el cabezal')),
  joist: holes(text('Nails into the joist', 'Clavos en la vigueta')),
  rightFastener: flag({
    label: text('The right nails, full diameter and length?', '¿Los clavos correctos, en diámetro y largo?'),
    howToMeasure: text(
      'Screws, roofing nails and short nails in slanted holes are wrong.',
      'Tornillos, clavos de techo y clavos cortos en agujeros inclinados son incorrectos.',
    ),
    picture: 'hanger-fastener',
  }),
  loose: flag({
    needed: 'optional',
    assumes: assume(
      text(
        'It is neither loose, bent nor cut: whoever counted its nails would have said so.',
        'No está flojo, doblado ni cortado: quien contó los clavos lo habría dicho.',
      ),
    ),
    label: text('Loose, bent or cut?', '¿Flojo, doblado o cortado?'),
  }),
} as const;

type HangerInputs = Complete<typeof inputs>;

const LOOSE = text('The hanger is loose: it counts for nothing.', 'El estribo está flojo: no se cuenta.');
const WRONG_FASTENER = text(
  'The fasteners are the wrong kind: they count for nothing.',
  'Los clavos o tornillos no son los correctos: no se cuentan.',
);
const NOT_ATTACHED = text(
  'One side of the hanger is not attached: it counts for nothing.',
  'Un lado del estribo no está sujeto: no se cuenta.',
);
const SCALED = text(
  'Strength in proportion to the nails is a screening assumption; use the published capacity of the hanger.',
  'La resistencia en proporción a los clavos es una suposición; use la capacidad publicada del estribo.',
);

interface Fit {
  readonly gapIn: number;
  readonly words: Text;
}

/** The fits that are past the gap allowed. */
function badFits(given: HangerInputs): Fit[] {
  const gaps: readonly Fit[] = [
    {
      gapIn: Math.abs(given.hangerWidthIn - given.memberWidthIn),
      words: text('between hanger and joist width', 'entre el ancho del estribo y la vigueta'),
    },
    { gapIn: given.seatGapIn, words: text('under the joist', 'bajo la vigueta') },
    { gapIn: given.endGapIn, words: text('at the joist end', 'en la punta de la vigueta') },
  ];
  return gaps.filter((gap) => !atMost(gap.gapIn, HANGER_GAP_IN));
}

function noCredit(given: {
  loose?: boolean | undefined;
  rightFastener?: boolean | undefined;
  header?: { installed?: number | undefined } | undefined;
  joist?: { installed?: number | undefined } | undefined;
}): Text[] {
  const unattached = given.header?.installed === 0 || given.joist?.installed === 0;
  return [
    ...(given.loose === true ? [LOOSE] : []),
    ...(given.rightFastener === false ? [WRONG_FASTENER] : []),
    ...(unattached ? [NOT_ATTACHED] : []),
  ];
}

function judgeHanger(given: HangerInputs): Judgement {
  const headerShare = given.header.installed / given.header.specified;
  const joistShare = given.joist.installed / given.joist.specified;
  const nothing = noCredit(given);
  const fits = badFits(given);
  const remaining = nothing.length > 0 ? 0 : Math.min(headerShare, joistShare);
  const depthShare = depthShareOf(given);
  const shallow = depthShare !== undefined && !atLeast(depthShare, LEAST_HANGER_DEPTH_SHARE);
  const meets = remaining === 1 && fits.length === 0 && !shallow;
  const widthGapIn = given.hangerWidthIn - given.memberWidthIn;
  return {
    verdict: meets ? 'meets' : 'fails',
    ratio:
      nothing.length > 0
        ? null
        : largestRatio([
            ratioOf(1, remaining),
            depthShare === undefined ? null : ratioOf(LEAST_HANGER_DEPTH_SHARE, depthShare),
            ...[Math.abs(widthGapIn), given.seatGapIn, given.endGapIn].map((gapIn) => ratioOf(gapIn, HANGER_GAP_IN)),
          ]),
    remaining,
    values: () => ({
      widthGapIn: inchesOf(widthGapIn),
      seatGapIn: inchesOf(given.seatGapIn),
      endGapIn: inchesOf(given.endGapIn),
      ...(depthShare !== undefined && { depthShare: shareQuantity(depthShare) }),
      headerShare: shareQuantity(headerShare),
      joistShare: shareQuantity(joistShare),
      headerToAdd: countOf(given.header.specified - given.header.installed),
      joistToAdd: countOf(given.joist.specified - given.joist.installed),
    }),
    reasons: () =>
      meets
        ? [ALL_WELL]
        : [...nothing, ...fits.map(fitWords), ...(shallow ? [shallowWords(depthShare)] : []), ...nailWords(given)].map(
            (words) => reasonThat(false, words),
          ),
    cautions: () => (shallow ? [SCALED, OR_BLOCKING] : [SCALED]),
    sources: depthShare === undefined ? SOURCES : [...SOURCES, HANGER_DEPTH_SOURCE],
    repairs: meets ? [] : hangerRepairs(given, fits, widthGapIn, shallow),
    // A gap over its limit says nothing of the load on it.
    facts: {
      memberKind: 'hanger',
      ratio: null,
      prescriptive: nothing.length === 0 && !isWrongWidth(widthGapIn) && fits.every(isShort),
    },
  };
}

const SOURCES = [HANGER_HOLES_SOURCE, HANGER_FIT_SOURCE];

const isWrongWidth = (widthGapIn: number): boolean => !atMost(Math.abs(widthGapIn), HANGER_GAP_IN);
const isShort = (fit: Fit): boolean => atMost(fit.gapIn, SHORT_HANGER_GAP_IN);

/** Share of the joist that the hanger reaches up, when both were measured. */
const depthShareOf = ({ hangerDepthIn, joistDepthIn }: HangerInputs): number | undefined =>
  hangerDepthIn === undefined || joistDepthIn === undefined ? undefined : hangerDepthIn / joistDepthIn;

function shallowWords(depthShare: number): Text {
  const write = (share: number, digits: number) => percent(share, digits - 2);
  const { measured, limit } = compareNumbers(depthShare, LEAST_HANGER_DEPTH_SHARE, 'at-least', write, 2);
  return text(
    `The hanger reaches up ${measured.en} of the joist; under ${limit} the joist can roll.`,
    `El estribo sube ${measured.es} de la vigueta; con menos de ${limit} puede girar.`,
  );
}
const OR_BLOCKING = text(
  'The depth is a rule for decks; inside a house full-depth blocking also keeps a joist upright.',
  'La altura es una regla para terrazas; dentro de la casa también sirve un bloqueo de altura completa.',
);

const ALL_WELL = text(
  'Every hole is filled with the right nail and the joist fits its seat.',
  'Todos los agujeros llevan el clavo correcto y la vigueta asienta bien.',
);

function fitWords(fit: Fit): Text {
  const { measured, limit } = compareLengths(fit.gapIn, HANGER_GAP_IN, 'at-most');
  return text(
    `The gap ${fit.words.en} is ${measured.en}; ${limit} is allowed.`,
    `El espacio ${fit.words.es} es ${measured.es}; se permite ${limit}.`,
  );
}

function nailWords({ header, joist }: HangerInputs): Text[] {
  const say = ({ specified, installed }: { specified: number; installed: number }, en: string, es: string): Text[] => {
    if (installed >= specified) return [];
    const { measured } = compareNumbers(installed / specified, 1, 'at-least', decimal, 2);
    return [
      text(
        `${installed} of ${specified} nails are in the ${en} (${measured.en}).`,
        `Hay ${installed} de ${specified} clavos en ${es} (${measured.es}).`,
      ),
    ];
  };
  return [...say(header, 'header', SIDE_ES.header), ...say(joist, 'joist', SIDE_ES.joist)];
}

function hangerRepairs(given: HangerInputs, fits: readonly Fit[], widthGapIn: number, shallow: boolean): string[] {
  if (isWrongWidth(widthGapIn) || given.loose === true || !atMost(given.endGapIn, HANGER_GAP_IN))
    return ['hanger-replace', 'engineer-letter'];
  const short = given.header.installed < given.header.specified || given.joist.installed < given.joist.specified;
  const refasten = !shallow && (given.rightFastener === false || short);
  return [...(refasten ? ['hanger-refasten'] : []), ...(fits.length > 0 ? ['re-shim'] : []), 'hanger-replace'];
}

/** A hanger known to be loose, wrongly fastened or unattached is unsafe whatever else is still to be measured. */
function alreadyUnsafe(given: Partials<typeof inputs>): KnownAlready | undefined {
  const nothing = noCredit(given);
  if (nothing.length === 0) return undefined;
  return {
    reasons: () => nothing,
    facts: { memberKind: 'hanger', nothingHolds: true },
    repairs: ['hanger-refasten', 'hanger-replace', 'engineer-letter'],
  };
}

const SIDE_ES = { header: 'el cabezal', joist: 'la vigueta' } as const;

function tooManyNails(given: Partials<typeof inputs>): InputIssue[] {
  return (['header', 'joist'] as const).flatMap((side) => {
    const { specified, installed } = given[side] ?? {};
    if (specified === undefined || installed === undefined || installed <= specified) return [];
    return [
      refuse(
        [side, 'installed'],
        text(`${installed} nails of ${specified}`, `${installed} clavos de ${specified}`),
        text(`at most ${specified}`, `hasta ${specified}`),
        text(
          `There can't be more nails in the ${side} than the hanger has holes there: ${installed} of ${specified}.`,
          `No puede haber más clavos en ${SIDE_ES[side]} que agujeros del estribo: ${installed} de ${specified}.`,
        ),
      ),
    ];
  });
}

/** Whether a joist hanger fits and is nailed as specified. Inches and counts. */
export const hanger = defineCheck({
  ...hangerCard,
  editions: [{ id: 'trade-practice', title: text('Trade practice for hangers', 'Práctica de estribos') }],
  defaultEdition: 'trade-practice',
  sources: [...SOURCES, HANGER_DEPTH_SOURCE],
  inputs,
  refine: tooManyNails,
  evaluate: judgeHanger,
  knownAlready: alreadyUnsafe,
  repairs: ['hanger-refasten', 'hanger-replace', 're-shim', 'engineer-letter'],
  client: {
    found: (_inputs, { verdict, remaining }) =>
      verdict === 'meets'
        ? text('We checked a metal hanger that carries a joist.', 'Revisamos un estribo que carga una vigueta.')
        : remaining === null || remaining === 1
          ? text(
              'A metal hanger that carries a joist is not fitted right.',
              'Un estribo que carga una vigueta no está bien puesto.',
            )
          : text(
              `A metal hanger that carries a joist has about ${percent(remaining, 0)} of its nails.`,
              `Un estribo que carga una vigueta tiene cerca del ${percent(remaining, 0)} de sus clavos.`,
            ),
    why: text('The hanger holds up the end of the floor.', 'El estribo sostiene la punta del piso.'),
    ifNot: text('The joist can drop out of it.', 'La vigueta puede caerse.'),
  },
  doesNotCover: [
    text('The published capacity of the hanger and the load on it.', 'La capacidad publicada del estribo y su carga.'),
    text('Rust, and hangers that were bent and used again.', 'Óxido y estribos doblados y vueltos a usar.'),
  ],
  cases: () => import('./hanger.cases.ts'),
});
