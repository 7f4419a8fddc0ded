import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const panelCapacityCard = {
  id: 'shear-wall.panel-capacity',
  title: text('Panel wall strength', 'Resistencia de la pared con paneles'),
  question: text('What is this panel wall worth as nailed?', '¿Cuánto vale esta pared tal como está clavada?'),
  element: 'panels',
  role: 'lateral',
  forCrew: false,
  drawing: () => import('./panel-capacity.drawing.ts'),
} as const satisfies CheckCard;
