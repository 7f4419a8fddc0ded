import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const deflectionCard = {
  id: 'level.deflection',
  title: text('Sagging member', 'Elemento con flecha'),
  question: text('Does a joist, beam, rafter or wall bow?', '¿Una vigueta, viga, cabio o pared se comba?'),
  element: 'member',
  role: 'finish',
  drawing: () => import('./deflection.drawing.ts'),
} as const satisfies CheckCard;
