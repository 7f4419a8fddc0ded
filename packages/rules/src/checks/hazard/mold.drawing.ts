import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A wall with a stained patch low down and a wet pipe above it',
    'Una pared con una mancha abajo y un tubo mojado encima',
  ),
  shapes: [
    { box: [14, 10, 140, 100], look: 'opening' },
    { box: [14, 10, 140, 6], look: 'wood' },
    { box: [14, 104, 140, 6], look: 'wood' },
    { box: [14, 16, 6, 88], look: 'wood' },
    { box: [148, 16, 6, 88], look: 'wood' },
    { box: [20, 30, 128, 8], look: 'metal' },
    { path: 'M70 44 Q64 52 70 54 Q76 52 70 44 Z', kind: 'thick' },
    { path: 'M70 60 Q65 67 70 69 Q75 67 70 60 Z', kind: 'thick' },
    { box: [40, 74, 66, 30], look: 'unseen' },
    { circle: [56, 92, 8], look: 'loss' },
    { circle: [70, 84, 6], look: 'loss' },
    { circle: [84, 94, 9], look: 'loss' },
    { mark: 'nail', at: [52, 80, 60, 98, 66, 94, 76, 90, 94, 84, 98, 98, 46, 98, 78, 80] },
    { point: [128, 62, 104, 76], of: 'areaSf' },
    { point: [128, 48, 72, 48], of: 'sourceFixed' },
  ],
};
