import {
  atLeast,
  type Complete,
  countOf,
  countText,
  defineCheck,
  formatLength,
  formatRequired,
  inchesOf,
  type JudgeContext,
  type Judgement,
  largestRatio,
  type Quantity,
  ratioOf,
  reasonThat,
  shareOf,
  type Text,
  text,
  wordOf,
} from '../../kernel/index.ts';
import {
  ANCHOR_RULES,
  ANCHOR_SOURCE,
  asksSeismicAnchors,
  PLATE_WASHER_WORDS,
  SEISMIC_ANCHOR_SOURCE,
} from '../../standards/irc-anchors/anchors.data.ts';
import {
  judgePiece,
  type PieceFound,
  type PlateRule,
  type SillPiece,
  spacingsOf,
} from '../../standards/irc-anchors/layout.ts';
import { sillBoltsCard } from './sill-bolts.card.ts';
import { inputs, plateName, sillIssues } from './sill-bolts.inputs.ts';

type SillInputs = Complete<typeof inputs>;
/** A rule that every bolt of the sill must keep. */
type BoltRule = 'diameter' | 'embedment' | 'middle-third' | 'washer' | 'plate-washer';

interface Sill {
  /** In the order of the plates. */
  readonly pieces: readonly PieceFound[];
  readonly spacingLimitIn: number;
  readonly broken: readonly BoltRule[];
  /** Optional answers on which the verdict hangs. */
  readonly unknown: readonly string[];
}

/** Whether the rules for earthquakes apply; undefined while the category, or in C the kind of house, is unknown. */
function isSeismic({ seismicCategory, townhouse }: SillInputs): boolean | undefined {
  if (seismicCategory === undefined) return undefined;
  const asked = asksSeismicAnchors(seismicCategory, true);
  return asked && townhouse === undefined && !asksSeismicAnchors(seismicCategory, false)
    ? undefined
    : asksSeismicAnchors(seismicCategory, townhouse === true);
}

const pieceOf = ({ lengthIn, boltsIn, joinsOffsetPanels }: SillInputs['plates'][number]): SillPiece => ({
  lengthIn,
  boltsIn: boltsIn.map((bolt) => bolt.atIn),
  joinsOffsetPanels,
});

const judgePieces = (given: SillInputs, spacingLimitIn: number): PieceFound[] =>
  given.plates.map((plate) => judgePiece(pieceOf(plate), given.diameterIn, spacingLimitIn));

function brokenByBolts(given: SillInputs, edition: string): BoltRule[] {
  const { diameterIn, embedmentIn, washer, middleThird } = given;
  const broken: BoltRule[] = [];
  if (!atLeast(diameterIn, ANCHOR_RULES.leastDiameterIn)) broken.push('diameter');
  if (embedmentIn !== undefined && !atLeast(embedmentIn, ANCHOR_RULES.leastEmbedmentIn)) broken.push('embedment');
  if (edition !== EDITION_2006 && middleThird === false) broken.push('middle-third');
  if (washer === 'none') broken.push('washer');
  else if (washer !== undefined && washer !== 'plate-3x3' && given.bracedWallLine && isSeismic(given))
    broken.push('plate-washer');
  return broken;
}

const holdsEverywhere = (pieces: readonly PieceFound[]): boolean => pieces.every((piece) => piece.broken.length === 0);

const isTall = ({ storiesAbove }: SillInputs): boolean => storiesAbove > ANCHOR_RULES.tallAboveStories;

function judgeLayout(given: SillInputs, edition: string): Sill {
  const spacingLimitIn = isTall(given) && isSeismic(given) ? ANCHOR_RULES.tallSpacingIn : ANCHOR_RULES.mostSpacingIn;
  return {
    pieces: judgePieces(given, spacingLimitIn),
    spacingLimitIn,
    broken: brokenByBolts(given, edition),
    unknown: notSeen(given),
  };
}

/** Whether the rules for earthquakes would ask for closer bolts or other washers than are there. */
const seismicDecides = (given: SillInputs): boolean =>
  (given.bracedWallLine && given.washer !== 'plate-3x3') ||
  (isTall(given) && !holdsEverywhere(judgePieces(given, ANCHOR_RULES.tallSpacingIn)));

/** What the code asks of every bolt and nobody looked at. */
function notSeen(given: SillInputs): string[] {
  const untold = isSeismic(given) === undefined && seismicDecides(given);
  return [
    ...(given.embedmentIn === undefined ? ['embedmentIn'] : []),
    ...(given.washer === undefined ? ['washer'] : []),
    ...(untold ? [given.seismicCategory === undefined ? 'seismicCategory' : 'townhouse'] : []),
  ];
}

function ratioOfSill(given: SillInputs, { pieces }: Sill): number | null {
  return largestRatio([
    ...pieces.map((piece) => piece.ratio),
    ratioOf(ANCHOR_RULES.leastDiameterIn, given.diameterIn),
    ratioOf(ANCHOR_RULES.leastEmbedmentIn, given.embedmentIn),
  ]);
}

