import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const overturningCard = {
  id: 'shear-wall.overturning',
  title: text('Wall lifting at its end', 'Levantamiento del extremo de la pared'),
  question: text('Does the hold-down keep this wall from tipping up?', '¿El anclaje evita que la pared se levante?'),
  element: 'hold-down',
  role: 'lateral',
  forCrew: false,
  drawing: () => import('./overturning.drawing.ts'),
} as const satisfies CheckCard;
