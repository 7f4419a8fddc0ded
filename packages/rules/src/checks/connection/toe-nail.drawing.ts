import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A joist on its plate from the side; the nails go in a third of their length up, at about 30 degrees',
    'Una vigueta sobre su solera; los clavos entran a un tercio de su largo, a unos 30 grados',
  ),
  shapes: [
    { box: [22, 80, 136, 32], look: 'wood' },
    { box: [70, 8, 40, 72], look: 'wood-end' },
    { line: [70, 60.9, 98.5, 110.2], kind: 'thick' },
    { line: [65.7, 63.4, 74.3, 58.4], kind: 'thick' },
    { line: [110, 60.9, 81.5, 110.2], kind: 'hidden' },
    { line: [105.7, 58.4, 114.3, 63.4], kind: 'thin' },
    { line: [70, 36, 70, 112], kind: 'center' },
    { path: 'M70 92 Q78 92 86 88', kind: 'thin' },
    { line: [52, 60.9, 66, 60.9], kind: 'thin' },
    { line: [56, 60.9, 56, 80], kind: 'thin' },
    { line: [53.5, 63.4, 58.5, 58.4], kind: 'thick' },
    { line: [53.5, 82.5, 58.5, 77.5], kind: 'thick' },
    { word: text('1/3', '1/3'), at: [50, 73], anchor: 'end' },
    { word: text('30°', '30°'), at: [54, 99] },
    { line: [90, 26, 132, 26], kind: 'thick' },
    { line: [124, 20, 132, 26, 124, 32], kind: 'thick' },
    { point: [34, 44, 68, 62], of: 'nail' },
    { point: [146, 62, 114, 62], of: 'count' },
    { point: [152, 26, 132, 26], of: 'reactionLb' },
  ],
};
