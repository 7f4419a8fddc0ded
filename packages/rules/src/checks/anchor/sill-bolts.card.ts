import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const sillBoltsCard = {
  id: 'anchor.sill-bolts',
  title: text('Sill plate bolts', 'Pernos de la solera'),
  question: text(
    'Are foundation bolts missing, too far apart, or off the plate ends?',
    '¿Faltan pernos del cimiento, están muy separados o lejos de las puntas?',
  ),
  element: 'sill-bolts',
  role: 'lateral',
  drawing: () => import('./sill-bolts.drawing.ts'),
} as const satisfies CheckCard;
