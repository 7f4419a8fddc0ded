import { text, type ValueWords } from '../../kernel/index.ts';

/** What the values of a yield-limit check are; `dowel` is the nail or bolt. */
export const YIELD_WORDS: ValueWords = {
  Im: {
    label: text('Mode Im', 'Modo Im'),
    how: text(
      'Main member crushes: diameter x bearing length x strength under the dowel, over R_d.',
      'Se aplasta la pieza principal: diámetro x largo de apoyo x resistencia, entre R_d.',
    ),
  },
  Is: {
    label: text('Mode Is', 'Modo Is'),
    how: text('Side member crushes, worked the same way.', 'Se aplasta la pieza lateral, de igual forma.'),
  },
  II: {
    label: text('Mode II', 'Modo II'),
    how: text(
      'The dowel tilts in both members: k1 times mode Is.',
      'El clavo o perno gira en ambas: k1 por el modo Is.',
    ),
  },
  IIIm: {
    label: text('Mode IIIm', 'Modo IIIm'),
    how: text(
      'One hinge, crushing the main member: k2 times mode Im, over 1 + 2 Re.',
      'Una rótula, se aplasta la principal: k2 por el modo Im, entre 1 + 2 Re.',
    ),
  },
  IIIs: {
    label: text('Mode IIIs', 'Modo IIIs'),
    how: text(
      'One hinge, crushing the side member: k3 x diameter x side length x main strength, over (2 + Re) R_d.',
      'Una rótula, se aplasta la lateral: k3 x diámetro x largo lateral x resistencia principal, entre (2 + Re) R_d.',
    ),
  },
  IV: {
    label: text('Mode IV', 'Modo IV'),
    how: text(
      'Two hinges: diameter squared over R_d, times the root of 2 Fem Fyb / (3 (1 + Re)).',
      'Dos rótulas: diámetro al cuadrado entre R_d, por la raíz de 2 Fem Fyb / (3 (1 + Re)).',
    ),
  },
  governingMode: {
    label: text('Mode that governs', 'Modo que rige'),
    how: text('The one of the six with the least load.', 'El de menor carga de los seis.'),
  },
};
