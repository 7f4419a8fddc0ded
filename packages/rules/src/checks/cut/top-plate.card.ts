import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const topPlateCard = {
  id: 'cut.top-plate',
  title: text('Cut top plate', 'Solera superior cortada'),
  question: text(
    'Is the plate on top of the studs cut or bored, for a pipe or a duct?',
    '¿La solera encima de los pies derechos está cortada o perforada, por un tubo o ducto?',
  ),
  element: 'top-plate',
  role: 'lateral',
  lossMode: 'section',
  drawing: () => import('./top-plate.drawing.ts'),
} as const satisfies CheckCard;
