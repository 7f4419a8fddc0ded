import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const moistureCard = {
  id: 'decay.moisture',
  title: text('Wet wood', 'Madera húmeda'),
  question: text('Does wood look or feel wet?', '¿La madera se ve o se siente mojada?'),
  element: 'member',
  role: 'envelope',
  drawing: () => import('./moisture.drawing.ts'),
} as const satisfies CheckCard;
