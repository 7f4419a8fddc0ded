import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const proportionCard = {
  id: 'sample.proportion',
  title: text('Share of bad parts', 'Parte de piezas malas'),
  question: text('How many of many similar parts may be bad?', '¿Cuántas de muchas piezas iguales pueden estar mal?'),
  element: 'sample',
  role: 'lateral',
  drawing: () => import('./proportion.drawing.ts'),
} as const satisfies CheckCard;
