import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A house from the side: its weight, pushed sideways, is held at the base',
    'Una casa de lado: su peso, empujado de costado, se sostiene en la base',
  ),
  shapes: [
    { line: [8, 106, 172, 106], kind: 'thick' },
    { box: [56, 96, 76, 10], look: 'concrete' },
    { box: [60, 62, 68, 34], look: 'panel' },
    { box: [60, 30, 68, 32], look: 'panel' },
    { line: [60, 62, 128, 62], kind: 'thick' },
    { outline: [52, 30, 94, 8, 136, 30], look: 'wood' },
    { box: [72, 40, 12, 14], look: 'opening' },
    { box: [104, 40, 12, 14], look: 'opening' },
    { box: [86, 72, 14, 24], look: 'opening' },
    { line: [18, 30, 48, 30], kind: 'thick' },
    { line: [40, 24, 48, 30, 40, 36], kind: 'thick' },
    { line: [28, 62, 52, 62], kind: 'thick' },
    { line: [44, 56, 52, 62, 44, 68], kind: 'thick' },
    { line: [166, 101, 138, 101], kind: 'thick' },
    { line: [146, 95, 138, 101, 146, 107], kind: 'thick' },
    { line: [94, 18, 94, 118], kind: 'center' },
    { point: [150, 46, 128, 62], of: 'stories' },
    { point: [150, 20, 110, 22], of: 'weightLb' },
    { point: [24, 114, 40, 106], of: 'site' },
  ],
};
