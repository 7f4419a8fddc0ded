import { SCREENING_PRACTICE } from './assumptions.ts';
import type { Assumed, Severity, Verdict } from './outcome.ts';
import { type Text, text } from './text.ts';

/** What the element does in the house. */
export const ROLES = ['gravity', 'lateral', 'envelope', 'finish', 'hazard'] as const;
export type ElementRole = (typeof ROLES)[number];
export const MEMBER_KINDS = ['joist', 'beam', 'post', 'seat', 'hanger', 'plate', 'stud', 'engineered'] as const;
export type MemberKind = (typeof MEMBER_KINDS)[number];

/** What the place says about a finding; everything may be unknown. */
export interface Situation {
  readonly role?: ElementRole | undefined;
  readonly memberKind?: MemberKind | undefined;
  /** Full stories above the element; the roof is not one. */
  readonly storiesAbove?: number | undefined;
  /** False only when neither story nor roof stands on the element. Unknown is taken as loaded. */
  readonly carriesStoryOrRoof?: boolean | undefined;
  readonly occupiedBelow?: boolean | undefined;
  readonly shored?: boolean | undefined;
  readonly positiveConnection?: boolean | undefined;
  /** Share 0..1 of the story's resistance that hangs on this link, from the load path. */
  readonly storyShare?: number | undefined;
  /** Suspect material already disturbed, or work about to disturb it. */
  readonly disturbed?: boolean | undefined;
}

/** A situation together with what the check found; the only input of the severity table. */
export interface SeverityFacts extends Situation {
  readonly role: ElementRole;
  readonly verdict: Verdict;
  /** Load over capacity; a measured gap over its limit does not belong here. */
  readonly ratio: number | null;
  readonly remaining: number | null;
  /** Only friction or a temporary thing holds the member, or it is severed. */
  readonly nothingHolds?: boolean | undefined;
  /** Cut or bored engineered member: no table applies. */
  readonly engineeredCut?: boolean | undefined;
  /** A lateral case that always belongs to an engineer, with the reason. */
  readonly engineerAlways?: Text | undefined;
  /** The failing condition has a repair that the cited code or guide prescribes, and nothing of it is severed or loose. */
  readonly prescriptive?: boolean | undefined;
  /** A capacity that was looked up without a load: a figure, not a finding. */
  readonly calculationOnly?: boolean | undefined;
  /** It cannot be told, and no measurement of this check would tell it. */
  readonly nothingToMeasure?: boolean | undefined;
}

/** The row of the table that decided; 6a is a gravity link that holds and has a prescribed repair. */
export type SeverityRow = 1 | 2 | 3 | 4 | 5 | 6 | '6a' | 7 | 8;

export interface SeverityAnswer {
  readonly severity: Severity;
  readonly row: SeverityRow;
  readonly reason: () => Text;
}

interface Row {
  readonly row: SeverityRow;
  readonly severity: Severity;
  readonly when: (facts: SeverityFacts) => boolean;
  readonly reason: (facts: SeverityFacts) => Text;
}

/** The repair by which an engineer looks at a finding and writes what must be done. */
export const ENGINEER_REPAIR = 'engineer-letter';

/** True for repairs that leave the engineer out although the severity says that an engineer decides. */
export const lacksEngineer = (severity: Severity, repairs: readonly string[]): boolean =>
  severity === 'engineer' && !repairs.includes(ENGINEER_REPAIR);

/** Limits chosen for this screening; they sort findings and are no code limits. */
const HALF = 0.5;
const FAR_OVER = 1.5;
const SMALL_LOSS = 0.85;
const MANY_STORIES = 2;
const LARGE_STORY_SHARE = 1 / 3;

const fails = (facts: SeverityFacts): boolean => facts.verdict === 'fails';
const carriesLoad = (facts: SeverityFacts): boolean => facts.role === 'gravity' || facts.role === 'lateral';
const loadedFromAbove = (facts: SeverityFacts): boolean =>
  facts.carriesStoryOrRoof !== false || (facts.storiesAbove ?? 0) > 0 || facts.occupiedBelow === true;
const postBeamOrSeat = (facts: SeverityFacts): boolean =>
  facts.memberKind === 'post' || facts.memberKind === 'beam' || facts.memberKind === 'seat';
const holdsAndHasRepair = (facts: SeverityFacts): boolean =>
  facts.role === 'gravity' &&
  fails(facts) &&
  facts.prescriptive === true &&
  facts.nothingHolds !== true &&
  facts.engineeredCut !== true &&
  facts.remaining !== null &&
  facts.remaining >= SMALL_LOSS;
const carriesWeight = (facts: SeverityFacts): boolean => facts.role === 'gravity';
/** Beyond what can be measured, and the repair is the one for anything over the limit. */
const isUntoldButSame = (facts: SeverityFacts): boolean =>
  facts.verdict === 'undetermined' && facts.prescriptive === true;
const lossIsLarge = (facts: SeverityFacts): boolean => facts.remaining !== null && facts.remaining < SMALL_LOSS;

