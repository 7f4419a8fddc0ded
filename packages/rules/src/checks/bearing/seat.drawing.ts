import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'The end of a beam on its support, from the side and end on',
    'La punta de una viga sobre su apoyo, de lado y de punta',
  ),
  shapes: [
    { box: [40, 24, 84, 42], look: 'wood' },
    { box: [12, 66, 46, 48], look: 'metal' },
    { line: [40, 66, 58, 66], kind: 'thick' },
    { line: [48, 24, 48, 66], kind: 'hidden' },
    { line: [62, 16, 78, 16], kind: 'thin' },
    { line: [74, 13, 78, 16, 74, 19], kind: 'thin' },
    { box: [142, 24, 24, 42], look: 'wood-end' },
    { box: [136, 66, 36, 34], look: 'metal' },
    { dim: [40, 66, 58, 66], off: 18, of: 'bearingLengthIn' },
    { dim: [142, 66, 166, 66], off: 44, of: 'widthIn' },
    { dim: [40, 24, 48, 24], off: -9, of: 'expectedMovementIn' },
  ],
};
