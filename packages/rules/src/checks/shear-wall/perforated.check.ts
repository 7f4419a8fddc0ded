import {
  atMost,
  type Complete,
  compareLoad,
  decimal,
  defineCheck,
  factorOf,
  feetOf,
  type InputIssue,
  type Judgement,
  type Partials,
  plfOf,
  poundsOf,
  type Reason,
  ratioOf,
  reasonThat,
  refuse,
  refuseLonger,
  sayCounted,
  shareMet,
  squareFeetOf,
  type Text,
  text,
  type Verdict,
} from '../../kernel/index.ts';
import { ASPECT_LIMIT } from '../../standards/sdpws-common/edition.ts';
import {
  countedLengthFt,
  countedOpeningSf,
  PERFORATED_DESIGN_LIMIT_PLF,
  PERFORATED_HEIGHT_LIMIT_FT,
  PERFORATED_SOURCE,
  perforatedFactor,
} from '../../standards/sdpws-common/perforated.ts';
import { perforatedCard } from './perforated.card.ts';
import { inputs } from './perforated.inputs.ts';

type WallInputs = Complete<typeof inputs>;

/** The wall as the method counts it. Feet, square feet, pounds. */
interface Perforated {
  readonly effectiveFt: number;
  readonly openingsSf: number;
  readonly factor: number;
  readonly capacityLb: number;
  readonly bar: Text | undefined;
  /** Whether a part that counts stands at each end. */
  readonly ends: boolean | undefined;
}

const TOO_HIGH = text(
  `The method stops at walls ${PERFORATED_HEIGHT_LIMIT_FT} ft high.`,
  `El método llega a paredes de ${PERFORATED_HEIGHT_LIMIT_FT} ft de alto.`,
);
const NO_ENDS = text(
  `The method needs a full-height part at each end, none over ${ASPECT_LIMIT} times as high as long.`,
  `El método pide una parte completa en cada extremo, ninguna más de ${ASPECT_LIMIT} veces más alta que larga.`,
);

/**
 * Whether a part that counts stands at each end: as answered, or because full-height parts, which openings separate,
 * outnumber the openings.
 */
function endsOf({ segmentsFt, openings, fullHeightEnds }: WallInputs, counting: number): boolean | undefined {
  if (counting < (openings.length > 0 ? 2 : 1)) return false;
  if (fullHeightEnds !== undefined) return fullHeightEnds;
  return counting === segmentsFt.length && counting > openings.length ? true : undefined;
}

function measure(given: WallInputs): Perforated {
  const { lengthFt, heightFt, designPlf } = given;
  let effectiveFt = 0;
  let counting = 0;
  for (const segment of given.segmentsFt) {
    const countedFt = countedLengthFt(segment.lengthFt, heightFt);
    effectiveFt += countedFt;
    if (countedFt > 0) counting++;
  }
  let openingsSf = 0;
  for (const opening of given.openings) openingsSf += countedOpeningSf(opening.widthFt, opening.heightFt, heightFt);
  const factor = perforatedFactor(lengthFt, heightFt, effectiveFt, openingsSf);
  const ends = endsOf(given, counting);
  const bar = !atMost(heightFt, PERFORATED_HEIGHT_LIMIT_FT) ? TOO_HIGH : ends === false ? NO_ENDS : undefined;
  const panelsPlf = Math.min(designPlf, PERFORATED_DESIGN_LIMIT_PLF.most);
  return { effectiveFt, openingsSf, factor, capacityLb: bar ? 0 : panelsPlf * factor * effectiveFt, bar, ends };
}

interface Decision {
  readonly verdict: Verdict;
  readonly missing: readonly string[];
}
const FAILS: Decision = { verdict: 'fails', missing: [] };
const MEETS: Decision = { verdict: 'meets', missing: [] };
const NO_VIEW: Decision = { verdict: 'undetermined', missing: ['fullHeightEnds'] };

