import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const silicaCard = {
  id: 'hazard.silica',
  title: text('Silica dust', 'Polvo de sílice'),
  question: text(
    'Will you cut, drill, grind or break concrete, brick, stone or plaster?',
    '¿Va a cortar, taladrar, amolar o romper concreto, ladrillo, piedra o yeso?',
  ),
  element: 'hazard',
  role: 'hazard',
  drawing: () => import('./silica.drawing.ts'),
} as const satisfies CheckCard;
