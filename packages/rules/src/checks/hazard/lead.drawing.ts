import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'An old painted window and wall with flaking paint',
    'Una ventana y una pared viejas con pintura que se descascara',
  ),
  shapes: [
    { box: [26, 8, 92, 104], look: 'wood' },
    { box: [42, 20, 60, 74], look: 'opening' },
    { line: [72, 20, 72, 94], kind: 'thick' },
    { line: [42, 57, 102, 57], kind: 'thick' },
    { box: [36, 94, 72, 8], look: 'wood' },
    { outline: [29, 40, 36, 37, 38, 44, 33, 50, 28, 46], look: 'loss' },
    { outline: [106, 66, 114, 64, 115, 73, 109, 78, 104, 72], look: 'loss' },
    { outline: [62, 10, 72, 9, 74, 15, 65, 17], look: 'loss' },
    { outline: [84, 95, 94, 96, 93, 101, 83, 101], look: 'loss' },
    { outline: [122, 94, 128, 91, 130, 97], look: 'ink' },
    { outline: [20, 104, 14, 102, 16, 109], look: 'ink' },
    { outline: [124, 107, 131, 106, 128, 112], look: 'ink' },
    { point: [150, 40, 114, 68], of: 'exteriorSf' },
    { point: [150, 16, 72, 14], of: 'interiorSf.areaSf' },
    { point: [150, 74, 90, 98], of: 'windowReplaced' },
  ],
};