function decide({ shearLb }: WallInputs, { bar, capacityLb, ends }: Perforated): Decision {
  if (bar) return FAILS;
  const unseen = ends === undefined ? NO_VIEW.missing : [];
  if (shearLb === undefined) return { verdict: 'undetermined', missing: ['shearLb', ...unseen] };
  if (!atMost(shearLb, capacityLb)) return FAILS;
  return ends === undefined ? NO_VIEW : MEETS;
}

/** Until its ends were seen a wall that may meet leaves the share open, and of one that fails nothing is counted. */
function remainingOf({ shearLb }: WallInputs, { bar, ends, capacityLb }: Perforated, verdict: Verdict): number | null {
  if (bar) return 0;
  if (ends === undefined) return verdict === 'fails' ? 0 : null;
  return shareMet(capacityLb, shearLb);
}

function judgePerforated(given: WallInputs): Judgement {
  const wall = measure(given);
  const { factor, effectiveFt, capacityLb, bar } = wall;
  const { shearLb, heightFt } = given;
  const { verdict, missing } = decide(given, wall);
  const fails = verdict === 'fails';
  const maxShearPlf = shearLb === undefined || factor === 0 ? undefined : shearLb / (factor * effectiveFt);
  return {
    verdict,
    ratio: ratioOf(shearLb, capacityLb),
    remaining: remainingOf(given, wall, verdict),
    missing,
    ...(shearLb === undefined && !bar && { facts: { calculationOnly: true } }),
    values: () => ({
      effectiveLengthFt: feetOf(effectiveFt),
      openingAreaSf: squareFeetOf(wall.openingsSf),
      openingFactor: factorOf(factor),
      capacityLb: poundsOf(capacityLb),
      ...(maxShearPlf !== undefined && {
        maxShearPlf: plfOf(maxShearPlf),
        upliftLb: poundsOf(maxShearPlf * heightFt),
      }),
    }),
    reasons: () => wallReasons(given, wall),
    cautions: () => wallCautions(given, maxShearPlf),
    referrals: fails ? ['engineer'] : [],
    repairs: fails ? ['engineer-letter', 'panel-replace'] : [],
  };
}

function wallReasons({ shearLb }: WallInputs, { bar, factor, capacityLb, ends }: Perforated): Reason[] {
  if (bar) return [reasonThat(false, bar)];
  const { takes, load } = compareLoad(shearLb, capacityLb);
  return [
    reasonThat(
      shearLb === undefined || atMost(shearLb, capacityLb),
      text(
        `The openings leave ${decimal(factor)} of its full-height parts: ${takes}${load.en}.`,
        `Las aberturas dejan ${decimal(factor)} de sus partes completas: ${takes}${load.es}.`,
      ),
    ),
    ...(ends === undefined ? [ENDS_UNSEEN] : []),
  ];
}

const ENDS_UNSEEN = text(
  'Nothing of it is counted until a full-height part is seen at each end.',
  'Nada se cuenta hasta ver una parte completa en cada extremo.',
);

function wallCautions(given: WallInputs, maxShearPlf: number | undefined): Text[] {
  const cautions = [
    text(
      'It counts with a hold-down at both ends and rim and plates whole from end to end.',
      'Cuenta con anclaje en ambos extremos y con viga de borde y soleras enteras de extremo a extremo.',
    ),
  ];
  if (maxShearPlf !== undefined)
    cautions.push(
      text(
        `Between the ends the bottom plate must also be tied down for ${decimal(maxShearPlf, 0)} plf of uplift.`,
        `Entre los extremos la solera también se ancla para ${decimal(maxShearPlf, 0)} plf de levantamiento.`,
      ),
    );
  if (!atMost(given.designPlf, PERFORATED_DESIGN_LIMIT_PLF.least))
    cautions.push(
      text(
        'Strong panels: confirm that the nominal strength counted is within the limit of the method.',
        'Paneles fuertes: confirme que la resistencia nominal contada no pasa el límite del método.',
      ),
    );
  return cautions;
}

