import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const asbestosCard = {
  id: 'hazard.asbestos',
  title: text('Asbestos', 'Asbesto'),
  question: text(
    'Is there old pipe wrap, floor, ceiling texture or other suspect material?',
    '¿Hay forro de tubos, piso, textura de techo u otro material viejo sospechoso?',
  ),
  element: 'hazard',
  role: 'hazard',
  drawing: () => import('./asbestos.drawing.ts'),
} as const satisfies CheckCard;
