import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A joist in its hanger, looking along the joist and from the side',
    'Una vigueta en su estribo, mirando a lo largo y de lado',
  ),
  shapes: [
    { box: [4, 24, 88, 76], look: 'wood' },
    { box: [16, 44, 14, 40], look: 'metal' },
    { box: [66, 44, 14, 40], look: 'metal' },
    { box: [33, 34, 30, 48], look: 'wood-end' },
    { line: [30, 44, 30, 90, 66, 90, 66, 44], kind: 'thick' },
    { mark: 'nail', at: [23, 51, 23, 77, 73, 51, 73, 64] },
    { mark: 'hole', at: [23, 64, 73, 77] },
    { box: [106, 24, 16, 76], look: 'wood-end' },
    { box: [128, 34, 49, 48], look: 'wood' },
    { line: [124, 46, 124, 90, 162, 90], kind: 'thick' },
    { line: [124, 46, 136, 46, 148, 82], kind: 'thin' },
    { mark: 'nail', at: [133, 56, 137, 70] },
    { dim: [33, 34, 63, 34], off: -20, of: 'memberWidthIn' },
    { dim: [30, 90, 66, 90], off: 20, of: 'hangerWidthIn' },
    { dim: [122, 34, 128, 34], off: -20, of: 'endGapIn' },
    { dim: [154, 82, 154, 90], off: -10, of: 'seatGapIn' },
    { dim: [33, 34, 33, 82], off: 22, of: 'joistDepthIn' },
    { dim: [66, 44, 66, 90], off: -20, of: 'hangerDepthIn' },
    { point: [10, 112, 23, 77], of: 'header.installed' },
    { point: [156, 112, 137, 70], of: 'joist.installed' },
  ],
};
