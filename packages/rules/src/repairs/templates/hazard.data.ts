import { text } from '../../kernel/index.ts';
import { fixed, inputNumber, measured, type Repair, type RepairFacts } from '../define-repair.ts';
import { inspected, openAndClose } from '../steps.ts';

/** Rooms with painted surface disturbed, and the outside as one more. */
function roomsToContain(facts: RepairFacts): number | undefined {
  const rooms = facts.inputs.interiorSf;
  const outside = (inputNumber(facts, 'exteriorSf') ?? 0) > 0 ? 1 : 0;
  if (typeof rooms === 'number') return Math.max(1, (rooms > 0 ? 1 : 0) + outside);
  if (!Array.isArray(rooms)) return undefined;
  const disturbed = rooms.filter((room) => (typeof room === 'number' ? room : room?.areaSf) > 0);
  return Math.max(1, disturbed.length + outside);
}

/** Water, mold, dust, insects and lead. */
export const hazardRepairs: readonly Repair[] = [
  {
    id: 'dry-out',
    title: text('Stop the water and dry the wood', 'Detener el agua y secar la madera'),
    what: text(
      'We find where the water comes from, stop it, dry the wood and measure again.',
      'Encontramos de dónde viene el agua, la detenemos, secamos la madera y medimos de nuevo.',
    ),
    steps: [
      ...openAndClose(16),
      fixed('find-water', 1, 'Once for the place.', 'Una vez por lugar.'),
      fixed('dry-wood', 1, 'Once for the place.', 'Una vez por lugar.'),
      inspected,
    ],
  },
  {
    id: 'mold-cleanup',
    title: text('Stop the water and clean the mold', 'Detener el agua y limpiar el moho'),
    what: text(
      'We stop the water, seal off the spot and clean the mold off.',
      'Detenemos el agua, aislamos el lugar y limpiamos el moho.',
    ),
    steps: [
      fixed('protect-place', 1, 'Once for the place.', 'Una vez por lugar.'),
      fixed('dust-control', 1, 'Once for the place.', 'Una vez por lugar.'),
      fixed('find-water', 1, 'Once for the place.', 'Una vez por lugar.'),
      measured('clean-mold', (facts) => inputNumber(facts, 'areaSf'), {
        en: 'Square feet of mold',
        es: 'Pies² de moho',
        without: 10,
      }),
      fixed('dry-wood', 1, 'Once for the place.', 'Una vez por lugar.'),
    ],
  },
  {
    id: 'dust-control',
    title: text('Keep the dust down', 'Controlar el polvo'),
    what: text(
      'We use water or a vacuum at the tool, and masks, so nobody breathes the dust.',
      'Usamos agua o aspiradora en la herramienta, y mascarillas, para no respirar el polvo.',
    ),
    steps: [fixed('dust-control', 1, 'Once for the place.', 'Una vez por lugar.')],
  },
  {
    id: 'specialist-visit',
    title: text('Bring in a licensed specialist', 'Traer a un especialista con licencia'),
    what: text(
      'A licensed specialist tests it and says what must be done. Nobody touches it before.',
      'Un especialista con licencia lo prueba y dice qué hacer. Nadie lo toca antes.',
    ),
    steps: [fixed('specialist-visit', 1, 'One visit.', 'Una visita.')],
  },
  {
    id: 'lead-safe-work',
    title: text('Lead-safe work by a certified firm', 'Trabajo seguro con plomo por empresa certificada'),
    what: text(
      'A certified firm seals off the work, keeps dust in, and cleans and checks at the end.',
      'Una empresa certificada aísla el trabajo, contiene el polvo, limpia y verifica al final.',
    ),
    steps: [
      measured('lead-safe-setup', roomsToContain, { en: 'Places to contain', es: 'Lugares por contener', without: 1 }),
      measured('lead-safe-cleanup', roomsToContain, { en: 'Places to clean', es: 'Lugares por limpiar', without: 1 }),
    ],
  },
];
