import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const threadEngagementCard = {
  id: 'anchor.thread-engagement',
  title: text('Rod in its nut', 'Varilla en su tuerca'),
  question: text(
    'Does the rod stop inside the nut, or barely reach through it?',
    '¿La varilla termina dentro de la tuerca o apenas la atraviesa?',
  ),
  element: 'hold-down',
  role: 'lateral',
  lossMode: 'rod',
  drawing: () => import('./thread-engagement.drawing.ts'),
} as const satisfies CheckCard;