function lateralReason(facts: SeverityFacts): Text {
  if (facts.engineerAlways) return facts.engineerAlways;
  if (lossIsLarge(facts))
    return text(
      'Less than 0.85 of this link of the bracing may be counted: an engineer decides.',
      'Se puede contar menos de 0.85 de esta parte del arriostramiento: decide un ingeniero.',
    );
  if ((facts.storiesAbove ?? 0) >= MANY_STORIES)
    return text(
      'A failing link of the bracing with two or more stories above: an engineer decides.',
      'Falla una parte del arriostramiento con dos o más pisos encima: decide un ingeniero.',
    );
  return text(
    "More than a third of the story's bracing hangs on this failing link: an engineer decides.",
    'Más de un tercio del arriostramiento del piso depende de esta parte que falla: decide un ingeniero.',
  );
}

function gravityReason(facts: SeverityFacts): Text {
  if (facts.engineeredCut)
    return text(
      'A cut or hole in an engineered member has no table: an engineer decides.',
      'Un corte o agujero en un elemento de ingeniería no tiene tabla: decide un ingeniero.',
    );
  if (fails(facts))
    return text(
      'A failing link of a line that carries weight: an engineer decides.',
      'Falla una parte de una línea que carga peso: decide un ingeniero.',
    );
  if (facts.nothingToMeasure)
    return text(
      'It cannot be told here and the part carries load: an engineer decides.',
      'Aquí no se puede saber y la pieza carga: decide un ingeniero.',
    );
  return text(
    'It cannot be told yet and the part carries load: first measure what is missing; until it can be told, an engineer decides.',
    'Aún no se puede saber y la pieza carga: primero mida lo que falta; hasta que se sepa, decide un ingeniero.',
  );
}

const ROWS: readonly Row[] = [
  {
    row: 1,
    severity: 'make-safe',
    when: (f) =>
      f.role === 'gravity' &&
      !f.shored &&
      f.verdict !== 'not-applicable' &&
      (f.nothingHolds === true || f.remaining === 0),
    reason: () =>
      text(
        'Nothing that may be counted holds this load, and no shoring is known: make safe now.',
        'Nada que se pueda contar sostiene esta carga y no se sabe de puntales: hay que asegurarlo ya.',
      ),
  },
  {
    row: 2,
    severity: 'make-safe',
    when: (f) =>
      f.role === 'gravity' &&
      !f.shored &&
      f.verdict !== 'not-applicable' &&
      loadedFromAbove(f) &&
      ((postBeamOrSeat(f) && f.remaining !== null && f.remaining < HALF) || (f.ratio !== null && f.ratio > FAR_OVER)),
    reason: (f) =>
      f.remaining !== null && f.remaining < HALF && postBeamOrSeat(f)
        ? text(
            'Less than half of a post, beam or seat is left with weight on it and no shoring known: make safe now.',
            'Queda menos de la mitad de un poste, viga o asiento con carga y sin puntales que se sepan: hay que asegurarlo ya.',
          )
        : text(
            'More than one and a half times what it can take, with weight on it and no shoring known: make safe now.',
            'Más de una vez y media de lo que resiste, con carga y sin puntales que se sepan: hay que asegurarlo ya.',
          ),
  },
  {
    row: 3,
    severity: 'make-safe',
    when: (f) => f.role === 'hazard' && (fails(f) || f.verdict === 'undetermined') && f.disturbed === true,
    reason: () =>
      text(
        'A suspect material is disturbed or about to be: stop there, keep out, call a licensed specialist.',
        'Un material sospechoso está alterado o por alterarse: pare, no entre, llame a un especialista con licencia.',
      ),
  },
  {
    row: 4,
    severity: 'engineer',
    when: (f) =>
      f.engineeredCut === true ||
      (f.role === 'gravity' && fails(f) && !holdsAndHasRepair(f)) ||
      (carriesLoad(f) && f.verdict === 'undetermined' && f.engineerAlways === undefined && !f.calculationOnly),
    reason: gravityReason,
  },
  {
    row: 5,
    severity: 'engineer',
    when: (f) =>
      f.engineerAlways !== undefined ||
      (f.role === 'lateral' &&
        fails(f) &&
        (lossIsLarge(f) ||
          (f.storiesAbove ?? 0) >= MANY_STORIES ||
          (f.storyShare !== undefined && f.storyShare > LARGE_STORY_SHARE))),
    reason: lateralReason,
  },
  {
    row: 6,
    severity: 'repair',
    when: (f) =>
      !carriesWeight(f) &&
      (fails(f) ? f.role !== 'hazard' || f.prescriptive === true : isUntoldButSame(f) && f.role !== 'lateral'),
    reason: (f) =>
      fails(f)
        ? text(
            'It does not meet the rule and a prescribed repair answers it: repair before cover.',
            'No cumple la regla y hay una reparación prescrita: reparar antes de cubrir.',
          )
        : text(
            'How far off it is cannot be told, and the prescribed repair is the same: repair before cover.',
            'No se puede saber cuánto se pasa, y la reparación prescrita es la misma: reparar antes de cubrir.',
          ),
  },
  {
    row: '6a',
    severity: 'repair',
    when: holdsAndHasRepair,
    reason: () =>
      text(
        'It does not meet the rule, still holds at least 0.85 of what it should, and has a prescribed repair: repair before cover.',
        'No cumple la regla, conserva al menos 0.85 de lo que debe y tiene una reparación prescrita: reparar antes de cubrir.',
      ),
  },
  {
    row: 7,
    severity: 'repair',
    when: (f) => f.role === 'hazard' && fails(f),
    reason: () =>
      text(
        'The screen is positive: do not disturb it, bring in a licensed specialist.',
        'La revisión es positiva: no lo toque, traiga a un especialista con licencia.',
      ),
  },
];

