import {
  assume,
  choice,
  flag,
  type InputIssue,
  length,
  number,
  type Partials,
  refuse,
  text,
} from '../../kernel/index.ts';
import { IRC_BEARING_SOURCE } from '../../standards/irc-bearing/bearing.data.ts';
import { FC_PERP_PSI } from '../../standards/nds-2018/bearing.ts';
import { FRAMING_SPECIES } from '../../standards/nds-2018/species.data.ts';

export const inputs = {
  widthIn: length({
    unit: 'in',
    min: 0.25,
    max: 48,
    label: text('Member width', 'Ancho del elemento'),
    howToMeasure: text('Across the bottom of the member.', 'A lo ancho, por debajo.'),
    picture: 'seat-width',
  }),
  bearingLengthIn: length({
    unit: 'in',
    min: 0,
    max: 120,
    label: text('Bearing length', 'Largo de apoyo'),
    howToMeasure: text(
      'Along the member, only where wood really touches. 0 when it only hangs.',
      'A lo largo del elemento, solo donde la madera toca de verdad. 0 si solo cuelga.',
    ),
    picture: 'seat-length',
  }),
  support: choice({
    options: [
      { value: 'wood', label: text('Wood', 'Madera') },
      { value: 'steel', label: text('Steel', 'Acero') },
      { value: 'masonry', label: text('Masonry or concrete', 'Mampostería o concreto') },
    ],
    label: text('It sits on', 'Se apoya en'),
  }),
  sillOnMasonry: choice({
    options: [
      { value: 'three-inches', label: text('3 in, as some officials ask', '3 in, como piden algunos oficiales') },
      { value: 'as-wood', label: text('1-1/2 in, as on any wood', '1-1/2 in, como en toda madera') },
    ],
    needed: 'optional',
    showWhen: { input: 'support', is: ['wood'] },
    assumes: assume(
      text(
        'The wood it sits on asks 1-1/2 in: it is no sill on masonry, or the official does not ask 3 in there.',
        'La madera en que se apoya pide 1-1/2 in: no es solera sobre mampostería, o el oficial no pide 3 in ahí.',
      ),
      IRC_BEARING_SOURCE,
    ),
    label: text('If that wood is a sill on masonry', 'Si esa madera es una solera sobre mampostería'),
  }),
  species: choice({
    options: FRAMING_SPECIES,
    needed: { when: { input: 'fcPerpPsi', known: false } },
    label: text('Species', 'Especie'),
    howToMeasure: text('From the grade stamp.', 'Del sello de grado.'),
  }),
  fcPerpPsi: number({
    unit: 'psi',
    min: 50,
    max: 5000,
    needed: 'optional',
    showWhen: { input: 'species', known: false },
    label: text('Or: design value across the grain', 'O: valor de diseño perpendicular a la fibra'),
  }),
  reactionLb: number({
    unit: 'lb',
    min: 0,
    max: 1_000_000,
    needed: 'optional',
    assumes: assume(
      text(
        'The load is no more than the bearing length of the code was written for.',
        'La carga no pasa de aquella para la que se escribió el largo de apoyo del código.',
      ),
      IRC_BEARING_SOURCE,
    ),
    label: text('Load on this seat, if known', 'Carga en este apoyo, si se sabe'),
  }),
  positiveConnection: flag({
    label: text('Held by a strap, hanger, bolts or nails?', '¿Sujeto con placa, estribo, pernos o clavos?'),
    howToMeasure: text('Friction and shims are no connection.', 'La fricción y las cuñas no sujetan.'),
    picture: 'seat-connection',
  }),
  expectedMovementIn: length({
    unit: 'in',
    min: 0,
    max: 24,
    needed: 'optional',
    assumes: assume(
      text(
        'No movement off the seat is expected: nothing there is drying out, being jacked or settling.',
        'No se espera que se salga del apoyo: nada ahí se está secando, levantando o asentando.',
      ),
    ),
    label: text('Movement expected off the seat', 'Movimiento esperado fuera del apoyo'),
  }),
  atMemberEnd: flag({
    label: text('Within 3 in of the member end?', '¿A menos de 3 in de la punta del elemento?'),
    picture: 'seat-at-end',
  }),
} as const;

/** A design value that is not that of the species named beside it. */
export function otherThanSpecies({ species, fcPerpPsi }: Partials<typeof inputs>): InputIssue[] {
  if (species === undefined || fcPerpPsi === undefined) return [];
  const { psi } = FC_PERP_PSI[species];
  if (fcPerpPsi === psi) return [];
  return [
    refuse(
      ['fcPerpPsi'],
      `${fcPerpPsi} psi`,
      text(`${psi} psi, as its species (species) has`, `${psi} psi, como su especie (species)`),
      text(
        `The species has a design value of ${psi} psi across the grain, not ${fcPerpPsi}: give one of the two.`,
        `La especie tiene un valor de ${psi} psi perpendicular a la fibra, no ${fcPerpPsi}: dé uno de los dos.`,
      ),
    ),
  ];
}
