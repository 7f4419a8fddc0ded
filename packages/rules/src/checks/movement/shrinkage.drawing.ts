import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A sawn joist dried shorter beside an I-joist that did not, and the floor over them',
    'Una vigueta aserrada que se secó y bajó junto a una vigueta I que no, y el piso encima',
  ),
  shapes: [
    { box: [12, 98, 156, 6], look: 'wood' },
    { box: [44, 38, 24, 60], look: 'wood-end' },
    { box: [44, 28, 24, 10], look: 'loss' },
    { box: [116, 28, 32, 9], look: 'wood-end' },
    { box: [129, 37, 6, 52], look: 'panel' },
    { box: [116, 89, 32, 9], look: 'wood-end' },
    { line: [12, 38, 74, 38, 108, 28, 170, 28], kind: 'thick' },
    { line: [12, 28, 108, 28], kind: 'limit' },
    { dim: [44, 38, 44, 98], off: 14, of: 'members.sizeIn' },
    { dim: [24, 28, 24, 38], off: 8, of: 'toleranceIn' },
    { dim: [56, 104, 132, 104], off: 9, of: 'spacingIn' },
  ],
};
