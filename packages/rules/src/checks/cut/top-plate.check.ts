import {
  assume,
  atLeast,
  atMost,
  type Complete,
  choice,
  compareNumbers,
  compareShares,
  count,
  countOf,
  decimal,
  defineCheck,
  flag,
  formatLength,
  group,
  type InputIssue,
  inchesOf,
  type Judgement,
  largestRatio,
  length,
  NEWEST_EDITION,
  type Partials,
  percent,
  ratioOf,
  reasonThat,
  refuse,
  refuseLonger,
  shareQuantity,
  type Text,
  text,
  wordOf,
  yesNoOf,
} from '../../kernel/index.ts';
import { NAIL_DIAMETER_IN, NAIL_SOURCE, type NailId } from '../../standards/nds-2018/nails.data.ts';
import { PLATE_TIE_RULES, type PlateTieRule } from '../../standards/plate-tie-by-edition/plate-tie.data.ts';
import { topPlateCard } from './top-plate.card.ts';

const NAILS = Object.keys(NAIL_DIAMETER_IN) as NailId[];
const YEARS = [...new Set(PLATE_TIE_RULES.map((rule) => rule.year))].sort();
const DEFAULT_EDITION = { irc: 'irc-2024', ibc: 'ibc-2024' } as const;

const inputs = {
  widthIn: length({
    unit: 'in',
    min: 0.5,
    max: 24,
    label: text('Plate width', 'Ancho de la solera'),
    howToMeasure: text('The full width before the cut.', 'El ancho completo antes del corte.'),
    picture: 'plate-width',
  }),
  cutIn: length({
    unit: 'in',
    min: 0,
    max: 24,
    label: text('Width cut or bored away', 'Ancho cortado o perforado'),
    howToMeasure: text('Across the plate, at the widest part.', 'A lo ancho de la solera, en lo más ancho.'),
    picture: 'plate-cut',
  }),
  code: choice({
    options: [
      { value: 'irc', label: text('Residential code (IRC)', 'Código residencial (IRC)') },
      { value: 'ibc', label: text('Building code (IBC)', 'Código de edificación (IBC)') },
    ],
    default: 'irc',
    assumes: assume(text('The residential code is taken.', 'Se toma el código residencial.')),
    label: text('Code', 'Código'),
  }),
  edition: choice({
    options: YEARS.map((year) => ({ value: year, label: text(year, year) })),
    needed: 'optional',
    assumes: NEWEST_EDITION,
    label: text('Code year', 'Año del código'),
  }),
  bearingOrBraced: flag({
    needed: { when: { input: 'code', is: ['irc'] } },
    label: text('Outside, bearing or braced wall?', '¿Pared exterior, de carga o arriostrada?'),
  }),
  inShearWall: flag({
    label: text('In a shear wall?', '¿En una pared de corte?'),
    howToMeasure: text(
      'A wall with structural panels and close nailing, or marked so on the plans.',
      'Una pared con paneles estructurales y clavado cerrado, o marcada así en los planos.',
    ),
  }),
  coveredByPanel: flag({
    needed: 'optional',
    showWhen: { input: 'code', is: ['irc'] },
    label: text(
      'Structural panel over the entire side of the wall with the cut?',
      '¿Panel estructural en todo el lado de la pared donde está el corte?',
    ),
    howToMeasure: text(
      'Plywood or OSB from end to end and bottom to top; a band over the plate is not enough.',
      'Contrachapado u OSB de punta a punta y de abajo arriba; una franja sobre la solera no basta.',
    ),
  }),
  tie: group({
    needed: 'optional',
    label: text('Metal tie over the cut, if there is one', 'Placa metálica sobre el corte, si la hay'),
    picture: 'plate-tie',
    fields: {
      thicknessIn: length({
        unit: 'in',
        min: 0.01,
        max: 0.5,
        label: text('Tie thickness', 'Grosor de la placa'),
        howToMeasure: text('16 gauge is about 0.054 to 0.060 in.', 'Calibre 16 es de 0.054 a 0.060 in.'),
      }),
      widthIn: length({ unit: 'in', min: 0.25, max: 12, label: text('Tie width', 'Ancho de la placa') }),
      pastOpeningIn: length({
        unit: 'in',
        min: 0,
        max: 60,
        label: text('Shorter reach past the cut', 'Alcance más corto después del corte'),
      }),
      nailsEachSide: count({
        max: 60,
        label: text('Nails on the side with fewer', 'Clavos en el lado con menos'),
      }),
      nail: choice({
        options: NAILS.map((nail) => ({ value: nail, label: text(nail, nail) })),
        label: text('Nail in the tie', 'Clavo de la placa'),
      }),
    },
  }),
} as const;

type PlateInputs = Complete<typeof inputs>;
type Tie = NonNullable<PlateInputs['tie']>;

