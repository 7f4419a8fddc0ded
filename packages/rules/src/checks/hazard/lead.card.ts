import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const leadCard = {
  id: 'hazard.lead',
  title: text('Lead paint', 'Pintura con plomo'),
  question: text(
    'Will painted surfaces of an old house be disturbed?',
    '¿Se alterarán superficies pintadas de una casa vieja?',
  ),
  element: 'hazard',
  role: 'hazard',
  drawing: () => import('./lead.drawing.ts'),
} as const satisfies CheckCard;
