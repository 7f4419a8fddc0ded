import { text } from '../../kernel/index.ts';
import { fixed, inputNumber, measured, outcomeNumber, type Repair, type RepairFacts } from '../define-repair.ts';
import { inspected, openAndClose, shored } from '../steps.ts';

const sum = (...parts: (number | undefined)[]): number | undefined =>
  parts.some((part) => part === undefined) ? undefined : parts.reduce<number>((total, part) => total + (part ?? 0), 0);

const allHangerNails = (facts: RepairFacts): number | undefined =>
  sum(inputNumber(facts, 'header.specified'), inputNumber(facts, 'joist.specified'));

const missingHangerNails = (facts: RepairFacts): number | undefined => {
  const allWrong = facts.inputs.rightFastener === false || facts.inputs.loose === true;
  return allWrong
    ? allHangerNails(facts)
    : sum(outcomeNumber(facts, 'headerToAdd'), outcomeNumber(facts, 'joistToAdd'));
};

const memberCount = (facts: RepairFacts): number | undefined =>
  Array.isArray(facts.inputs.members) ? facts.inputs.members.length : undefined;

/** What a member rests on or hangs in. */
export const seatRepairs: readonly Repair[] = [
  {
    id: 'seat-restore',
    title: text('Shore and rebuild the seat', 'Apuntalar y rehacer el apoyo'),
    what: text(
      'We hold the beam up, then build a full seat under it.',
      'Sostenemos la viga y construimos un apoyo completo debajo.',
    ),
    steps: [
      ...openAndClose(12),
      ...shored,
      fixed('seat-support', 1, 'One seat.', 'Un apoyo.'),
      fixed('positive-connection', 1, 'One seat.', 'Un apoyo.'),
      inspected,
    ],
  },
  {
    id: 'seat-connect',
    title: text('Fasten the member to its seat', 'Sujetar el elemento a su apoyo'),
    what: text('We fasten the beam so it cannot slip off.', 'Sujetamos la viga para que no se salga.'),
    steps: [...openAndClose(6), fixed('positive-connection', 1, 'One seat.', 'Un apoyo.'), inspected],
  },
  {
    id: 'hanger-refasten',
    title: text('Nail the hanger as specified', 'Clavar el estribo como se especifica'),
    what: text('We put the right nails in every hole.', 'Ponemos los clavos correctos en cada agujero.'),
    steps: [
      ...openAndClose(6),
      measured('hanger-nails', missingHangerNails, {
        en: 'Nails missing or wrong',
        es: 'Clavos que faltan o son incorrectos',
        without: 16,
      }),
      inspected,
    ],
  },
  {
    id: 'hanger-replace',
    title: text('Replace the hanger', 'Reemplazar el estribo'),
    what: text(
      'We hold the joist up and fit a new hanger of the right size.',
      'Sostenemos la vigueta y ponemos un estribo nuevo de la medida.',
    ),
    steps: [
      ...openAndClose(8),
      ...shored,
      fixed('remove-hanger', 1, 'One hanger.', 'Un estribo.'),
      fixed('hanger-new', 1, 'One hanger.', 'Un estribo.'),
      measured('hanger-nails', allHangerNails, { en: 'Every hole', es: 'Todos los agujeros', without: 16 }),
      inspected,
    ],
  },
  {
    id: 're-shim',
    title: text('Shim and level', 'Calzar y nivelar'),
    what: text('We fill the gaps and level the members.', 'Llenamos los espacios y nivelamos los elementos.'),
    steps: [
      fixed('protect-place', 1, 'Once for the place.', 'Una vez por lugar.'),
      measured('shim-level', (facts) => memberCount(facts) ?? 1, {
        en: 'Members measured',
        es: 'Elementos medidos',
        without: 1,
      }),
    ],
  },
  {
    id: 'connector-add',
    title: text('Add a metal connector', 'Agregar un conector metálico'),
    what: text('We fasten the end with a metal connector.', 'Sujetamos la punta con un conector metálico.'),
    steps: [...openAndClose(6), fixed('positive-connection', 1, 'One end.', 'Una punta.'), inspected],
  },
];
