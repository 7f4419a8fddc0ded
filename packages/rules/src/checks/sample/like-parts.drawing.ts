import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'Like wall ends side by side; one lacks the hardware the others have',
    'Extremos de pared iguales, lado a lado; a uno le falta el herraje de los demás',
  ),
  shapes: [
    { box: [16, 14, 26, 82], look: 'panel' },
    { box: [16, 14, 7, 82], look: 'wood' },
    { box: [58, 14, 26, 82], look: 'panel' },
    { box: [58, 14, 7, 82], look: 'wood' },
    { box: [100, 14, 26, 82], look: 'panel' },
    { box: [100, 14, 7, 82], look: 'wood' },
    { box: [142, 14, 26, 82], look: 'panel' },
    { box: [142, 14, 7, 82], look: 'wood' },
    { box: [23, 76, 6, 14], look: 'metal' },
    { line: [26, 68, 26, 108], kind: 'thick' },
    { box: [65, 76, 6, 14], look: 'metal' },
    { line: [68, 68, 68, 108], kind: 'thick' },
    { box: [149, 76, 6, 14], look: 'metal' },
    { line: [152, 68, 152, 108], kind: 'thick' },
    { box: [8, 96, 164, 12], look: 'concrete' },
    { box: [104, 66, 12, 28], look: 'loss' },
    { point: [50, 58, 66, 80], of: 'groups.withHardware' },
  ],
};
