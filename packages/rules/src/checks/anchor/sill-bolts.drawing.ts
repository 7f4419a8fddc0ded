import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'Two sill plates on a footing from the side, with their bolts',
    'Dos soleras sobre un cimiento, de lado, con sus pernos',
  ),
  shapes: [
    { box: [14, 58, 160, 40], look: 'concrete' },
    { box: [14, 44, 92, 14], look: 'wood' },
    { box: [108, 44, 66, 14], look: 'wood' },
    { box: [23, 41, 12, 3], look: 'metal' },
    { box: [26.5, 34, 5, 7], look: 'bolt' },
    { box: [83, 41, 12, 3], look: 'metal' },
    { box: [86.5, 34, 5, 7], look: 'bolt' },
    { box: [117, 41, 12, 3], look: 'metal' },
    { box: [120.5, 34, 5, 7], look: 'bolt' },
    { box: [148, 41, 12, 3], look: 'metal' },
    { box: [151.5, 34, 5, 7], look: 'bolt' },
    { line: [27.5, 44, 27.5, 80, 36, 80, 36, 83, 30.5, 83, 30.5, 44], kind: 'hidden' },
    { line: [87.5, 44, 87.5, 80, 96, 80, 96, 83, 90.5, 83, 90.5, 44], kind: 'hidden' },
    { line: [121.5, 44, 121.5, 80, 130, 80, 130, 83, 124.5, 83, 124.5, 44], kind: 'hidden' },
    { line: [152.5, 44, 152.5, 80, 161, 80, 161, 83, 155.5, 83, 155.5, 44], kind: 'hidden' },
    { dim: [14, 44, 106, 44], off: -30, of: 'plates.lengthIn' },
    { dim: [14, 44, 29, 44], off: -18, of: 'plates.boltsIn.atIn' },
    { dim: [14, 98, 89, 98], off: 10, of: 'plates.boltsIn.atIn' },
    { dim: [151.5, 34, 156.5, 34], off: -12, of: 'diameterIn' },
    { dim: [154, 58, 154, 83], off: -14, of: 'embedmentIn' },
  ],
};
