import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'The top plate from above with a cut for a pipe and a metal tie past both sides of it',
    'La solera superior desde arriba, con un corte para un tubo y una placa metálica a ambos lados',
  ),
  shapes: [
    { box: [26, 30, 130, 52], look: 'wood' },
    { box: [72, 29, 40, 29], look: 'gap' },
    { box: [72, 30, 40, 28], look: 'loss' },
    { line: [72, 30, 72, 58, 112, 58, 112, 30], kind: 'thick' },
    { circle: [92, 43, 11], look: 'bolt' },
    { box: [42, 63, 100, 12], look: 'metal' },
    { mark: 'nail', row: [46, 69, 66, 69], count: 4 },
    { mark: 'nail', row: [118, 69, 138, 69], count: 4 },
    { dim: [156, 30, 156, 82], off: -10, of: 'widthIn' },
    { dim: [112, 30, 112, 58], off: -12, of: 'cutIn' },
    { dim: [42, 63, 42, 75], off: 24, of: 'tie.widthIn' },
    { dim: [112, 75, 142, 75], off: 22, of: 'tie.pastOpeningIn' },
    { point: [70, 104, 80, 75], of: 'tie.thicknessIn' },
    { point: [40, 104, 54, 69], of: 'tie.nailsEachSide' },
  ],
};
