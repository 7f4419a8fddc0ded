import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'Rod, nut, washer and post from the side; the rod ends short of the nut face',
    'Varilla, tuerca, arandela y poste de lado; la varilla termina antes de la cara de la tuerca',
  ),
  shapes: [
    { box: [8, 10, 84, 92], look: 'wood' },
    { box: [92, 18, 8, 76], look: 'metal' },
    { box: [100, 26, 40, 60], look: 'bolt' },
    { line: [100, 40, 140, 40], kind: 'thin' },
    { line: [100, 72, 140, 72], kind: 'thin' },
    { box: [20, 45, 100, 22], look: 'bolt' },
    { line: [74, 45, 77, 67], kind: 'thin' },
    { line: [81, 45, 84, 67], kind: 'thin' },
    { line: [88, 45, 91, 67], kind: 'thin' },
    { line: [95, 45, 98, 67], kind: 'thin' },
    { line: [102, 45, 105, 67], kind: 'thin' },
    { line: [109, 45, 112, 67], kind: 'thin' },
    { line: [116, 45, 119, 67], kind: 'thin' },
    { box: [120, 45, 20, 22], look: 'loss' },
    { line: [140, 6, 140, 108], kind: 'limit' },
    { word: text('nut face', 'cara'), at: [136, 15], anchor: 'end' },
    { word: text('post', 'poste'), at: [14, 24] },
    { dim: [120, 67, 140, 67], off: 36, of: 'projectionIn' },
    { dim: [48, 45, 48, 67], off: 12, of: 'diameterIn' },
  ],
};
