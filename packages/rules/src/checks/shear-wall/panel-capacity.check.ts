import {
  atMost,
  decimal,
  defineCheck,
  factorOf,
  type InputIssue,
  inchesOf,
  type Judgement,
  type Partials,
  plfOf,
  poundsOf,
  type Quantity,
  ratioOf,
  refuse,
  sayCounted,
  shareMet,
  text,
  type Verdict,
} from '../../kernel/index.ts';
import { GRAVITY_MEMORY_SOURCE, GRAVITY_SOURCE, SPECIFIC_GRAVITY } from '../../standards/nds-2018/species.data.ts';
import { SDPWS_2008 } from '../../standards/sdpws-2008/shear-walls.ts';
import { SDPWS_2015 } from '../../standards/sdpws-2015/shear-walls.ts';
import { SDPWS_2021 } from '../../standards/sdpws-2021/shear-walls.ts';
import type { ShearWallEdition } from '../../standards/sdpws-common/edition.ts';
import {
  PANEL_NAILING_SOURCE,
  PANEL_TABLE,
  PANEL_TABLE_SOURCE,
  SPECIES_FACTOR_SOURCE,
  THIN_PANEL_SOURCE,
} from '../../standards/sdpws-common/shear-walls.data.ts';
import { UNBLOCKED_SOURCE } from '../../standards/sdpws-common/unblocked.data.ts';
import { panelCapacityCard } from './panel-capacity.card.ts';
import { inputs, STANDARDS } from './panel-capacity.inputs.ts';
import {
  type Bar,
  insideFactorOf,
  type PanelInputs,
  type Strength,
  strengthOf,
  strengthSources,
} from './panel-capacity.strength.ts';
import { capacityCautions, capacityReasons } from './panel-capacity.words.ts';

const EDITIONS: Readonly<Record<string, ShearWallEdition>> = {
  'sdpws-2008': SDPWS_2008,
  'sdpws-2015': SDPWS_2015,
  'sdpws-2021': SDPWS_2021,
};
const DEFAULT_EDITION = 'sdpws-2021';

/** The edition the inputs name. Asked for one beside another named, the answer is none the check has: it is refused. */
function chooseEdition(asked: string | undefined, { standard }: Partials<typeof inputs>): string {
  if (asked !== undefined && standard !== undefined && asked !== standard) return `${asked} with ${standard}`;
  return standard ?? asked ?? DEFAULT_EDITION;
}

interface Decision {
  readonly verdict: Verdict;
  readonly missing: readonly string[];
}
const FAILS: Decision = { verdict: 'fails', missing: [] };
const MEETS: Decision = { verdict: 'meets', missing: [] };
const NO_DEMAND: Decision = { verdict: 'undetermined', missing: ['demandPlf'] };
const NO_HOLD_DOWN: Decision = { verdict: 'undetermined', missing: ['holdDownInsideFace'] };

/** The least the wall may be worth while the place of its hold-down is not known, plf. */
const leastPlf = (given: PanelInputs, edition: ShearWallEdition, { designPlf }: Strength): number =>
  given.holdDownInsideFace === undefined ? designPlf * insideFactorOf(given, edition) : designPlf;

function decide({ demandPlf }: PanelInputs, { bar, designPlf }: Strength, least: number): Decision {
  if (bar !== undefined) return FAILS;
  if (demandPlf === undefined) return NO_DEMAND;
  if (!atMost(demandPlf, designPlf)) return FAILS;
  return atMost(demandPlf, least) ? MEETS : NO_HOLD_DOWN;
}

function remainingOf({ demandPlf }: PanelInputs, { bar }: Strength, verdict: Verdict, least: number): number | null {
  if (bar !== undefined) return 0;
  return verdict === 'undetermined' ? null : shareMet(least, demandPlf);
}

function repairsFor(given: PanelInputs, bar: Bar): readonly string[] {
  if (!given.blocked) return ['panel-blocking', 'panel-replace', 'engineer-letter'];
  return bar === undefined ? ['panel-replace', 'engineer-letter'] : ['engineer-letter'];
}

function judgePanel(given: PanelInputs, edition: ShearWallEdition): Judgement {
  const row = PANEL_TABLE[given.grade][given.thickness]?.[given.nail];
  if (!row) return noRow(given);
  const strength = strengthOf(given, edition, row);
  const least = leastPlf(given, edition, strength);
  const { verdict, missing } = decide(given, strength, least);
  const sources = strengthSources(given, edition, strength);
  return {
    verdict,
    ratio: ratioOf(given.demandPlf, strength.designPlf),
    remaining: remainingOf(given, strength, verdict, least),
    missing,
    ...(verdict === 'undetermined' && given.demandPlf === undefined && { facts: { calculationOnly: true } }),
    values: () => valuesOf(given, strength, row.penetrationIn),
    reasons: () => capacityReasons(given, strength),
    cautions: () => capacityCautions(given, edition, strength, row),
    hangsOn: sources,
    sources,
    referrals: verdict === 'fails' ? ['engineer'] : [],
    repairs: verdict === 'fails' ? repairsFor(given, strength.bar) : [],
  };
}

