import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A floor of joist bays: some opened, one of them bad, the rest still closed',
    'Un piso de tramos entre viguetas: unos abiertos, uno malo, los demás aún cerrados',
  ),
  shapes: [
    { box: [10, 20, 4, 76], look: 'wood' },
    { box: [30, 20, 4, 76], look: 'wood' },
    { box: [50, 20, 4, 76], look: 'wood' },
    { box: [70, 20, 4, 76], look: 'wood' },
    { box: [90, 20, 4, 76], look: 'wood' },
    { box: [110, 20, 4, 76], look: 'wood' },
    { box: [130, 20, 4, 76], look: 'wood' },
    { box: [150, 20, 4, 76], look: 'wood' },
    { box: [170, 20, 4, 76], look: 'wood' },
    { box: [56, 24, 12, 68], look: 'unseen' },
    { box: [76, 24, 12, 68], look: 'unseen' },
    { box: [116, 24, 12, 68], look: 'unseen' },
    { box: [136, 24, 12, 68], look: 'unseen' },
    { box: [156, 24, 12, 68], look: 'unseen' },
    { box: [14, 56, 16, 22], look: 'loss' },
    { line: [38, 58, 42, 64, 50, 50], kind: 'thick' },
    { line: [98, 58, 102, 64, 110, 50], kind: 'thick' },
    { box: [6, 96, 168, 6], look: 'wood' },
    { box: [6, 14, 168, 6], look: 'wood' },
    { point: [150, 112, 142, 70], of: 'total' },
    { point: [66, 112, 44, 66], of: 'opened' },
    { point: [16, 112, 22, 72], of: 'bad' },
  ],
};
