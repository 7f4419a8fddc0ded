import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const equilibriumMoistureCard = {
  id: 'movement.equilibrium-moisture',
  title: text('Damp air around wood', 'Aire húmedo junto a la madera'),
  question: text(
    'Is the crawlspace, basement or wall so damp that wood stays wet?',
    '¿El sótano, entrepiso o pared es tan húmedo que la madera no se seca?',
  ),
  element: 'member',
  role: 'envelope',
  drawing: () => import('./equilibrium-moisture.drawing.ts'),
} as const satisfies CheckCard;
