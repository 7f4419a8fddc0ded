import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A paneled wall from the front, and one panel edge up close with its nails and studs',
    'Una pared con paneles de frente, y de cerca un borde de panel con sus clavos y pies derechos',
  ),
  shapes: [
    { box: [22, 92, 74, 10], look: 'concrete' },
    { box: [26, 18, 66, 74], look: 'panel' },
    { box: [26, 13, 66, 5], look: 'wood' },
    { line: [48, 18, 48, 92], kind: 'thick' },
    { line: [70, 18, 70, 92], kind: 'thick' },
    { line: [37, 18, 37, 92], kind: 'hidden' },
    { line: [59, 18, 59, 92], kind: 'hidden' },
    { line: [81, 18, 81, 92], kind: 'hidden' },
    { ring: [48, 26, 9], kind: 'thin' },
    { line: [56, 22, 108, 14], kind: 'thin' },
    { box: [116, 10, 60, 84], look: 'panel' },
    { line: [110, 10, 110, 94], kind: 'hidden' },
    { line: [122, 10, 122, 94], kind: 'hidden' },
    { line: [150, 10, 150, 94], kind: 'hidden' },
    { line: [162, 10, 162, 94], kind: 'hidden' },
    { line: [116, 10, 116, 94], kind: 'thick' },
    { mark: 'nail', row: [119.2, 16, 119.2, 86], count: 8 },
    { mark: 'nail', row: [156, 16, 156, 76], count: 4 },
    { dim: [26, 13, 26, 92], off: 12, of: 'heightFt' },
    { dim: [26, 102, 92, 102], off: 9, of: 'lengthFt' },
    { dim: [119.2, 46, 119.2, 56], off: 15, of: 'edgeSpacingIn' },
    { dim: [156, 36, 156, 56], off: -12, of: 'fieldSpacingIn' },
    { dim: [116, 94, 156, 94], off: 14, of: 'studSpacingIn' },
  ],
};
