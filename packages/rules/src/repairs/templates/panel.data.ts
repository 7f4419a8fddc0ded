import { text } from '../../kernel/index.ts';
import { assumed, fixed, measured, outcomeNumber, type Repair, type RepairFacts } from '../define-repair.ts';
import { inspected, openAndClose } from '../steps.ts';

/** Nails to drive at a panel edge; none where staples take their place. */
const panelNails = (facts: RepairFacts): number | undefined =>
  outcomeNumber(facts, 'staplesToAdd') === undefined ? outcomeNumber(facts, 'nailsToAdd') : 0;

/** A sheet of 4 x 8 ft, and its two short edges. */
const FULL_PANEL_SF = 32;

const FULL_PANEL_LF = 8;

/** A whole sheet over studs at 16 in, nailed at 6 in and 12 in: 48 along its edges, 14 between. */
const FULL_PANEL_NAILS = 62;

/** Feet of panel edge with no framing behind, from the measured inches. */
const edgeLengthFt = (facts: RepairFacts): number | undefined => {
  const edgeIn = outcomeNumber(facts, 'unsupportedEdgeIn');
  return edgeIn === undefined || edgeIn <= 0 ? undefined : Math.ceil(edgeIn / 12);
};

/** Panels and their nails. */
export const panelRepairs: readonly Repair[] = [
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
];
