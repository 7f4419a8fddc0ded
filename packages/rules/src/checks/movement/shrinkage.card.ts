import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const shrinkageCard = {
  id: 'movement.shrinkage',
  title: text('Members that move differently', 'Elementos que se mueven distinto'),
  question: text(
    'Do joists side by side shrink differently, so the floor steps or squeaks?',
    '¿Viguetas vecinas se encogen distinto y el piso hace escalón o cruje?',
  ),
  element: 'member',
  role: 'finish',
  drawing: () => import('./shrinkage.drawing.ts'),
} as const satisfies CheckCard;
