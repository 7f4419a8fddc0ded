import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A sagging joist from the side with a string stretched between its ends',
    'Una vigueta pandeada, de lado, con un hilo tenso entre sus puntas',
  ),
  shapes: [
    {
      outline: [
        14, 34, 36, 39.5, 58, 43.5, 74, 45.4, 90, 46, 106, 45.4, 122, 43.5, 144, 39.5, 166, 34, 166, 58, 144, 63.5, 122,
        67.5, 106, 69.4, 90, 70, 74, 69.4, 58, 67.5, 36, 63.5, 14, 58,
      ],
      look: 'wood',
    },
    { box: [14, 60, 12, 30], look: 'wood-end' },
    { box: [154, 60, 12, 30], look: 'wood-end' },
    { line: [8, 34, 172, 34], kind: 'limit' },
    { dim: [90, 34, 90, 46], off: -12, of: 'sagIn' },
    { dim: [26, 90, 154, 90], off: 14, of: 'spanFt' },
    { word: text('string', 'hilo'), at: [90, 22], anchor: 'middle' },
  ],
};
