import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const moldCard = {
  id: 'hazard.mold',
  title: text('Mold', 'Moho'),
  question: text('Is there mold, or a musty smell?', '¿Hay moho u olor a humedad?'),
  element: 'hazard',
  role: 'hazard',
  drawing: () => import('./mold.drawing.ts'),
} as const satisfies CheckCard;
