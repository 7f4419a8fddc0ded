import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const engineeredCard = {
  id: 'cut.engineered',
  title: text('Cut engineered member', 'Elemento de ingeniería cortado'),
  question: text(
    'Is a truss, I-joist, LVL or glued beam cut or drilled?',
    '¿Una cercha, vigueta I, LVL o viga encolada está cortada o perforada?',
  ),
  element: 'member',
  role: 'gravity',
  drawing: () => import('./engineered.drawing.ts'),
} as const satisfies CheckCard;