/** The least share of the bolts a piece needs, by the closer spacing while the category leaves it open. */
function shareOfBolts(given: SillInputs, sill: Sill): number {
  const isOpen = isTall(given) && isSeismic(given) === undefined;
  const pieces = isOpen ? judgePieces(given, ANCHOR_RULES.tallSpacingIn) : sill.pieces;
  return Math.min(...pieces.map(({ bolts, needed }) => shareOf(bolts, needed) ?? 1));
}

function judgeSill(given: SillInputs, { edition }: JudgeContext): Judgement {
  const sill = judgeLayout(given, edition);
  const layoutHolds = holdsEverywhere(sill.pieces);
  const holds = layoutHolds && sill.broken.length === 0;
  const toTell = holds && sill.unknown.length > 0;
  const washersOnly = layoutHolds && sill.broken.every((rule) => rule === 'washer' || rule === 'plate-washer');
  return {
    verdict: toTell ? 'undetermined' : holds ? 'meets' : 'fails',
    ratio: toTell ? null : ratioOfSill(given, sill),
    remaining: toTell ? null : shareOfBolts(given, sill),
    values: () => sillValues(given, sill),
    reasons: () => sillReasons(given, sill),
    cautions: () => (holds ? [] : notLookedAt(sill.unknown)),
    ...(toTell && { missing: sill.unknown }),
    sources: isSeismic(given) === false ? [ANCHOR_SOURCE] : [ANCHOR_SOURCE, SEISMIC_ANCHOR_SOURCE],
    repairs: holds ? [] : washersOnly ? ['plate-washer'] : ['anchor-bolt-add', 'plate-washer'],
    facts: { ratio: null, storiesAbove: given.storiesAbove },
  };
}

function sillValues(given: SillInputs, { pieces, spacingLimitIn, broken }: Sill): Record<string, Quantity> {
  const values: Record<string, Quantity> = {
    boltsNeeded: countOf(pieces.reduce((sum, piece) => sum + piece.needed, 0)),
    boltsFound: countOf(pieces.reduce((sum, piece) => sum + piece.bolts, 0)),
    leastEndIn: inchesOf(ANCHOR_RULES.leastFromEndDiameters * given.diameterIn),
    mostEndIn: inchesOf(ANCHOR_RULES.mostFromEndIn),
    spacingLimitIn: inchesOf(spacingLimitIn),
    ...(broken.length > 0 && { fails: wordOf(broken.join(', ')) }),
  };
  pieces.forEach((piece, at) => {
    const plate = given.plates[at];
    if (plate) Object.assign(values, pieceValues(plateName(plate, at), pieceOf(plate), piece));
  });
  return values;
}

function pieceValues(name: string, { lengthIn, boltsIn }: SillPiece, found: PieceFound): Record<string, Quantity> {
  const values: Record<string, Quantity> = {
    [`boltsNeeded.${name}`]: countOf(found.needed),
    [`boltsFound.${name}`]: countOf(found.bolts),
  };
  if (found.bolts > 0) {
    values[`endDistances.${name} left`] = inchesOf(Math.min(...boltsIn));
    values[`endDistances.${name} right`] = inchesOf(lengthIn - Math.max(...boltsIn));
  }
  spacingsOf(boltsIn).forEach((spacingIn, at) => {
    values[`spacings.${name} ${at + 1}`] = inchesOf(spacingIn);
  });
  if (found.broken.length > 0) values[`fails.${name}`] = wordOf(found.broken.join(', '));
  return values;
}

const END_FAR_IN = formatLength(ANCHOR_RULES.mostFromEndIn);

/** What is wrong with a piece, in words. */
function pieceWords(rule: PlateRule, name: string, found: PieceFound, given: SillInputs, spacingLimitIn: number): Text {
  const { bolts, needed } = found;
  const leastEnd = formatRequired(ANCHOR_RULES.leastFromEndDiameters * given.diameterIn);
  const limit = formatLength(spacingLimitIn);
  switch (rule) {
    case 'too-few-bolts':
      return countText(
        needed,
        text(`${name}: ${bolts} of one bolt.`, `${name}: ${bolts} de un perno.`),
        text(`${name}: ${bolts} of ${needed} bolts.`, `${name}: ${bolts} de ${needed} pernos.`),
      );
    case 'end-too-far':
      return text(
        `${name}: no bolt within ${END_FAR_IN} of an end.`,
        `${name}: ningún perno a ${END_FAR_IN} o menos de una punta.`,
      );
    case 'end-too-near':
      return text(
        `${name}: the end bolt is nearer than seven diameters, ${leastEnd}.`,
        `${name}: el perno de la punta está a menos de siete diámetros, ${leastEnd}.`,
      );
    case 'spacing':
      return text(`${name}: bolts over ${limit} apart.`, `${name}: pernos a más de ${limit} entre sí.`);
    case 'center-third':
      return text(
        `${name}: no bolt in the middle third of its length.`,
        `${name}: ningún perno en el tercio medio del largo.`,
      );
  }
}