const NOTHING_TO_DO = text('Nothing to repair here: note only.', 'Nada que reparar aquí: solo anotar.');
const NOT_KNOWN_YET = text(
  'It cannot be told yet: note it, and measure what is missing.',
  'Aún no se puede saber: anótelo y mida lo que falta.',
);
const NOT_KNOWN_AND_UNLOADED = text(
  'It cannot be told yet, and as you say nothing rests on this part: note it, and measure what is missing.',
  'Aún no se puede saber y, como usted dice, nada descansa en esta pieza: anótelo y mida lo que falta.',
);
const NOT_KNOWN_HERE = text('It cannot be told here: note it.', 'Aquí no se puede saber: anótelo.');
const FIGURE_ONLY = text(
  'A figure without a load is no finding: give the load to judge it.',
  'Una cifra sin carga no es un hallazgo: dé la carga para evaluarla.',
);

function noteWords({ verdict, calculationOnly, carriesStoryOrRoof, nothingToMeasure }: SeverityFacts): Text {
  if (verdict !== 'undetermined') return NOTHING_TO_DO;
  if (calculationOnly) return FIGURE_ONLY;
  if (nothingToMeasure) return NOT_KNOWN_HERE;
  return carriesStoryOrRoof === false ? NOT_KNOWN_AND_UNLOADED : NOT_KNOWN_YET;
}

/** Row 8: meets, does not apply, a figure without a load, or cannot be told where nothing is carried. */
const noteOnly = (facts: SeverityFacts): SeverityAnswer => ({
  severity: 'record',
  row: 8,
  reason: () => noteWords(facts),
});

/** Rates an outcome by the one severity table: the first row that fits decides. */
export function rateSeverity(facts: SeverityFacts): SeverityAnswer {
  const row = ROWS.find((candidate) => candidate.when(facts));
  return row ? { severity: row.severity, row: row.row, reason: () => row.reason(facts) } : noteOnly(facts);
}

const FEW_STORIES = text(
  'Fewer than two stories above it are taken; with two or more an engineer decides.',
  'Se toman menos de dos pisos encima; con dos o más decide un ingeniero.',
);
const SMALL_STORY_SHARE = text(
  "A third of the story's bracing or less is taken to hang on it; with more an engineer decides.",
  'Se toma que depende de esto un tercio del arriostramiento del piso o menos; con más decide un ingeniero.',
);
const LIKE_A_JOIST = text(
  'It is taken to be one of several like members; a post, a beam or its seat with so little left is made safe now.',
  'Se toma que es una de varias piezas iguales; un poste, una viga o su asiento con tan poco se asegura ahora.',
);
const UNDISTURBED = text(
  'It is taken that nothing of it is disturbed or about to be; if it is, stop there and make safe.',
  'Se toma que no está alterado ni por alterarse; si lo está, pare ahí y asegure.',
);

/** So little is left that a post, beam or seat would be unsafe, and nobody said what the member is. */
const mayBeMadeSafe = (facts: SeverityFacts, row: SeverityRow): boolean =>
  row !== 1 && row !== 2 && ROWS.some((one) => one.row === 2 && one.when({ ...facts, memberKind: 'beam' }));

/** What a rating took of the place because nobody said it, where saying it could have made it graver. */
export function assumedOfPlace(facts: SeverityFacts, { row }: SeverityAnswer): Assumed[] {
  const taken = (input: string, words: Text): Assumed => ({
    input: `context.${input}`,
    text: words,
    source: SCREENING_PRACTICE,
  });
  const isPositive = facts.role === 'hazard' && (fails(facts) || facts.verdict === 'undetermined');
  if (facts.memberKind === undefined && mayBeMadeSafe(facts, row)) return [taken('memberKind', LIKE_A_JOIST)];
  if (isPositive && row !== 3 && facts.disturbed === undefined) return [taken('disturbed', UNDISTURBED)];
  if (row !== 6 || facts.role !== 'lateral') return [];
  return [
    ...(facts.storiesAbove === undefined ? [taken('storiesAbove', FEW_STORIES)] : []),
    ...(facts.storyShare === undefined ? [taken('storyShare', SMALL_STORY_SHARE)] : []),
  ];
}
