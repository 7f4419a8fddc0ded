import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A sill pushed along its footing, held by bolts',
    'Una solera empujada a lo largo del cimiento, detenida por pernos',
  ),
  shapes: [
    { box: [14, 66, 152, 44], look: 'concrete' },
    { box: [14, 40, 152, 26], look: 'wood' },
    { box: [84, 34, 12, 66], look: 'metal' },
    { box: [70, 34, 40, 6], look: 'metal' },
    { box: [79, 24, 22, 10], look: 'bolt' },
    { line: [86, 24, 86, 34], kind: 'thin' },
    { line: [94, 24, 94, 34], kind: 'thin' },
    { line: [14, 66, 166, 66], kind: 'thick' },
    { line: [24, 53, 62, 53], kind: 'thick' },
    { line: [54, 47, 62, 53, 54, 59], kind: 'thick' },
    { line: [156, 84, 118, 84], kind: 'thick' },
    { line: [126, 78, 118, 84, 126, 90], kind: 'thick' },
    { dim: [84, 24, 96, 24], off: -11, of: 'diameterIn' },
    { dim: [166, 40, 166, 66], off: -6, of: 'sillThicknessIn' },
    { point: [30, 26, 42, 53], of: 'demandLb' },
    { point: [136, 18, 101, 28], of: 'count' },
  ],
};
