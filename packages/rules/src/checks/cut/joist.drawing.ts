import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A joist from the side with a notch on top, a hole and a notch over its support',
    'Una vigueta de lado con una muesca arriba, un agujero y una muesca sobre su apoyo',
  ),
  shapes: [
    { outline: [24, 42, 62, 42, 62, 50, 82, 50, 82, 42, 162, 42, 162, 70, 150, 70, 150, 78, 24, 78], look: 'wood' },
    { box: [62, 42, 20, 8], look: 'loss' },
    { line: [62, 42, 62, 50, 82, 50, 82, 42], kind: 'thick' },
    { box: [150, 70, 12, 8], look: 'loss' },
    { line: [162, 70, 150, 70, 150, 78], kind: 'thick' },
    { circle: [116, 60, 8], look: 'opening' },
    { ring: [116, 60, 8], kind: 'thick' },
    { box: [24, 78, 12, 14], look: 'wood-end' },
    { box: [151, 78, 11, 14], look: 'wood-end' },
    { dim: [24, 42, 24, 78], off: 10, of: 'depthIn' },
    { dim: [36, 92, 151, 92], off: 14, of: 'spanFt' },
    { dim: [36, 42, 62, 42], off: -26, of: 'distanceFromSupportFt' },
    { dim: [62, 42, 82, 42], off: -12, of: 'notchLengthIn' },
    { dim: [82, 42, 82, 50], off: -8, of: 'notchIn' },
    { dim: [108, 60, 124, 60], off: -36, of: 'holeIn' },
    { dim: [116, 68, 116, 78], off: -16, of: 'edgeIn' },
    { line: [82, 50, 82, 64], kind: 'thin' },
    { dim: [82, 60, 108, 60], off: 0, of: 'otherCutIn' },
    { dim: [162, 70, 162, 78], off: -5, of: 'endNotchIn' },
    { point: [150, 28, 152, 42], of: 'widthIn' },
  ],
};
