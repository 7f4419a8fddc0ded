import { text } from '../../kernel/index.ts';
import { assumed, fixed, measured, outcomeNumber, type Repair } from '../define-repair.ts';
import { inspected, openAndClose } from '../steps.ts';

/** Rods, bolts, washers and hold-downs. */
export const anchorRepairs: readonly Repair[] = [
  {
    id: 'coupler-and-rod',
    title: text('Extend the rod so that it fills its nut', 'Alargar la varilla para que llene su tuerca'),
    what: text(
      'We join a new piece of rod to the short one and set a new washer and nut.',
      'Unimos un tramo nuevo a la varilla corta y ponemos arandela y tuerca nuevas.',
    ),
    steps: [...openAndClose(6), fixed('coupler-rod', 1, 'One rod.', 'Una varilla.'), inspected],
  },
  {
    id: 'hold-down-new',
    title: text('Add a hold-down', 'Agregar un anclaje contra levantamiento'),
    what: text(
      'We bolt the end post to the foundation so the wall cannot lift.',
      'Fijamos el poste del extremo al cimiento para que la pared no se levante.',
    ),
    steps: [
      ...openAndClose(8),
      fixed('hold-down-new', 1, 'One end of the wall.', 'Un extremo de la pared.'),
      inspected,
    ],
  },
  {
    id: 'anchor-bolt-add',
    title: text('Add anchor bolts', 'Agregar pernos de anclaje'),
    what: text('We bolt the sill to the foundation.', 'Fijamos la solera al cimiento con pernos.'),
    steps: [
      ...openAndClose(8),
      measured('anchor-bolt', (facts) => outcomeNumber(facts, 'boltsToAdd'), {
        en: 'Bolts to add',
        es: 'Pernos por agregar',
        without: 2,
      }),
      inspected,
    ],
  },
  {
    id: 'plate-washer',
    title: text('Set large plate washers', 'Poner arandelas de placa grandes'),
    what: text('We put a wide steel washer under each nut.', 'Ponemos una arandela ancha bajo cada tuerca.'),
    steps: [...openAndClose(6), assumed('plate-washer', 2, 'One for each bolt.', 'Una por perno.'), inspected],
  },
  {
    id: 'rod-replace',
    title: text('Replace the rusted rod', 'Reemplazar la varilla oxidada'),
    what: text(
      'We set a new rod in the concrete beside the rusted one.',
      'Ponemos una varilla nueva en el concreto junto a la oxidada.',
    ),
    steps: [...openAndClose(6), fixed('anchor-replace', 1, 'One rod.', 'Una varilla.'), inspected],
  },
];
