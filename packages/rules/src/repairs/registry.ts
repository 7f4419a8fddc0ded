import { text } from '../kernel/index.ts';
import {
  assumed,
  fixed,
  inputNumber,
  measured,
  outcomeNumber,
  type Repair,
  type RepairFacts,
  type RepairStep,
} from './define-repair.ts';

const openAndClose = (areaSf: number): RepairStep[] => [
  fixed('protect-place', 1, 'Once for the place.', 'Una vez por lugar.'),
  assumed('open-finish', areaSf, `${areaSf} SF around it.`, `${areaSf} pies² alrededor.`),
  assumed('close-finish', areaSf, 'The same area closed again.', 'La misma área cerrada de nuevo.'),
  fixed('haul-debris', 1, 'Once for the visit.', 'Una vez por visita.'),
];
const inspected = fixed('inspection-hold', 1, 'Before it is covered.', 'Antes de cubrir.');
const shored: RepairStep[] = [
  fixed('shore-load', 1, 'Before any wood that carries is touched.', 'Antes de tocar madera que carga.'),
  fixed('release-shoring', 1, 'When the load path is whole again.', 'Cuando la carga tiene camino de nuevo.'),
];

const sum = (...parts: (number | undefined)[]): number | undefined =>
  parts.some((part) => part === undefined) ? undefined : parts.reduce<number>((total, part) => total + (part ?? 0), 0);

const missingHangerNails = (facts: RepairFacts): number | undefined => {
  const allWrong = facts.inputs.rightFastener === false || facts.inputs.loose === true;
  return allWrong
    ? allHangerNails(facts)
    : sum(outcomeNumber(facts, 'headerToAdd'), outcomeNumber(facts, 'joistToAdd'));
};
const allHangerNails = (facts: RepairFacts): number | undefined =>
  sum(inputNumber(facts, 'header.specified'), inputNumber(facts, 'joist.specified'));
const bothSidesOfTie = (facts: RepairFacts): number | undefined => {
  const eachSide = outcomeNumber(facts, 'requiredNailsEachSide');
  return eachSide === undefined ? undefined : 2 * eachSide;
};
const memberCount = (facts: RepairFacts): number | undefined =>
  Array.isArray(facts.inputs.members) ? facts.inputs.members.length : undefined;

/** Nails to drive at a panel edge; none where staples take their place. */
const panelNails = (facts: RepairFacts): number | undefined =>
  outcomeNumber(facts, 'staplesToAdd') === undefined ? outcomeNumber(facts, 'nailsToAdd') : 0;

const MEMBER_LENGTH_LF = 8;
const memberLength = (operation: string): RepairStep =>
  assumed(operation, MEMBER_LENGTH_LF, 'Length of the member.', 'Largo del elemento.');

