import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A joist in its hanger, looking along the joist and from the side',
    'Una vigueta en su estribo, mirando a lo largo y de lado',
  ),
  shapes: [
    { box: [4, 18, 88, 86], look: 'wood' },
    { box: [16, 42, 14, 44], look: 'metal' },
    { box: [66, 42, 14, 44], look: 'metal' },
    { box: [33, 26, 30, 58], look: 'wood-end' },
    { line: [30, 42, 30, 92, 66, 92, 66, 42], kind: 'thick' },
    { mark: 'nail', at: [23, 50, 23, 78, 73, 50, 73, 64] },
    { mark: 'hole', at: [23, 64, 73, 78] },
    { box: [106, 18, 16, 86], look: 'wood-end' },
    { box: [128, 26, 48, 58], look: 'wood' },
    { line: [124, 40, 124, 92, 160, 92], kind: 'thick' },
    { line: [124, 40, 138, 40, 150, 84], kind: 'thin' },
    { mark: 'nail', at: [134, 56, 138, 72] },
    { dim: [33, 26, 63, 26], off: -12, of: 'memberWidthIn' },
    { dim: [30, 92, 66, 92], off: 18, of: 'hangerWidthIn' },
    { dim: [122, 26, 128, 26], off: -12, of: 'endGapIn' },
    { dim: [152, 84, 152, 92], off: -10, of: 'seatGapIn' },
    { point: [10, 112, 23, 78], of: 'header.installed' },
    { point: [160, 110, 138, 72], of: 'joist.installed' },
  ],
};
