import { type Text, text } from '../kernel/index.ts';

/** Order of work on one opened place. */
export const PHASES = [
  'decide',
  'protect',
  'shore',
  'open',
  'remove',
  'replace',
  'connect',
  'panel',
  'nail',
  'hold-point',
  'release',
  'close',
] as const;
export type Phase = (typeof PHASES)[number];

/** Nothing of these opens, cuts or closes anything, so that they wait for nobody's paper: a load is held up at once. */
export const WITHOUT_PAPER: readonly Phase[] = ['protect', 'shore'];

export type WorkUnit = 'each' | 'sf' | 'lf';

/** One kind of work, the thing a cost book puts a rate on. */
export interface Operation {
  readonly id: string;
  readonly title: Text;
  readonly unit: WorkUnit;
  readonly phase: Phase;
  /** Needed once per place or once per visit, however many findings ask for it. */
  readonly sharedPer?: 'place' | 'visit';
  /** Nothing after it may start before someone has looked. */
  readonly holdPoint?: true;
  /** What its amount is worked out from once the findings are drawn; without it the amount is the template's. */
  readonly extent?: Extent;
}

/** What part of a drawn place an operation works on. Of the member kinds, replace beats sister beats treat. */
export type Extent =
  | 'opening'
  | 'panel'
  | 'panel-off'
  | 'panel-nails'
  | 'panel-blocking'
  | 'take-out'
  | 'ends'
  | 'treat'
  | 'sister'
  | 'replace';

