import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const floorSlopeCard = {
  id: 'level.floor-slope',
  title: text('Sloping floor', 'Piso inclinado'),
  question: text('Does the floor slope, or a wall lean?', '¿El piso está inclinado o una pared ladeada?'),
  element: 'floor',
  role: 'finish',
  drawing: () => import('./floor-slope.drawing.ts'),
} as const satisfies CheckCard;
