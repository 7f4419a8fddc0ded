import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A moisture meter with its pins pushed into a member',
    'Un medidor de humedad con sus puntas clavadas en la madera',
  ),
  shapes: [
    { box: [10, 72, 160, 40], look: 'wood' },
    { box: [64, 8, 52, 46], look: 'tool' },
    { box: [71, 14, 38, 18], look: 'opening' },
    { mark: 'hole', at: [78, 43, 90, 43, 102, 43] },
    { box: [78, 54, 3, 26], look: 'metal' },
    { box: [99, 54, 3, 26], look: 'metal' },
    { word: text('%', '%'), at: [90, 26.5], anchor: 'middle' },
    { point: [40, 18, 71, 22], of: 'readingPct' },
    { point: [140, 62, 102, 64], of: 'meter' },
  ],
};
