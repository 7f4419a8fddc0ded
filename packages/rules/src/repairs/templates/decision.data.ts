import { text } from '../../kernel/index.ts';
import { fixed, measured, outcomeNumber, type Repair, type RepairFacts } from '../define-repair.ts';
import { inspected } from '../steps.ts';

const OPENED_SF_EACH = 4;

/** Square feet to open for the places still to be looked at, 4 for each. */
const moreOpenedSf = (facts: RepairFacts): number | undefined => {
  const places = outcomeNumber(facts, 'openMore');
  return places === undefined || places <= 0 ? undefined : places * OPENED_SF_EACH;
};

/** Opening more, and the papers of others. */
export const decisionRepairs: readonly Repair[] = [
  {
    id: 'open-more',
    title: text('Open more of the similar places', 'Abrir más lugares iguales'),
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
