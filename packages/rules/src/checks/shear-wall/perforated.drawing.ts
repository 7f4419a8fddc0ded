import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A paneled wall with a window and a door; the full-height parts beside them carry it',
    'Una pared con paneles, una ventana y una puerta; la sostienen las partes de altura completa',
  ),
  shapes: [
    { box: [18, 90, 150, 9], look: 'concrete' },
    { box: [22, 26, 142, 64], look: 'panel' },
    { box: [22, 21, 142, 5], look: 'wood' },
    { line: [38, 26, 38, 90], kind: 'hidden' },
    { line: [92, 26, 92, 90], kind: 'hidden' },
    { line: [144, 26, 144, 90], kind: 'hidden' },
    { box: [54, 40, 28, 26], look: 'opening' },
    { line: [54, 40, 82, 66], kind: 'thin' },
    { line: [82, 40, 54, 66], kind: 'thin' },
    { box: [104, 40, 22, 50], look: 'opening' },
    { line: [104, 40, 126, 90], kind: 'thin' },
    { line: [126, 40, 104, 90], kind: 'thin' },
    { dim: [22, 21, 22, 90], off: 10, of: 'heightFt' },
    { dim: [22, 99, 164, 99], off: 10, of: 'lengthFt' },
    { dim: [22, 21, 54, 21], off: -9, of: 'segmentsFt.lengthFt' },
    { dim: [82, 21, 104, 21], off: -9, of: 'segmentsFt.lengthFt' },
    { dim: [126, 21, 164, 21], off: -9, of: 'segmentsFt.lengthFt' },
    { dim: [54, 66, 82, 66], off: 10, of: 'openings.widthFt' },
    { dim: [126, 40, 126, 90], off: -9, of: 'openings.heightFt' },
  ],
};
