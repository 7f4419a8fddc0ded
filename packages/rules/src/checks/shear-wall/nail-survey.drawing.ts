import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A joint of two panels from the front, and the panel cut open: nails flush, too deep, near the edge and missed',
    'La junta de dos paneles de frente, y el panel cortado: clavos a ras, hundidos, cerca del borde y fuera',
  ),
  shapes: [
    { box: [12, 8, 42, 104], look: 'panel' },
    { box: [57, 8, 42, 104], look: 'panel' },
    { line: [45, 8, 45, 112], kind: 'hidden' },
    { line: [66, 8, 66, 112], kind: 'hidden' },
    { mark: 'nail', row: [49.5, 16, 49.5, 104], count: 6 },
    { mark: 'nail', at: [61.5, 16, 61.5, 33.6, 58.8, 51.2, 61.5, 68.8, 72, 86.4, 61.5, 104] },
    { ring: [61.5, 33.6, 4], kind: 'thick' },
    { box: [128, 8, 12, 104], look: 'panel' },
    { box: [140, 8, 36, 104], look: 'wood' },
    { line: [128, 28, 164, 28], kind: 'thick' },
    { line: [128, 24, 128, 32], kind: 'thick' },
    { box: [128, 48, 6, 8], look: 'gap' },
    { line: [134, 52, 170, 52], kind: 'thick' },
    { line: [134, 48, 134, 56], kind: 'thick' },
    { line: [128, 48, 134, 48], kind: 'thin' },
    { line: [128, 56, 134, 56], kind: 'thin' },
    { dim: [12, 8, 12, 112], off: 7, of: 'surveyedLengthIn' },
    { dim: [49.5, 33.6, 49.5, 51.2], off: 18, of: 'specifiedSpacingIn' },
    { dim: [128, 84, 140, 84], off: 0, of: 'panelThicknessIn' },
    { point: [112, 22, 128, 28], of: 'counts.flush' },
    { point: [112, 44, 134, 52], of: 'counts.overdriven' },
    { point: [88, 44, 58.8, 51.2], of: 'counts.nearEdge' },
    { point: [88, 76, 72, 86.4], of: 'counts.missed' },
  ],
};
