import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'Water dripping from a pipe through the floor into the room below',
    'Agua que gotea de un tubo a través del piso hasta el cuarto de abajo',
  ),
  shapes: [
    { box: [8, 12, 164, 11], look: 'metal' },
    { box: [80, 9, 14, 17], look: 'bolt' },
    { path: 'M87 30 Q81 38 87 41 Q93 38 87 30 Z', kind: 'thick' },
    { box: [8, 54, 164, 6], look: 'panel' },
    { box: [30, 60, 10, 30], look: 'wood-end' },
    { box: [82, 60, 10, 30], look: 'wood-end' },
    { box: [134, 60, 10, 30], look: 'wood-end' },
    { box: [8, 90, 164, 5], look: 'panel' },
    {
      outline: [60, 54, 112, 54, 108, 60, 92, 60, 92, 78, 98, 90, 116, 95, 62, 95, 76, 90, 82, 78, 82, 60, 64, 60],
      look: 'loss',
    },
    { path: 'M87 99 Q82 106 87 109 Q92 106 87 99 Z', kind: 'thick' },
    { path: 'M66 47 Q74 43 82 47 Q90 51 98 47 Q104 44 108 47', kind: 'thin' },
    { point: [130, 36, 94, 24], of: 'source' },
    { point: [30, 40, 62, 54], of: 'since' },
  ],
};
