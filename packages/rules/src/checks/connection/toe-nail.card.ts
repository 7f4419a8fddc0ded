import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const toeNailCard = {
  id: 'connection.toe-nail',
  title: text('Toe-nailed end', 'Punta clavada en ángulo'),
  question: text(
    'Is a joist or block held only by slanted nails?',
    '¿Una vigueta o bloque se sujeta solo con clavos en ángulo?',
  ),
  element: 'connection',
  role: 'gravity',
  forCrew: false,
  drawing: () => import('./toe-nail.drawing.ts'),
} as const satisfies CheckCard;
