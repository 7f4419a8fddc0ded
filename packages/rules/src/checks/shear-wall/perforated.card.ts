import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const perforatedCard = {
  id: 'shear-wall.perforated',
  title: text('Panel wall with openings', 'Pared con paneles y aberturas'),
  question: text(
    'What is a wall worth with its doors and windows?',
    '¿Cuánto vale una pared con sus puertas y ventanas?',
  ),
  element: 'panels',
  role: 'lateral',
  forCrew: false,
  drawing: () => import('./perforated.drawing.ts'),
} as const satisfies CheckCard;
