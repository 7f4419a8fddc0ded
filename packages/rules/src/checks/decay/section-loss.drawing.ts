import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'The end of a member with the lost wood hatched; beside it a margin that is not counted',
    'La punta de un elemento con la madera perdida rayada; junto a ella, un margen que no se cuenta',
  ),
  shapes: [
    { box: [50, 18, 66, 78], look: 'wood-end' },
    {
      outline: [
        50, 18, 116, 18, 116, 27, 98, 29, 80, 26, 64, 29, 60, 40, 62, 58, 59, 74, 68, 81, 84, 79, 100, 82, 116, 80, 116,
        96, 50, 96,
      ],
      look: 'gap',
    },
    {
      outline: [
        50, 18, 116, 18, 116, 27, 98, 29, 80, 26, 64, 29, 60, 40, 62, 58, 59, 74, 68, 81, 84, 79, 100, 82, 116, 80, 116,
        96, 50, 96,
      ],
      look: 'loss',
    },
    { line: [116, 36, 70, 36, 70, 72, 116, 72], kind: 'limit' },
    { dim: [50, 96, 116, 96], off: 14, of: 'widthIn' },
    { dim: [116, 18, 116, 96], off: -34, of: 'depthIn' },
    { dim: [116, 18, 116, 28], off: -12, of: 'lossTopIn' },
    { dim: [116, 81, 116, 96], off: -12, of: 'lossBottomIn' },
    { dim: [50, 18, 62, 18], off: -9, of: 'lossSideIn' },
    { dim: [62, 54, 70, 54], off: 0, of: 'marginIn' },
  ],
};
