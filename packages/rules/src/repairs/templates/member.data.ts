import { text } from '../../kernel/index.ts';
import { assumed, fixed, measured, outcomeNumber, type Repair, type RepairFacts } from '../define-repair.ts';
import { inspected, memberLength, openAndClose, shored } from '../steps.ts';

const bothSidesOfTie = (facts: RepairFacts): number | undefined => {
  const eachSide = outcomeNumber(facts, 'requiredNailsEachSide');
  return eachSide === undefined ? undefined : 2 * eachSide;
};

/** Studs, joists, beams and plates. */
export const memberRepairs: readonly Repair[] = [
  {
    id: 'plate-tie',
    title: text('Tie the cut plate with metal', 'Atar la solera cortada con metal'),
    what: text(
      'We bridge the cut with a steel strap nailed on both sides.',
      'Cruzamos el corte con una placa de acero clavada en ambos lados.',
    ),
    steps: [
      ...openAndClose(8),
      fixed('plate-tie', 1, 'One cut.', 'Un corte.'),
      measured('tie-nails', bothSidesOfTie, {
        en: 'Nails asked on both sides',
        es: 'Clavos pedidos en ambos lados',
        without: 16,
      }),
      inspected,
    ],
  },
  {
    id: 'member-sister',
    title: text('Sister the member', 'Reforzar con madera gemela'),
    what: text(
      'We cut out the bad wood and bolt a full new member beside it.',
      'Cortamos la madera mala y fijamos al lado un elemento nuevo completo.',
    ),
    steps: [
      ...openAndClose(24),
      ...shored,
      assumed('remove-member', 2, 'The decayed length.', 'El largo podrido.'),
      memberLength('sister-member'),
      inspected,
    ],
  },
  {
    id: 'member-replace',
    title: text('Replace the member', 'Reemplazar el elemento'),
    what: text(
      'We hold the load up, take the bad member out and set a new one.',
      'Sostenemos la carga, sacamos el elemento malo y ponemos uno nuevo.',
    ),
    steps: [
      ...openAndClose(32),
      ...shored,
      memberLength('remove-member'),
      memberLength('replace-member'),
      fixed('positive-connection', 2, 'Both ends.', 'Ambas puntas.'),
      inspected,
    ],
  },
  {
    id: 'stud-sister',
    title: text('Sister the stud', 'Reforzar el pie derecho'),
    what: text(
      'We nail a whole new stud beside the one that is cut.',
      'Clavamos un pie derecho entero junto al cortado.',
    ),
    steps: [...openAndClose(12), memberLength('sister-member'), inspected],
  },
  {
    id: 'wood-treat',
    title: text('Treat the wood that stays', 'Tratar la madera que se queda'),
    what: text(
      'We scrape the wood clean and brush on a borate that keeps rot and insects out.',
      'Raspamos la madera y aplicamos un borato que evita pudrición e insectos.',
    ),
    steps: [...openAndClose(8), memberLength('treat-wood'), inspected],
  },
];
