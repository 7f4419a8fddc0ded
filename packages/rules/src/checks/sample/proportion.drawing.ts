import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A run of like parts; those looked at are marked, the bad ones hatched',
    'Una serie de piezas iguales; las revisadas están marcadas, las malas rayadas',
  ),
  shapes: [
    { box: [14, 12, 30, 26], look: 'opening' },
    { box: [52, 12, 30, 26], look: 'opening' },
    { box: [90, 12, 30, 26], look: 'opening' },
    { box: [128, 12, 30, 26], look: 'opening' },
    { box: [14, 46, 30, 26], look: 'opening' },
    { box: [52, 46, 30, 26], look: 'opening' },
    { box: [90, 46, 30, 26], look: 'opening' },
    { box: [128, 46, 30, 26], look: 'unseen' },
    { box: [14, 80, 30, 26], look: 'opening' },
    { box: [52, 80, 30, 26], look: 'opening' },
    { box: [90, 80, 30, 26], look: 'unseen' },
    { box: [128, 80, 30, 26], look: 'unseen' },
    { line: [23, 26, 27, 31, 36, 19], kind: 'thick' },
    { line: [61, 26, 65, 31, 74, 19], kind: 'thick' },
    { line: [137, 26, 141, 31, 150, 19], kind: 'thick' },
    { line: [23, 60, 27, 65, 36, 53], kind: 'thick' },
    { line: [99, 60, 103, 65, 112, 53], kind: 'thick' },
    { line: [23, 94, 27, 99, 36, 87], kind: 'thick' },
    { line: [61, 94, 65, 99, 74, 87], kind: 'thick' },
    { box: [90, 12, 30, 26], look: 'loss' },
    { box: [52, 46, 30, 26], look: 'loss' },
    { point: [6, 114, 20, 102], of: 'inspected' },
    { point: [124, 42, 114, 32], of: 'bad' },
  ],
};
