import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A nail through a side piece into the main piece, cut open',
    'Un clavo a través de la pieza lateral hasta la principal, en corte',
  ),
  shapes: [
    { box: [34, 24, 126, 22], look: 'wood' },
    { box: [34, 46, 126, 62], look: 'wood' },
    { line: [34, 46, 160, 46], kind: 'thick' },
    { outline: [92, 24, 98, 24, 98, 88, 95, 94, 92, 88], look: 'metal' },
    { box: [86, 21, 18, 3], look: 'metal' },
    { dim: [34, 24, 34, 46], off: 12, of: 'sideThicknessIn' },
    { dim: [92, 24, 98, 24], off: -14, of: 'diameterIn' },
    { dim: [95, 21, 95, 94], off: -36, of: 'lengthIn' },
    { dim: [95, 46, 95, 94], off: 26, of: 'penetrationIn' },
  ],
};