/** A request may name the edition (`irc-2018`, or only the year), else the inputs do, else the newest of its code. */
function chooseEdition(asked: string | undefined, given: Partials<typeof inputs>): string {
  const code = given.code ?? 'irc';
  const wanted = asked ?? given.edition ?? DEFAULT_EDITION[code];
  return wanted.includes('-') ? wanted : `${code}-${wanted}`;
}

function impossible({ widthIn, cutIn, code = 'irc', edition }: Partials<typeof inputs>): InputIssue[] {
  const isPrinted = (year: string) => PLATE_TIE_RULES.some((rule) => rule.code === code && rule.year === year);
  return [
    ...refuseLonger(['cutIn'], {
      what: inputs.cutIn.label,
      came: cutIn,
      most: widthIn,
      ofWhat: text('the width of the plate', 'el ancho de la solera'),
    }),
    ...(edition === undefined || isPrinted(edition) ? [] : [notPrinted(code, edition)]),
  ];
}

function notPrinted(code: string, edition: string): InputIssue {
  const printed = PLATE_TIE_RULES.flatMap((rule) => (rule.code === code ? rule.year : [])).join(', ');
  const name = code.toUpperCase();
  return refuse(
    ['edition'],
    edition,
    text(`for ${code} one of ${printed}`, `para ${code} ${printed}`),
    text(`The ${name} is known here for ${printed}.`, `El ${name} se conoce aquí para ${printed}.`),
  );
}

interface TiePart {
  readonly ratio: number | null;
  readonly ok: boolean;
  readonly short: () => Text;
}

/** Each requirement of the tie with the part found, worst told in words. */
function tieParts(tie: Tie, rule: PlateTieRule): TiePart[] {
  const part = (found: number, required: number, en: string, es: string): TiePart => ({
    ratio: found > 0 ? ratioOf(required, found) : null,
    ok: atLeast(found, required),
    short: () => {
      const { measured, limit } = compareNumbers(found, required, 'at-least', decimal, 3);
      return text(
        `The tie's ${en} is ${measured.en}, the rule asks for ${limit}.`,
        `${es} de la placa: ${measured.es}; la regla pide ${limit}.`,
      );
    },
  });
  const parts = [
    part(tie.thicknessIn, rule.thicknessIn, 'thickness (in)', 'Grosor (in)'),
    part(tie.widthIn, rule.widthIn, 'width (in)', 'Ancho (in)'),
    part(tie.nailsEachSide, rule.nailsEachSide, 'count of nails each side', 'Clavos en cada lado'),
    part(NAIL_DIAMETER_IN[tie.nail], NAIL_DIAMETER_IN[rule.nail], 'nail diameter (in)', 'Diámetro del clavo (in)'),
  ];
  return rule.pastOpeningIn > 0
    ? [
        ...parts,
        part(tie.pastOpeningIn, rule.pastOpeningIn, 'reach past the cut (in)', 'Alcance después del corte (in)'),
      ]
    : parts;
}

const IN_SHEAR_WALL = text(
  'The plate is cut in a shear wall, where it also carries the pull along the wall: an engineer decides.',
  'La solera está cortada en una pared de corte, donde también lleva el tirón de la pared: decide un ingeniero.',
);
const PANEL_EXCEPTION = text(
  'The IRC asks for no tie where structural panel covers the entire side of the wall with the cut: look. A band of sheathing over the plate is not enough.',
  'El IRC no pide placa donde un panel estructural cubre todo el lado de la pared donde está el corte: revise. Una franja sobre la solera no basta.',
);
const COVERED = text(
  'Structural panel covers the entire side of the wall with the cut: the IRC asks for no tie there.',
  'Un panel estructural cubre todo el lado de la pared donde está el corte: ahí el IRC no pide placa.',
);
const NO_TIE = text('There is no tie over the cut.', 'No hay placa sobre el corte.');
const NOT_BEARING = text(
  'The wall is neither outside, bearing nor braced: the tie rule does not apply.',
  'La pared no es exterior, ni de carga, ni arriostrada: la regla no corresponde.',
);

function shareWords(share: number, rule: PlateTieRule): Text {
  const cutShare = compareShares(share, rule.cutShareLimit, 'at-most');
  return rule.cutShareLimit > 0
    ? text(
        `${cutShare.measured.en} of the plate width is cut; more than ${cutShare.limit} needs a metal tie.`,
        `Está cortado: ${cutShare.measured.es} del ancho; más de ${cutShare.limit} necesita una placa metálica.`,
      )
    : text(
        `${percent(share)} of the plate width is cut; any cut needs a metal tie.`,
        `Está cortado el ${percent(share)} del ancho; todo corte necesita una placa metálica.`,
      );
}

function requiredTie(rule: PlateTieRule) {
  return {
    requiredTieThicknessIn: inchesOf(rule.thicknessIn),
    requiredTieWidthIn: inchesOf(rule.widthIn),
    requiredPastOpeningIn: inchesOf(rule.pastOpeningIn),
    requiredNailsEachSide: countOf(rule.nailsEachSide),
    requiredNail: wordOf(rule.nail),
    requiredNailDiameterIn: inchesOf(NAIL_DIAMETER_IN[rule.nail]),
  };
}

