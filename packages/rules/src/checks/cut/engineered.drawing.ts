import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A truss, an I-joist and a laminated beam, each with a cut that no table covers',
    'Una armadura, una vigueta I y una viga laminada, cada una con un corte que ninguna tabla cubre',
  ),
  shapes: [
    { line: [10, 54, 90, 12, 170, 54, 10, 54], kind: 'thick' },
    { line: [50, 54, 50, 33, 90, 54, 90, 12], kind: 'thick' },
    { line: [90, 54, 130, 33, 130, 54], kind: 'thick' },
    { outline: [102, 41, 112, 36, 116, 45, 106, 50], look: 'gap' },
    { outline: [102, 41, 112, 36, 116, 45, 106, 50], look: 'loss' },
    { box: [14, 68, 50, 9], look: 'wood' },
    { box: [14, 77, 50, 28], look: 'panel' },
    { box: [14, 105, 50, 9], look: 'wood' },
    { circle: [40, 98, 10], look: 'opening' },
    { circle: [40, 98, 10], look: 'loss' },
    { box: [78, 68, 24, 46], look: 'wood' },
    { line: [84, 68, 84, 114], kind: 'thin' },
    { line: [90, 68, 90, 114], kind: 'thin' },
    { line: [96, 68, 96, 114], kind: 'thin' },
    { box: [78, 67, 24, 10], look: 'gap' },
    { box: [78, 68, 24, 9], look: 'loss' },
    { box: [116, 68, 50, 9.2], look: 'wood' },
    { box: [116, 77.2, 50, 9.2], look: 'wood' },
    { box: [116, 86.4, 50, 9.2], look: 'wood' },
    { box: [116, 95.6, 50, 9.2], look: 'wood' },
    { box: [116, 104.8, 50, 9.2], look: 'wood' },
    { circle: [144, 86, 9], look: 'opening' },
    { circle: [144, 86, 9], look: 'loss' },
  ],
};
