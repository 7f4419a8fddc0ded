import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const bearingSeatCard = {
  id: 'bearing.seat',
  title: text('Beam or joist seat', 'Apoyo de viga o vigueta'),
  question: text(
    'Does a beam or joist sit on too little, or is it slipping off?',
    '¿Una viga o vigueta se apoya muy poco o se está saliendo?',
  ),
  element: 'seat',
  role: 'gravity',
  drawing: () => import('./seat.drawing.ts'),
} as const satisfies CheckCard;
