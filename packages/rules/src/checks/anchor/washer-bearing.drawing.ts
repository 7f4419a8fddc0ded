import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A square plate washer on the sill from above, with its bolt',
    'Una arandela cuadrada sobre la solera, desde arriba, con su perno',
  ),
  shapes: [
    { box: [10, 30, 160, 58], look: 'wood' },
    { box: [66, 36, 46, 46], look: 'metal' },
    { outline: [106, 59, 97.5, 73.7, 80.5, 73.7, 72, 59, 80.5, 44.3, 97.5, 44.3], look: 'bolt' },
    { circle: [89, 59, 9], look: 'metal' },
    { line: [89, 24, 89, 94], kind: 'center' },
    { line: [56, 59, 122, 59], kind: 'center' },
    { dim: [66, 82, 112, 82], off: 22, of: 'sideIn' },
    { dim: [80, 59, 98, 59], off: -44, of: 'boltDiameterIn' },
    { word: text('sill', 'solera'), at: [16, 46] },
  ],
};
