import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A stud from its side with a notch in one edge and a hole',
    'Un pie derecho de lado, con una muesca en un canto y un agujero',
  ),
  shapes: [
    { outline: [62, 8, 118, 8, 118, 30, 102, 30, 102, 48, 118, 48, 118, 98, 62, 98], look: 'wood' },
    { box: [102, 30, 16, 18], look: 'loss' },
    { line: [118, 30, 102, 30, 102, 48, 118, 48], kind: 'thick' },
    { circle: [90, 74, 11], look: 'opening' },
    { ring: [90, 74, 11], kind: 'thick' },
    { line: [90, 58, 90, 90], kind: 'center' },
    { line: [74, 74, 106, 74], kind: 'center' },
    { dim: [62, 98, 118, 98], off: 12, of: 'depthIn' },
    { dim: [102, 30, 118, 30], off: -10, of: 'notchIn' },
    { dim: [90, 63, 90, 85], off: 40, of: 'holeIn' },
    { dim: [101, 74, 118, 74], off: 14, of: 'edgeIn' },
  ],
};