/** Every kind of work the repair templates ask for. */
export const OPERATIONS: readonly Operation[] = [
  {
    id: 'engineer-letter',
    title: text("Engineer's visit and letter", 'Visita y carta del ingeniero'),
    unit: 'each',
    phase: 'decide',
    sharedPer: 'visit',
    holdPoint: true,
  },
  {
    id: 'specialist-visit',
    title: text("Licensed specialist's test and report", 'Prueba e informe de especialista con licencia'),
    unit: 'each',
    phase: 'decide',
    sharedPer: 'visit',
    holdPoint: true,
  },
  {
    id: 'permit-revision',
    title: text('Revise the permit drawings', 'Revisar los planos del permiso'),
    unit: 'each',
    phase: 'decide',
    sharedPer: 'visit',
    holdPoint: true,
  },
  {
    id: 'lead-safe-setup',
    title: text('Lead-safe containment by a certified firm', 'Contención de plomo por empresa certificada'),
    unit: 'each',
    phase: 'protect',
    sharedPer: 'place',
  },
  {
    id: 'protect-place',
    title: text('Protect floors and contents', 'Proteger pisos y contenido'),
    unit: 'each',
    phase: 'protect',
    sharedPer: 'place',
  },
  {
    id: 'dust-control',
    title: text('Dust control: water or vacuum, respirators', 'Control de polvo: agua o aspiradora, respiradores'),
    unit: 'each',
    phase: 'protect',
    sharedPer: 'place',
  },
  {
    id: 'shore-load',
    title: text('Shore the load', 'Apuntalar la carga'),
    unit: 'each',
    phase: 'shore',
    sharedPer: 'place',
    holdPoint: true,
  },
  {
    id: 'open-finish',
    title: text('Open the finish', 'Abrir el acabado'),
    unit: 'sf',
    phase: 'open',
    sharedPer: 'place',
    extent: 'opening',
  },
  {
    id: 'find-water',
    title: text('Find and stop the water', 'Encontrar y detener el agua'),
    unit: 'each',
    phase: 'remove',
    sharedPer: 'place',
  },
  {
    id: 'clean-mold',
    title: text('Clean off the mold', 'Limpiar el moho'),
    unit: 'sf',
    phase: 'remove',
  },
  {
    id: 'remove-panel',
    title: text('Take off the old panel', 'Quitar el panel viejo'),
    unit: 'sf',
    phase: 'remove',
    extent: 'panel-off',
  },
  {
    id: 'remove-member',
    title: text('Cut out the bad wood', 'Cortar la madera mala'),
    unit: 'lf',
    phase: 'remove',
    extent: 'take-out',
  },
  { id: 'remove-hanger', title: text('Take off the hanger', 'Quitar el estribo'), unit: 'each', phase: 'remove' },
  {
    id: 'replace-member',
    title: text('Set new lumber', 'Poner madera nueva'),
    unit: 'lf',
    phase: 'replace',
    extent: 'replace',
  },
  {
    id: 'sister-member',
    title: text('Sister the member', 'Reforzar con madera gemela'),
    unit: 'lf',
    phase: 'replace',
    extent: 'sister',
  },
  {
    id: 'treat-wood',
    title: text('Treat the wood that stays', 'Tratar la madera que se queda'),
    unit: 'lf',
    phase: 'replace',
    extent: 'treat',
  },
  {
    id: 'seat-support',
    title: text('Rebuild the seat with a post or block', 'Rehacer el apoyo con poste o taco'),
    unit: 'each',
    phase: 'replace',
  },
  {
    id: 'panel-blocking',
    title: text('Blocking behind the panel edge', 'Bloqueo detrás del borde del panel'),
    unit: 'lf',
    phase: 'replace',
    extent: 'panel-blocking',
  },
  {
    id: 'dry-wood',
    title: text('Dry the wood and measure again', 'Secar la madera y medir de nuevo'),
    unit: 'each',
    phase: 'replace',
    sharedPer: 'place',
  },
  { id: 'shim-level', title: text('Shim tight and level', 'Calzar y nivelar'), unit: 'each', phase: 'replace' },
  {
    id: 'coupler-rod',
    title: text('Extend the rod: coupler, rod, washer, nut', 'Alargar la varilla: acople, varilla, arandela, tuerca'),
    unit: 'each',
    phase: 'connect',
  },
  {
    id: 'anchor-replace',
    title: text('New anchor rod into the concrete', 'Varilla de anclaje nueva en el concreto'),
    unit: 'each',
    phase: 'connect',
  },
  {
    id: 'anchor-bolt',
    title: text('Anchor bolt through the sill', 'Perno de anclaje en la solera'),
    unit: 'each',
    phase: 'connect',
  },
  {
    id: 'plate-washer',
    title: text('Large plate washer', 'Arandela de placa grande'),
    unit: 'each',
    phase: 'connect',
  },
  {
    id: 'hold-down-new',
    title: text('Hold-down with its rod', 'Anclaje contra levantamiento con su varilla'),
    unit: 'each',
    phase: 'connect',
  },
  {
    id: 'plate-tie',
    title: text('Metal tie over the cut plate', 'Placa metálica sobre el corte'),
    unit: 'each',
    phase: 'connect',
  },
  { id: 'tie-nails', title: text('Nails in the tie', 'Clavos de la placa'), unit: 'each', phase: 'connect' },
  {
    id: 'positive-connection',
    title: text('Strap or hanger that holds the seat', 'Placa o estribo que sujeta el apoyo'),
    unit: 'each',
    phase: 'connect',
    extent: 'ends',
  },
  {
    id: 'hanger-new',
    title: text('New hanger, right size', 'Estribo nuevo, de la medida'),
    unit: 'each',
    phase: 'connect',
  },
  { id: 'hanger-nails', title: text('Nails in the hanger', 'Clavos del estribo'), unit: 'each', phase: 'connect' },
  {
    id: 'panel-new',
    title: text('New structural panel', 'Panel estructural nuevo'),
    unit: 'sf',
    phase: 'panel',
    extent: 'panel',
  },
  {
    id: 'panel-nails',
    title: text('Nails in the panel', 'Clavos en el panel'),
    unit: 'each',
    phase: 'nail',
    extent: 'panel-nails',
  },
  {
    id: 'panel-staples',
    title: text('Staples in the panel edge', 'Grapas en el borde del panel'),
    unit: 'each',
    phase: 'nail',
    extent: 'panel-nails',
  },
  {
    id: 'inspection-hold',
    title: text('Inspection before cover', 'Inspección antes de cubrir'),
    unit: 'each',
    phase: 'hold-point',
    sharedPer: 'visit',
    holdPoint: true,
  },
  {
    id: 'release-shoring',
    title: text('Take the shoring down', 'Quitar los puntales'),
    unit: 'each',
    phase: 'release',
    sharedPer: 'place',
  },
  {
    id: 'lead-safe-cleanup',
    title: text('Lead-safe cleanup and check', 'Limpieza y verificación por plomo'),
    unit: 'each',
    phase: 'close',
    sharedPer: 'place',
  },
  {
    id: 'close-finish',
    title: text('Close the finish', 'Cerrar el acabado'),
    unit: 'sf',
    phase: 'close',
    sharedPer: 'place',
    extent: 'opening',
  },
  {
    id: 'haul-debris',
    title: text('Haul the debris', 'Retirar escombros'),
    unit: 'each',
    phase: 'close',
    sharedPer: 'visit',
  },
];
