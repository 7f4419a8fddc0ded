import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const waterCard = {
  id: 'hazard.water',
  title: text('Dirty water', 'Agua sucia'),
  question: text('Did water get in, or sewage?', '¿Entró agua o aguas negras?'),
  element: 'hazard',
  role: 'hazard',
  drawing: () => import('./water.drawing.ts'),
} as const satisfies CheckCard;
