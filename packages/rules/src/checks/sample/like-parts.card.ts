import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const likePartsCard = {
  id: 'sample.like-parts',
  title: text('Odd one out', 'El que no coincide'),
  question: text(
    'Does one of several similar places lack the hardware?',
    '¿A uno de varios lugares iguales le falta el herraje?',
  ),
  element: 'sample',
  role: 'lateral',
  drawing: () => import('./like-parts.drawing.ts'),
} as const satisfies CheckCard;
