import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const rodLossCard = {
  id: 'decay.rod-loss',
  title: text('Rusted rod or bolt', 'Varilla o perno oxidado'),
  question: text(
    'Is a steel rod or anchor bolt rusted thin?',
    '¿Una varilla o perno de anclaje está adelgazado por óxido?',
  ),
  element: 'hold-down',
  role: 'lateral',
  lossMode: 'rod',
  drawing: () => import('./rod-loss.drawing.ts'),
} as const satisfies CheckCard;