/** The tie beside what is asked of it, else the cut beside its limit; none where an exception takes the limit away. */
function ratioOfPlate(share: number, parts: readonly TiePart[], rule: PlateTieRule, covered: boolean): number | null {
  if (parts.length > 0) return largestRatio(parts.map((part) => part.ratio));
  return covered ? null : ratioOf(share, rule.cutShareLimit);
}

function judgeTopPlate(given: PlateInputs, rule: PlateTieRule): Judgement {
  const share = given.cutIn / given.widthIn;
  const deep = !atMost(share, rule.cutShareLimit);
  const covered = deep && given.coveredByPanel ? rule.panelException : undefined;
  const sources = [rule.source, ...(covered ? [covered] : []), NAIL_SOURCE];
  if (rule.code === 'irc' && given.bearingOrBraced === false && !given.inShearWall)
    return {
      verdict: 'not-applicable',
      reasons: () => [NOT_BEARING],
      values: () => ({ cutShare: shareQuantity(share) }),
      sources,
    };
  const tieRequired = deep && !covered;
  const parts = tieRequired && given.tie ? tieParts(given.tie, rule) : [];
  const shortParts = parts.filter((part) => !part.ok);
  const fails = tieRequired && (!given.tie || shortParts.length > 0);
  const shearWallCut = given.inShearWall && given.cutIn > 0;
  return {
    verdict: fails ? 'fails' : shearWallCut ? 'undetermined' : 'meets',
    ratio: ratioOfPlate(share, parts, rule, covered !== undefined),
    remaining: shearWallCut ? 1 - share : fails ? null : 1,
    values: () => ({
      cutShare: shareQuantity(share),
      tieRequired: yesNoOf(tieRequired),
      ...(tieRequired && requiredTie(rule)),
    }),
    reasons: () => [
      ...(covered ? [COVERED] : []),
      shareWords(share, rule),
      ...(tieRequired && !given.tie ? [reasonThat(false, NO_TIE)] : []),
      ...shortParts.map((part) => reasonThat(false, part.short())),
      ...(shearWallCut ? [IN_SHEAR_WALL] : []),
    ],
    cautions: () => (fails && rule.panelException && given.coveredByPanel === undefined ? [PANEL_EXCEPTION] : []),
    referrals: shearWallCut ? ['engineer'] : fails && rule.source.basis === 'memory' ? ['official'] : [],
    repairs: fails
      ? ['plate-tie', ...(shearWallCut ? ['engineer-letter'] : [])]
      : shearWallCut
        ? ['engineer-letter']
        : [],
    facts: { ratio: null, ...(shearWallCut ? { engineerAlways: IN_SHEAR_WALL } : {}) },
    sources,
  };
}

/** Whether a cut or bored top plate needs a metal tie, and whether the tie there is enough. Inches. */
export const topPlate = defineCheck({
  ...topPlateCard,
  editions: PLATE_TIE_RULES.map((rule) => {
    const title = `${rule.source.title} ${rule.year}, ${rule.source.section}`;
    return { id: rule.id, title: text(title, title) };
  }),
  defaultEdition: DEFAULT_EDITION.irc,
  chooseEdition,
  sources: [
    ...PLATE_TIE_RULES.flatMap((rule) => rule.panelException ?? []),
    ...PLATE_TIE_RULES.map((rule) => rule.source),
    NAIL_SOURCE,
  ],
  inputs,
  refine: impossible,
  evaluate: (given, { edition }) => {
    const rule = PLATE_TIE_RULES.find((row) => row.id === edition);
    if (!rule) throw new RangeError(`No plate tie rule ${edition}`);
    return judgeTopPlate(given, rule);
  },
  repairs: ['plate-tie', 'engineer-letter'],
  client: {
    found: ({ cutIn, widthIn }) =>
      cutIn !== undefined && cutIn > 0 && widthIn !== undefined
        ? text(
            `${formatLength(cutIn)} of a ${formatLength(widthIn)} wide board on top of a wall was cut away.`,
            `Se cortaron ${formatLength(cutIn)} de una tabla de ${formatLength(widthIn)} encima de una pared.`,
          )
        : text(
            'We looked for cuts in the board on top of a wall.',
            'Buscamos cortes en la tabla de encima de una pared.',
          ),
    why: text(
      'This board ties the top of the wall together. A deep cut breaks that tie.',
      'Esta tabla une la parte alta de la pared. Un corte profundo rompe esa unión.',
    ),
    ifNot: text(
      'The wall can spread at the cut, and the inspector may not pass it.',
      'La pared puede abrirse en el corte y el inspector puede no aprobarla.',
    ),
  },
  doesNotCover: [
    text('Joists or rafters bearing on the cut.', 'Viguetas o cabios apoyados en el corte.'),
    text('Bottom plates and studs.', 'Soleras inferiores y pies derechos.'),
  ],
  cases: () => import('./top-plate.cases.ts'),
});
