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

/** A sheet of 4 x 8 ft, and its two short edges. */
const FULL_PANEL_SF = 32;
const FULL_PANEL_LF = 8;
/** A whole sheet over studs at 16 in, nailed at 6 in and 12 in: 48 along its edges, 14 between. */
const FULL_PANEL_NAILS = 62;
const OPENED_SF_EACH = 4;

/** Feet of panel edge with no framing behind, from the measured inches. */
const edgeLengthFt = (facts: RepairFacts): number | undefined => {
  const edgeIn = outcomeNumber(facts, 'unsupportedEdgeIn');
  return edgeIn === undefined || edgeIn <= 0 ? undefined : Math.ceil(edgeIn / 12);
};
/** Square feet to open for the places still to be looked at, 4 for each. */
const moreOpenedSf = (facts: RepairFacts): number | undefined => {
  const places = outcomeNumber(facts, 'openMore');
  return places === undefined || places <= 0 ? undefined : places * OPENED_SF_EACH;
};

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
    id: 'panel-replace',
    title: text('Replace the panel', 'Reemplazar el panel'),
    what: text(
      'We take the cut panel off and nail a whole one on, with wood behind every edge.',
      'Quitamos el panel cortado y clavamos uno entero, con madera detrás de cada borde.',
    ),
    steps: [
      ...openAndClose(FULL_PANEL_SF),
      assumed('remove-panel', FULL_PANEL_SF, 'One panel, 4 x 8 ft.', 'Un panel, 4 x 8 ft.'),
      assumed('panel-blocking', FULL_PANEL_LF, 'Behind the short edges.', 'Detrás de los bordes cortos.'),
      assumed('panel-new', FULL_PANEL_SF, 'One panel, 4 x 8 ft.', 'Un panel, 4 x 8 ft.'),
      assumed(
        'panel-nails',
        FULL_PANEL_NAILS,
        '6 in along the edges, 12 in along the studs between.',
        '6 in en los bordes, 12 in en los pies derechos de en medio.',
      ),
      inspected,
    ],
  },
  {
    id: 'panel-blocking',
    title: text('Back and nail the loose panel edge', 'Respaldar y clavar el borde suelto'),
    what: text(
      'We put wood behind the panel edge and nail it all along.',
      'Ponemos madera detrás del borde del panel y lo clavamos todo.',
    ),
    steps: [
      ...openAndClose(12),
      measured('panel-blocking', edgeLengthFt, {
        en: 'Feet of edge without wood behind',
        es: 'Pies de borde sin madera detrás',
        without: 4,
      }),
      assumed('panel-nails', 16, 'Along the edge.', 'A lo largo del borde.'),
      inspected,
    ],
  },
  {
    id: 'hold-down-new',
    title: text('Add a hold-down', 'Agregar un anclaje contra levantamiento'),
    what: text(
      'We bolt the end post to the foundation so the wall cannot lift.',
      'Fijamos el poste del extremo al cimiento para que la pared no se levante.',
    ),
    steps: [
      ...openAndClose(8),
      fixed('hold-down-new', 1, 'One end of the wall.', 'Un extremo de la pared.'),
      inspected,
    ],
  },
  {
    id: 'anchor-bolt-add',
    title: text('Add anchor bolts', 'Agregar pernos de anclaje'),
    what: text('We bolt the sill to the foundation.', 'Fijamos la solera al cimiento con pernos.'),
    steps: [
      ...openAndClose(8),
      measured('anchor-bolt', (facts) => outcomeNumber(facts, 'boltsToAdd'), {
        en: 'Bolts to add',
        es: 'Pernos por agregar',
        without: 2,
      }),
      inspected,
    ],
  },
  {
    id: 'plate-washer',
    title: text('Set large plate washers', 'Poner arandelas de placa grandes'),
    what: text('We put a wide steel washer under each nut.', 'Ponemos una arandela ancha bajo cada tuerca.'),
    steps: [...openAndClose(6), assumed('plate-washer', 2, 'One for each bolt.', 'Una por perno.'), inspected],
  },
  {
    id: 'rod-replace',
    title: text('Replace the rusted rod', 'Reemplazar la varilla oxidada'),
    what: text(
      'We set a new rod in the concrete beside the rusted one.',
      'Ponemos una varilla nueva en el concreto junto a la oxidada.',
    ),
    steps: [...openAndClose(6), fixed('anchor-replace', 1, 'One rod.', 'Una varilla.'), inspected],
  },
  {
    id: 'stud-sister',
    title: text('Sister the stud', 'Reforzar el pie derecho'),
    what: text(
      'We nail a whole new stud beside the one that is cut.',
      'Clavamos un pie derecho entero junto al cortado.',
    ),
    steps: [...openAndClose(12), memberLength('sister-member'), inspected],
  },
  {
    id: 'connector-add',
    title: text('Add a metal connector', 'Agregar un conector metálico'),
    what: text('We fasten the end with a metal connector.', 'Sujetamos la punta con un conector metálico.'),
    steps: [...openAndClose(6), fixed('positive-connection', 1, 'One end.', 'Una punta.'), inspected],
  },
  {
    id: 'dry-out',
    title: text('Stop the water and dry the wood', 'Detener el agua y secar la madera'),
    what: text(
      'We find where the water comes from, stop it, dry the wood and measure again.',
      'Encontramos de dónde viene el agua, la detenemos, secamos la madera y medimos de nuevo.',
    ),
    steps: [
      ...openAndClose(16),
      fixed('find-water', 1, 'Once for the place.', 'Una vez por lugar.'),
      fixed('dry-wood', 1, 'Once for the place.', 'Una vez por lugar.'),
      inspected,
    ],
  },
  {
    id: 'wood-treat',
    title: text('Treat the wood that stays', 'Tratar la madera que se queda'),
    what: text(
      'We scrape the wood clean and brush on a borate that keeps rot and insects out.',
      'Raspamos la madera y aplicamos un borato que evita pudrición e insectos.',
    ),
    steps: [...openAndClose(8), memberLength('treat-wood'), inspected],
  },
  {
    id: 'mold-cleanup',
    title: text('Stop the water and clean the mold', 'Detener el agua y limpiar el moho'),
    what: text(
      'We stop the water, seal off the spot and clean the mold off.',
      'Detenemos el agua, aislamos el lugar y limpiamos el moho.',
    ),
    steps: [
      fixed('protect-place', 1, 'Once for the place.', 'Una vez por lugar.'),
      fixed('dust-control', 1, 'Once for the place.', 'Una vez por lugar.'),
      fixed('find-water', 1, 'Once for the place.', 'Una vez por lugar.'),
      measured('clean-mold', (facts) => inputNumber(facts, 'areaSf'), {
        en: 'Square feet of mold',
        es: 'Pies² de moho',
        without: 10,
      }),
      fixed('dry-wood', 1, 'Once for the place.', 'Una vez por lugar.'),
    ],
  },
  {
    id: 'dust-control',
    title: text('Keep the dust down', 'Controlar el polvo'),
    what: text(
      'We use water or a vacuum at the tool, and masks, so nobody breathes the dust.',
      'Usamos agua o aspiradora en la herramienta, y mascarillas, para no respirar el polvo.',
    ),
    steps: [fixed('dust-control', 1, 'Once for the place.', 'Una vez por lugar.')],
  },
  {
    id: 'specialist-visit',
    title: text('Bring in a licensed specialist', 'Traer a un especialista con licencia'),
    what: text(
      'A licensed specialist tests it and says what must be done. Nobody touches it before.',
      'Un especialista con licencia lo prueba y dice qué hacer. Nadie lo toca antes.',
    ),
    steps: [fixed('specialist-visit', 1, 'One visit.', 'Una visita.')],
  },
  {
    id: 'open-more',
    title: text('Open more of the like places', 'Abrir más lugares iguales'),
    what: text(
      'We open more places built the same way, look, and close them.',
      'Abrimos más lugares hechos igual, miramos y los cerramos.',
    ),
    steps: [
      fixed('protect-place', 1, 'Once for the place.', 'Una vez por lugar.'),
      measured('open-finish', moreOpenedSf, { en: 'Square feet to open', es: 'Pies² por abrir', without: 8 }),
      measured('close-finish', moreOpenedSf, { en: 'Square feet to close', es: 'Pies² por cerrar', without: 8 }),
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
  {
    id: 'permit-revision',
    title: text('Revise the permit', 'Revisar el permiso'),
    what: text(
      'We bring the changed drawings to the building department and wait for its approval.',
      'Llevamos los planos cambiados al departamento de construcción y esperamos su aprobación.',
    ),
    steps: [fixed('permit-revision', 1, 'One set of drawings.', 'Un juego de planos.')],
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
