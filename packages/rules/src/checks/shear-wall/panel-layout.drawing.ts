import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'Panel pieces on their studs from the front; a joint with nothing behind it is hatched',
    'Piezas de panel sobre sus pies derechos, de frente; la junta sin apoyo está rayada',
  ),
  shapes: [
    { box: [16, 98, 152, 6], look: 'wood' },
    { box: [16, 12, 152, 6], look: 'wood' },
    { box: [118, 18, 4, 80], look: 'wood' },
    { box: [134, 18, 4, 80], look: 'wood' },
    { box: [150, 18, 4, 80], look: 'wood' },
    { box: [164, 18, 4, 80], look: 'wood' },
    { box: [16, 14, 50, 88], look: 'panel' },
    { box: [66, 14, 52, 52], look: 'panel' },
    { box: [66, 66, 52, 36], look: 'panel' },
    { box: [66, 63, 52, 6], look: 'loss' },
    { line: [26, 44, 54, 44], kind: 'thick' },
    { line: [26, 41, 26, 47], kind: 'thick' },
    { line: [54, 41, 54, 47], kind: 'thick' },
    { dim: [16, 104, 66, 104], off: 8, of: 'pieces.xIn' },
    { dim: [66, 104, 118, 104], off: 8, of: 'pieces.widthIn' },
    { dim: [118, 14, 118, 66], off: -8, of: 'pieces.heightIn' },
    { dim: [118, 66, 118, 102], off: -8, of: 'pieces.yIn' },
    { dim: [136, 104, 152, 104], off: 8, of: 'studSpacingIn' },
    { dim: [26, 44, 54, 44], off: 13, of: 'cuts.lengthIn' },
    { dim: [16, 12, 168, 12], off: -6, of: 'partWidthIn' },
    { dim: [168, 12, 168, 104], off: -6, of: 'partHeightIn' },
  ],
};
