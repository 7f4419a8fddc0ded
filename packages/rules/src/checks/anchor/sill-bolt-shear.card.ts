import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const sillBoltShearCard = {
  id: 'anchor.sill-bolt-shear',
  title: text('Sill bolts against sliding', 'Pernos contra deslizamiento'),
  question: text(
    'Are there enough foundation bolts for the load of this wall?',
    '¿Hay suficientes pernos del cimiento para la carga de esta pared?',
  ),
  element: 'sill-bolts',
  role: 'lateral',
  forCrew: false,
  drawing: () => import('./sill-bolt-shear.drawing.ts'),
} as const satisfies CheckCard;
