import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const hangerCard = {
  id: 'connection.hanger',
  title: text('Joist hanger', 'Estribo de vigueta'),
  question: text(
    'Does a metal hanger miss nails, fit badly, or hang loose?',
    '¿A un estribo metálico le faltan clavos, encaja mal o está flojo?',
  ),
  element: 'hanger',
  role: 'gravity',
  drawing: () => import('./hanger.drawing.ts'),
} as const satisfies CheckCard;
