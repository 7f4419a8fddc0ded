import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const nailCard = {
  id: 'connection.nail',
  title: text('One nail', 'Un clavo'),
  question: text(
    'Is a nail too thin, too short, or in softer wood than planned?',
    '¿Un clavo es muy delgado, muy corto o está en madera más blanda de lo previsto?',
  ),
  element: 'connection',
  role: 'lateral',
  forCrew: false,
  drawing: () => import('./nail.drawing.ts'),
} as const satisfies CheckCard;