/** Every repair template. Adding one is an entry here; the operations it names carry its order and sharing. */
export const repairs: readonly Repair[] = [
  {
    id: 'coupler-and-rod',
    title: text('Extend the rod so that it fills its nut', 'Alargar la varilla para que llene su tuerca'),
    what: text(
      'We join a new piece of rod to the short one and set a new washer and nut.',
      'Unimos un tramo nuevo a la varilla corta y ponemos arandela y tuerca nuevas.',
    ),
    steps: [...openAndClose(6), fixed('coupler-rod', 1, 'One rod.', 'Una varilla.'), inspected],
  },
  {
    id: 'plate-tie',
    title: text('Tie the cut plate with metal', 'Atar la solera cortada con metal'),
    what: text(
      'We bridge the cut with a steel strap nailed on both sides.',
      'Cruzamos el corte con una placa de acero clavada en ambos lados.',
    ),
    steps: [
      ...openAndClose(8),
      fixed('plate-tie', 1, 'One cut.', 'Un corte.'),
      measured('tie-nails', bothSidesOfTie, {
        en: 'Nails asked on both sides',
        es: 'Clavos pedidos en ambos lados',
        without: 16,
      }),
      inspected,
    ],
  },
  {
    id: 'seat-restore',
    title: text('Shore and rebuild the seat', 'Apuntalar y rehacer el apoyo'),
    what: text(
      'We hold the beam up, then build a full seat under it.',
      'Sostenemos la viga y construimos un apoyo completo debajo.',
    ),
    steps: [
      ...openAndClose(12),
      ...shored,
      fixed('seat-support', 1, 'One seat.', 'Un apoyo.'),
      fixed('positive-connection', 1, 'One seat.', 'Un apoyo.'),
      inspected,
    ],
  },
  {
    id: 'seat-connect',
    title: text('Fasten the member to its seat', 'Sujetar el elemento a su apoyo'),
    what: text('We fasten the beam so it cannot slip off.', 'Sujetamos la viga para que no se salga.'),
    steps: [...openAndClose(6), fixed('positive-connection', 1, 'One seat.', 'Un apoyo.'), inspected],
  },
  {
    id: 'hanger-refasten',
    title: text('Nail the hanger as specified', 'Clavar el estribo como se especifica'),
    what: text('We put the right nails in every hole.', 'Ponemos los clavos correctos en cada agujero.'),
    steps: [
      ...openAndClose(6),
      measured('hanger-nails', missingHangerNails, {
        en: 'Nails missing or wrong',
        es: 'Clavos que faltan o son incorrectos',
        without: 16,
      }),
      inspected,
    ],
  },
  {
    id: 'hanger-replace',
    title: text('Replace the hanger', 'Reemplazar el estribo'),
    what: text(
      'We hold the joist up and fit a new hanger of the right size.',
      'Sostenemos la vigueta y ponemos un estribo nuevo de la medida.',
    ),
    steps: [
      ...openAndClose(8),
      ...shored,
      fixed('remove-hanger', 1, 'One hanger.', 'Un estribo.'),
      fixed('hanger-new', 1, 'One hanger.', 'Un estribo.'),
      measured('hanger-nails', allHangerNails, { en: 'Every hole', es: 'Todos los agujeros', without: 16 }),
      inspected,
    ],
  },
  {
    id: 'add-nails',
    title: text('Nail the panel edge to the schedule', 'Clavar el borde del panel según los planos'),
    what: text('We add the nails that are missing or too deep.', 'Agregamos los clavos que faltan o están hundidos.'),
    steps: [
      fixed('protect-place', 1, 'Once for the place.', 'Una vez por lugar.'),
      measured('panel-nails', panelNails, {
        en: 'Nails to add along the edge surveyed',
        es: 'Clavos por agregar en el borde revisado',
        without: 24,
      }),
      measured('panel-staples', (facts) => outcomeNumber(facts, 'staplesToAdd') ?? 0, {
        en: 'Staples where nails would be too tight',
        es: 'Grapas donde los clavos quedarían muy juntos',
        without: 0,
      }),
      inspected,
    ],
  },
  {
    id: 're-shim',
    title: text('Shim and level', 'Calzar y nivelar'),
    what: text('We fill the gaps and level the members.', 'Llenamos los espacios y nivelamos los elementos.'),
    steps: [
      fixed('protect-place', 1, 'Once for the place.', 'Una vez por lugar.'),
      measured('shim-level', (facts) => memberCount(facts) ?? 1, {
        en: 'Members measured',
        es: 'Elementos medidos',
        without: 1,
      }),
    ],
  },
  {
    id: 'member-sister',
    title: text('Sister the member', 'Reforzar con madera gemela'),
    what: text(
      'We cut out the bad wood and bolt a full new member beside it.',
      'Cortamos la madera mala y fijamos al lado un elemento nuevo completo.',
    ),
    steps: [
      ...openAndClose(24),
      ...shored,
      assumed('remove-member', 2, 'The decayed length.', 'El largo podrido.'),
      memberLength('sister-member'),
      inspected,
    ],
  },
  {
    id: 'member-replace',
    title: text('Replace the member', 'Reemplazar el elemento'),
    what: text(
      'We hold the load up, take the bad member out and set a new one.',
      'Sostenemos la carga, sacamos el elemento malo y ponemos uno nuevo.',
    ),
    steps: [
      ...openAndClose(32),
      ...shored,
      memberLength('remove-member'),
      memberLength('replace-member'),
      fixed('positive-connection', 2, 'Both ends.', 'Ambas puntas.'),
      inspected,
    ],
  },
  {
    id: 'lead-safe-work',
    title: text('Lead-safe work by a certified firm', 'Trabajo seguro con plomo por empresa certificada'),
    what: text(
      'A certified firm seals off the work, keeps dust in, and cleans and checks at the end.',
      'Una empresa certificada aísla el trabajo, contiene el polvo, limpia y verifica al final.',
    ),
    steps: [
      measured('lead-safe-setup', roomsToContain, { en: 'Places to contain', es: 'Lugares por contener', without: 1 }),
      measured('lead-safe-cleanup', roomsToContain, { en: 'Places to clean', es: 'Lugares por limpiar', without: 1 }),
    ],
  },
  {
    id: 'engineer-letter',
    title: text('Ask the engineer', 'Consultar al ingeniero'),
    what: text(
      'A licensed engineer looks at it and writes what must be done.',
      'Un ingeniero con licencia lo revisa y escribe qué se debe hacer.',
    ),
    steps: [fixed('engineer-letter', 1, 'One visit.', 'Una visita.')],
  },
];

/** Rooms with painted surface disturbed, and the outside as one more. */
function roomsToContain(facts: RepairFacts): number | undefined {
  const rooms = facts.inputs.interiorSf;
  const outside = (inputNumber(facts, 'exteriorSf') ?? 0) > 0 ? 1 : 0;
  if (typeof rooms === 'number') return Math.max(1, (rooms > 0 ? 1 : 0) + outside);
  if (!Array.isArray(rooms)) return undefined;
  const disturbed = rooms.filter((room) => (typeof room === 'number' ? room : room?.areaSf) > 0);
  return Math.max(1, disturbed.length + outside);
}
