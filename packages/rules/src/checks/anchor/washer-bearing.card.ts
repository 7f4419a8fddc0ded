import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const washerBearingCard = {
  id: 'anchor.washer-bearing',
  title: text('Washer on the plate', 'Arandela sobre la solera'),
  question: text('Is a washer small, or sunk into the wood?', '¿Una arandela es pequeña o está hundida en la madera?'),
  element: 'sill-bolts',
  role: 'lateral',
  forCrew: false,
  drawing: () => import('./washer-bearing.drawing.ts'),
} as const satisfies CheckCard;