function impossible(given: Partials<typeof inputs>): InputIssue[] {
  const { lengthFt, heightFt, segmentsFt = [], openings = [] } = given;
  const issues = given.fullHeightEnds === false && endsAreFull(given) ? [ENDS_ARE_FULL] : [];
  const segments = segmentsFt.reduce((sum, segment) => sum + (segment.lengthFt ?? 0), 0);
  issues.push(
    ...refuseLonger(['segmentsFt'], {
      what: text('Full-height parts in all', 'Partes completas en total'),
      came: segments,
      most: lengthFt,
      ofWhat: text('the length of the wall', 'el largo de la pared'),
      unit: 'ft',
    }),
  );
  openings.forEach(({ widthFt, heightFt: openingFt }, at) => {
    issues.push(
      ...refuseLonger(['openings', at, 'widthFt'], {
        what: text(`Width of opening ${at + 1}`, `Ancho de la abertura ${at + 1}`),
        came: widthFt,
        most: lengthFt === undefined ? undefined : Math.max(0, lengthFt - segments),
        ofWhat: text('what the full-height parts leave', 'lo que dejan las partes completas'),
        unit: 'ft',
      }),
      ...refuseLonger(['openings', at, 'heightFt'], {
        what: text(`Height of opening ${at + 1}`, `Altura de la abertura ${at + 1}`),
        came: openingFt,
        most: heightFt,
        ofWhat: text('the height of the wall', 'la altura de la pared'),
        unit: 'ft',
      }),
    );
  });
  return issues;
}

/** Parts that all count and outnumber the openings between them stand at both ends. */
function endsAreFull({ heightFt, segmentsFt = [], openings }: Partials<typeof inputs>): boolean {
  if (heightFt === undefined || openings === undefined || segmentsFt.length <= openings.length) return false;
  return segmentsFt.every(({ lengthFt }) => lengthFt !== undefined && countedLengthFt(lengthFt, heightFt) > 0);
}

const ENDS_ARE_FULL: InputIssue = refuse(
  ['fullHeightEnds'],
  text('false', 'false'),
  text('true, or one part or opening more or less', 'true, o una parte o abertura más o menos'),
  text(
    'With more full-height parts than openings between them, one stands at each end: count the parts and openings again.',
    'Con más partes completas que aberturas entre ellas, hay una en cada extremo: cuente otra vez las partes y aberturas.',
  ),
);

/**
 * A panel wall with openings, counted whole by the shear adjustment factor from its equation. Feet, plf, pounds; walls up
 * to 20 ft high.
 */
export const perforated = defineCheck({
  ...perforatedCard,
  editions: [
    { id: 'sdpws-2021', title: text('SDPWS 2021, by equation', 'SDPWS 2021, por ecuación') },
    { id: 'sdpws-2015', title: text('SDPWS 2015, by equation', 'SDPWS 2015, por ecuación') },
  ],
  defaultEdition: 'sdpws-2021',
  sources: [PERFORATED_SOURCE],
  inputs,
  refine: impossible,
  evaluate: judgePerforated,
  repairs: ['engineer-letter', 'panel-replace'],
  client: {
    found: (_inputs, { remaining }) =>
      remaining === null || remaining === 1
        ? text('We checked a braced wall with openings.', 'Revisamos una pared de refuerzo con aberturas.')
        : sayCounted(
            remaining,
            text(
              'the strength this braced wall with openings needs',
              'la fuerza que esta pared con aberturas necesita',
            ),
          ),
    why: text(
      'Each door and window takes strength from a braced wall.',
      'Cada puerta y ventana le quita fuerza a una pared de refuerzo.',
    ),
    ifNot: text('The wall could lean more than it was designed to.', 'La pared podría inclinarse más de lo previsto.'),
  },
  doesNotCover: [
    text('Walls strapped around their openings.', 'Paredes con placas de fuerza alrededor de las aberturas.'),
    text('Headers, and weight from above.', 'Dinteles y el peso de arriba.'),
  ],
  cases: () => import('./perforated.cases.ts'),
});
