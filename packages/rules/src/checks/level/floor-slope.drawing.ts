import { type Drawing, text } from '../../kernel/index.ts';

export const drawing: Drawing = {
  title: text(
    'A level held over a sloping floor; the gap under its far end is the rise',
    'Un nivel sobre un piso inclinado; el espacio bajo su punta es el desnivel',
  ),
  shapes: [
    { outline: [8, 74, 172, 98, 172, 108, 8, 84], look: 'wood' },
    { line: [8, 74, 172, 98], kind: 'thick' },
    { box: [20, 58, 126, 17], look: 'tool' },
    { box: [72, 61, 26, 8], look: 'opening' },
    { line: [81, 61, 81, 69], kind: 'thin' },
    { line: [89, 61, 89, 69], kind: 'thin' },
    { circle: [85, 65, 3], look: 'gap' },
    { ring: [85, 65, 2.6], kind: 'thin' },
    { dim: [20, 58, 146, 58], off: -16, of: 'runIn' },
    { dim: [146, 75, 146, 94.2], off: -10, of: 'riseIn' },
  ],
};
