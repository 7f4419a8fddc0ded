import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const panelLayoutCard = {
  id: 'shear-wall.panel-layout',
  title: text('Panel pieces and their edges', 'Piezas de panel y sus bordes'),
  question: text('Was a wall panel cut or pieced together?', '¿Un panel de la pared está cortado o hecho de pedazos?'),
  element: 'panels',
  role: 'lateral',
  lossMode: 'panel-nails',
  drawing: () => import('./panel-layout.drawing.ts'),
} as const satisfies CheckCard;