function valuesOf(given: PanelInputs, strength: Strength, penetrationIn: number): Record<string, Quantity> {
  return {
    nominalPlf: plfOf(strength.nominalPlf),
    specificGravity: factorOf(strength.gravity),
    speciesFactor: factorOf(strength.speciesFactor),
    aspectRatio: factorOf(strength.aspect),
    aspectFactor: factorOf(strength.aspectFactor),
    unblockedFactor: factorOf(strength.unblockedFactor),
    holdDownFactor: factorOf(strength.insideFactor),
    designShare: factorOf(strength.designShare),
    designPlf: plfOf(strength.designPlf),
    capacityLb: poundsOf(strength.designPlf * given.lengthFt),
    leastPenetrationIn: inchesOf(penetrationIn),
  };
}

/** A panel and nail the table does not pair cannot be judged by it. */
function noRow({ grade, thickness, nail }: PanelInputs): Judgement {
  return {
    verdict: 'undetermined',
    reasons: () => [
      text(
        `The table has no ${thickness} in ${grade} panel with ${nail} nails: an engineer decides.`,
        `La tabla no tiene panel ${grade} de ${thickness} in con clavos ${nail}: decide un ingeniero.`,
      ),
    ],
    sources: [PANEL_TABLE_SOURCE],
    referrals: ['engineer'],
    repairs: ['engineer-letter'],
  };
}

/** The species of the studs and another gravity beside it. */
function impossible({ species, framingG }: Partials<typeof inputs>): InputIssue[] {
  if (species === undefined || framingG === undefined) return [];
  const { gravity } = SPECIFIC_GRAVITY[species];
  if (ratioOf(framingG, gravity) === 1) return [];
  const words = text(
    `A specific gravity of ${decimal(framingG)} is not that of this species, ${decimal(gravity)}: give one of the two.`,
    `Una densidad relativa de ${decimal(framingG)} no es la de esta especie, ${decimal(gravity)}: dé una de las dos.`,
  );
  const allowed = text('one of the two', 'una de las dos');
  const came = `${species} and ${framingG}`;
  return ['species', 'framingG'].map((name) => refuse([name], came, allowed, words));
}

/**
 * What a panel shear wall is worth, plf and lb, in three editions of SDPWS. One panel face; walls 0.5 to 60 ft high and
 * 0.5 to 400 ft long.
 */
export const panelCapacity = defineCheck({
  ...panelCapacityCard,
  editions: STANDARDS.map(({ value, label }) => ({ id: value, title: label })),
  defaultEdition: DEFAULT_EDITION,
  chooseEdition,
  sources: [
    ...new Set(
      Object.values(EDITIONS).flatMap((edition) => [
        edition.tableSource,
        ...Object.values(edition.methodSource),
        edition.aspectSource,
        edition.wideFraming.source,
        ...(edition.insideHoldDown ? [edition.insideHoldDown.source] : []),
      ]),
    ),
    SPECIES_FACTOR_SOURCE,
    GRAVITY_SOURCE,
    GRAVITY_MEMORY_SOURCE,
    UNBLOCKED_SOURCE,
    THIN_PANEL_SOURCE,
    PANEL_NAILING_SOURCE,
  ],
  inputs,
  refine: impossible,
  evaluate: (given, { edition }) => {
    const chosen = EDITIONS[edition];
    if (!chosen) throw new RangeError(`No shear wall edition ${edition}`);
    return judgePanel(given, chosen);
  },
  repairs: ['panel-blocking', 'panel-replace', 'engineer-letter'],
  client: {
    found: (_inputs, { remaining }) =>
      remaining === null || remaining === 1
        ? text('We checked how strong this braced wall is.', 'Revisamos qué tan fuerte es esta pared.')
        : sayCounted(remaining, text('the strength this braced wall needs', 'la fuerza que esta pared necesita')),
    why: text(
      'Walls like this keep the house from leaning in an earthquake or strong wind.',
      'Paredes así evitan que la casa se incline en un sismo o viento fuerte.',
    ),
    ifNot: text('The house could lean more than it was designed to.', 'La casa podría inclinarse más de lo previsto.'),
  },
  doesNotCover: [
    text('Walls with panels on both faces, gypsum or stucco.', 'Paredes con paneles en las dos caras, yeso o estuco.'),
    text('Overdriven or missing nails; count them first.', 'Clavos hundidos o que faltan; cuéntelos primero.'),
    text('Overturning, deflection and the hold-downs.', 'Vuelco, deformación y anclajes.'),
  ],
  cases: () => import('./panel-capacity.cases.ts'),
});
