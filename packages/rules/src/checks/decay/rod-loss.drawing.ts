import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A rod rusted thin where it leaves the concrete',
    'Una varilla adelgazada por óxido donde sale del concreto',
  ),
  shapes: [
    { box: [20, 84, 140, 30], look: 'concrete' },
    {
      outline: [
        76, 6, 104, 6, 104, 44, 101, 50, 98, 58, 97, 66, 99, 74, 103, 82, 104, 110, 76, 110, 77, 82, 81, 74, 83, 66, 82,
        58, 79, 50, 76, 44,
      ],
      look: 'metal',
    },
    { line: [76, 44, 76, 84], kind: 'hidden' },
    { line: [104, 44, 104, 84], kind: 'hidden' },
    { mark: 'hole', at: [90, 58, 94, 68, 86, 72] },
    { line: [76, 12, 104, 16], kind: 'thin' },
    { line: [76, 19, 104, 23], kind: 'thin' },
    { line: [76, 26, 104, 30], kind: 'thin' },
    { line: [90, 2, 90, 118], kind: 'center' },
    { dim: [76, 36, 104, 36], off: 0, of: 'diameterIn' },
    { dim: [83, 66, 97, 66], off: 0, of: 'remainingIn' },
    { word: text('concrete', 'concreto'), at: [28, 104] },
  ],
};
