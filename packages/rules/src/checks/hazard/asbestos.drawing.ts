import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'Old pipe wrap torn open over square floor tiles',
    'Un forro viejo de tubo, roto, sobre losetas cuadradas',
  ),
  shapes: [
    { box: [8, 34, 164, 16], look: 'metal' },
    { box: [8, 24, 98, 36], look: 'panel' },
    { line: [30, 24, 30, 60], kind: 'thin' },
    { line: [54, 24, 54, 60], kind: 'thin' },
    { line: [78, 24, 78, 60], kind: 'thin' },
    { outline: [106, 24, 118, 28, 112, 34, 124, 40, 114, 46, 122, 54, 106, 60], look: 'gap' },
    { outline: [106, 24, 118, 28, 112, 34, 124, 40, 114, 46, 122, 54, 106, 60], look: 'loss' },
    { mark: 'nail', at: [118, 66, 126, 74, 112, 78, 132, 82] },
    { outline: [30, 88, 150, 88, 172, 114, 8, 114], look: 'opening' },
    { line: [60, 88, 49, 114], kind: 'thin' },
    { line: [90, 88, 90, 114], kind: 'thin' },
    { line: [120, 88, 131, 114], kind: 'thin' },
    { line: [20, 100, 160, 100], kind: 'thin' },
    { point: [140, 14, 112, 30], of: 'materials.kind' },
    { point: [20, 76, 40, 60], of: 'materials.lengthFt' },
    { point: [168, 82, 140, 104], of: 'materials.areaSf' },
  ],
};
