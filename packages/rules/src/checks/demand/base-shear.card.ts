import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const baseShearCard = {
  id: 'demand.base-shear',
  title: text('Earthquake load, screening', 'Carga de sismo, revisión'),
  question: text(
    'About how hard might an earthquake push this house?',
    '¿Con cuánta fuerza podría empujar un sismo esta casa?',
  ),
  element: 'wall-line',
  role: 'lateral',
  forCrew: false,
  drawing: () => import('./base-shear.drawing.ts'),
} as const satisfies CheckCard;
