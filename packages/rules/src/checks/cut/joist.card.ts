import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const joistCard = {
  id: 'cut.joist',
  title: text('Cut or bored joist', 'Vigueta cortada o perforada'),
  question: text(
    'Is a sawn joist, rafter or beam notched or drilled?',
    '¿Una vigueta, cabio o viga aserrada tiene muesca o perforación?',
  ),
  element: 'joist',
  role: 'gravity',
  lossMode: 'section',
  drawing: () => import('./joist.drawing.ts'),
} as const satisfies CheckCard;
