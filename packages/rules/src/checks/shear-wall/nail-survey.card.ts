import { type CheckCard, text } from '../../kernel/index.ts';

/** What a list shows of this check before it is opened. */
export const nailSurveyCard = {
  id: 'shear-wall.nail-survey',
  title: text('Panel edge nails', 'Clavos del borde del panel'),
  question: text(
    'Are the nails at the panel edges sunk too deep, missing, or off the stud?',
    '¿Los clavos del borde del panel están muy hundidos, faltan o no dan en la madera?',
  ),
  element: 'panels',
  role: 'lateral',
  lossMode: 'panel-nails',
  drawing: () => import('./nail-survey.drawing.ts'),
} as const satisfies CheckCard;
