import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const insectsCard = {
  id: 'decay.insects',
  title: text('Signs of insects', 'Señales de insectos'),
  question: text(
    'Are there mud tubes, small holes, dust or eaten wood?',
    '¿Hay tubos de barro, agujeritos, polvillo o madera comida?',
  ),
  element: 'member',
  role: 'hazard',
  drawing: () => import('./insects.drawing.ts'),
} as const satisfies CheckCard;
