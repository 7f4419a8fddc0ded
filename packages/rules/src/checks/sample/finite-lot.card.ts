import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const finiteLotCard = {
  id: 'sample.finite-lot',
  title: text('How many more to open', 'Cuántos más abrir'),
  question: text(
    'You opened some of a known number of similar places: enough?',
    '¿Abrió algunos de un número conocido de lugares iguales: bastan?',
  ),
  element: 'sample',
  role: 'lateral',
  drawing: () => import('./finite-lot.drawing.ts'),
} as const satisfies CheckCard;
