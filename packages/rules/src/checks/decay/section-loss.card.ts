import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const sectionLossCard = {
  id: 'decay.section-loss',
  title: text('Rotten wood', 'Madera podrida'),
  question: text('Is the wood soft, dark, crumbling or eaten?', '¿La madera está blanda, oscura, quebradiza o comida?'),
  element: 'member',
  role: 'gravity',
  lossMode: 'section',
  drawing: () => import('./section-loss.drawing.ts'),
} as const satisfies CheckCard;
