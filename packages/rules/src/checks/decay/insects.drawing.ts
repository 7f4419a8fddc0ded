import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A sill on its footing cut across: a mud tube up the footing, eaten wood, and a probe',
    'Una solera sobre su cimiento, en corte: un tubo de barro, madera comida y un punzón',
  ),
  shapes: [
    { box: [24, 62, 60, 54], look: 'concrete' },
    { box: [30, 36, 48, 26], look: 'wood-end' },
    { outline: [78, 36, 78, 62, 54, 62, 58, 55, 52, 48, 60, 42, 64, 36], look: 'gap' },
    { outline: [78, 36, 78, 62, 54, 62, 58, 55, 52, 48, 60, 42, 64, 36], look: 'loss' },
    { outline: [84, 116, 84, 62, 78, 62, 78, 57, 86, 58, 90, 66, 88, 80, 92, 94, 89, 106, 92, 116], look: 'wood' },
    { line: [8, 116, 172, 116], kind: 'thick' },
    { outline: [60, 48, 124, 45, 124, 51], look: 'metal' },
    { box: [124, 42, 34, 12], look: 'tool' },
    { mark: 'nail', at: [102, 76, 105.5, 77, 109, 76] },
    { line: [101, 73, 104, 79], kind: 'thin' },
    { line: [106, 73, 106, 81], kind: 'thin' },
    { line: [110, 73, 107, 79], kind: 'thin' },
    { dim: [60, 36, 78, 36], off: -14, of: 'probeDepthIn' },
    { point: [124, 98, 91, 92], of: 'tubesRebuilt' },
    { point: [140, 76, 110, 76], of: 'liveSeen' },
  ],
};
