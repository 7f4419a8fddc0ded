import { type Source, type Text, text } from '../../kernel/index.ts';

/** How much of the place was seen when it was priced. */
export const SEEN_STAGES = ['before-opening', 'opened', 'measured'] as const;
export type SeenStage = (typeof SEEN_STAGES)[number];

export interface EstimateClass {
  readonly stage: SeenStage;
  /** Class of the AACE table, 5 the roughest. It is the best that the stage allows. */
  readonly atBest: 2 | 3 | 4;
  readonly words: Text;
  /** How far below and above the price such estimates have come out, percent: the narrow and the wide end of the table. */
  readonly belowPct: readonly [number, number];
  readonly abovePct: readonly [number, number];
  readonly sources: readonly Source[];
}

const AACE_TABLE: Source = {
  id: 'aace-18r-97',
  title: 'AACE estimate classes, accuracy ranges; made for process plants, the paper for buildings is 56R-08, not read',
  edition: '18R-97',
  section: 'classes 2 and 4',
  basis: 'memory',
};
const AACE_CLASS_3: Source = { ...AACE_TABLE, edition: '18R-97, as quoted', section: 'class 3', basis: 'second-hand' };
const STAGE: Source = {
  id: 'estimate-class-by-opening',
  title:
    'A finding priced before opening up is at best class 4; opened and measured ones are taken one class better each',
  edition: 'none',
  section: 'stages',
  basis: 'common-practice',
};

export const ESTIMATE_CLASSES: readonly EstimateClass[] = [
  {
    stage: 'before-opening',
    atBest: 4,
    words: text('Priced before opening up', 'Precio puesto antes de abrir'),
    belowPct: [15, 30],
    abovePct: [20, 50],
    sources: [AACE_TABLE, STAGE],
  },
  {
    stage: 'opened',
    atBest: 3,
    words: text('Priced after opening up, by eye', 'Precio puesto después de abrir, a ojo'),
    belowPct: [10, 20],
    abovePct: [10, 30],
    sources: [AACE_CLASS_3, STAGE],
  },
  {
    stage: 'measured',
    atBest: 2,
    words: text('Priced after opening up and measuring', 'Precio puesto después de abrir y medir'),
    belowPct: [5, 15],
    abovePct: [5, 20],
    sources: [AACE_TABLE, STAGE],
  },
];

/** The class of an estimate, in words; of several findings the one least seen decides. Nothing priced is as before opening. */
export function estimateClassOf(stages: readonly SeenStage[]): EstimateClass {
  const [roughest] = ESTIMATE_CLASSES;
  const found = ESTIMATE_CLASSES.find(({ stage }) => stages.includes(stage)) ?? roughest;
  if (!found) throw new RangeError('There are no estimate classes');
  return found;
}