const BOLT_WORDS: Record<BoltRule, Text> = {
  diameter: text('The bolts are thinner than 1/2 in.', 'Los pernos son de menos de 1/2 in.'),
  embedment: text('The bolts are less than 7 in in the concrete.', 'Los pernos entran menos de 7 in en el concreto.'),
  'middle-third': text(
    'A bolt is outside the middle third of the plate width.',
    'Un perno está fuera del tercio medio del ancho.',
  ),
  washer: text('Washers are missing.', 'Faltan arandelas.'),
  'plate-washer': text(
    `Braced walls here need plate washers ${PLATE_WASHER_WORDS}.`,
    `Las paredes arriostradas aquí piden placas de ${PLATE_WASHER_WORDS}.`,
  ),
};

function sillReasons(given: SillInputs, sill: Sill): Text[] {
  const wrong = [
    ...given.plates.flatMap((plate, at) => {
      const found = sill.pieces[at];
      const name = plateName(plate, at);
      return found ? found.broken.map((rule) => pieceWords(rule, name, found, given, sill.spacingLimitIn)) : [];
    }),
    ...sill.broken.map((rule) => BOLT_WORDS[rule]),
  ];
  if (wrong.length > 0) return wrong.map((words) => reasonThat(false, words));
  const placed = text('Every piece has its bolts in place.', 'Cada pieza tiene sus pernos en su lugar.');
  if (sill.unknown.length > 0) return [placed];
  return [text('Every piece has the bolts the code asks for.', 'Cada pieza tiene los pernos que pide el código.')];
}

const UNSEEN_WORDS: Readonly<Record<string, Text>> = {
  embedmentIn: text('depth in the concrete', 'profundidad en el concreto'),
  washer: text('washers', 'arandelas'),
  seismicCategory: text('seismic category', 'categoría sísmica'),
  townhouse: text('whether it is a townhouse', 'si es casa en hilera'),
};

function notLookedAt(unknown: readonly string[]): Text[] {
  const open = unknown.flatMap((name) => UNSEEN_WORDS[name] ?? []);
  if (open.length === 0) return [];
  const names = (locale: 'en' | 'es') => open.map((words) => words[locale]).join(', ');
  return [text(`Not looked at: ${names('en')}.`, `No se revisó: ${names('es')}.`)];
}

const boltsWords = (found: Quantity['value'], needed: Quantity['value'] | undefined): Text =>
  countText(
    Number(found),
    text(
      `We found one bolt that holds the wall; the rule asks for ${needed}.`,
      `Encontramos un perno que sujeta la pared; la regla pide ${needed}.`,
    ),
    text(
      `We found {count} bolts that hold the wall; the rule asks for ${needed}.`,
      `Encontramos {count} pernos que sujetan la pared; la regla pide ${needed}.`,
    ),
  );

const EDITION_2006 = 'irc-2006';

/** Whether the anchor bolts of a sill are where the code wants them, piece by piece. Inches. */
export const sillBolts = defineCheck({
  ...sillBoltsCard,
  editions: [
    { id: EDITION_2006, title: text('IRC 2006 R403.1.6', 'IRC 2006 R403.1.6') },
    { id: 'irc-2024', title: text('IRC 2024 R403.1.6', 'IRC 2024 R403.1.6') },
  ],
  defaultEdition: 'irc-2024',
  sources: [ANCHOR_SOURCE, SEISMIC_ANCHOR_SOURCE],
  inputs,
  refine: sillIssues,
  evaluate: judgeSill,
  repairs: ['anchor-bolt-add', 'plate-washer'],
  client: {
    found: (_inputs, { values }) =>
      values.boltsFound === undefined
        ? text(
            'The bolts that tie the wall to the foundation need a look.',
            'Hay que revisar los pernos que sujetan la pared al cimiento.',
          )
        : boltsWords(values.boltsFound.value, values.boltsNeeded?.value),
    why: text(
      'In an earthquake the house can slide off its foundation. These bolts hold it.',
      'En un sismo la casa puede salirse del cimiento. Estos pernos la sujetan.',
    ),
    ifNot: text('In an earthquake the wall could slide or lift.', 'En un sismo la pared podría moverse o levantarse.'),
  },
  doesNotCover: [
    text(
      'The concrete, cracks, rust, hold-downs and uplift.',
      'El concreto, grietas, óxido, anclajes y levantamiento.',
    ),
    text('Straps or screw anchors in place of bolts.', 'Placas o anclajes de tornillo en lugar de pernos.'),
  ],
  cases: () => import('./sill-bolts.cases.ts'),
});
