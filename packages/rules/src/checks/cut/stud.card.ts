import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const studCard = {
  id: 'cut.stud',
  title: text('Cut or bored stud', 'Pie derecho cortado o perforado'),
  question: text(
    'Is a wall stud notched or drilled for a pipe, wire or duct?',
    '¿Un pie derecho tiene muesca o perforación para tubo, cable o ducto?',
  ),
  element: 'stud',
  role: 'gravity',
  lossMode: 'section',
  drawing: () => import('./stud.drawing.ts'),
} as const satisfies CheckCard;
