import {
  assume,
  type Condition,
  choice,
  type LengthSpec,
  length,
  number,
  type Text,
  text,
} from '../../kernel/index.ts';
import { FRAMING_SPECIES } from '../../standards/nds-2018/species.data.ts';

/** A cut that was measured and is there. */
const isCut = (input: string): Condition => ({ all: [{ input, known: true }, { not: { input, is: [0] } }] });
const NOTCH = isCut('notchIn');
const HOLE = isCut('holeIn');
const LOADED: Condition = { input: 'endShearLb', known: true };

/** A cut is asked for while none is known; 0 says there is none. */
const cut = (label: Text, howToMeasure: Text, others: readonly string[], none: Text) =>
  length({
    unit: 'in',
    min: 0,
    max: 48,
    needed: { when: { all: others.map((input) => ({ input, known: false })) } },
    assumes: assume(none),
    label,
    howToMeasure,
  });
const part = (spec: Omit<LengthSpec, 'needed' | 'min'>) => length({ ...spec, min: 0, needed: 'optional' });

export const inputs = {
  depthIn: length({
    unit: 'in',
    min: 1,
    max: 48,
    label: text('Joist depth', 'Altura de la vigueta'),
    howToMeasure: text('Where it is whole: 9 1/4 for a 2x10.', 'Donde está entera: 9 1/4 en un 2x10.'),
  }),
  spanFt: length({
    unit: 'ft',
    min: 0.5,
    max: 80,
    needed: 'optional',
    showWhen: NOTCH,
    label: text('Span', 'Claro'),
    howToMeasure: text('From support to support.', 'De apoyo a apoyo.'),
  }),
  notchIn: cut(
    text('Depth of a notch along the span', 'Fondo de una muesca en el claro'),
    text('The deepest, in the top or bottom. 0 when none.', 'La más honda, arriba o abajo. 0 si no hay.'),
    ['endNotchIn', 'holeIn'],
    text(
      'No notch along the span was measured: none is taken to be there.',
      'No se midió muesca en el claro: se toma que no hay.',
    ),
  ),
  notchLengthIn: part({
    unit: 'in',
    max: 960,
    showWhen: NOTCH,
    label: text('Length of that notch', 'Largo de esa muesca'),
  }),
  distanceFromSupportFt: part({
    unit: 'ft',
    max: 80,
    showWhen: NOTCH,
    label: text('Notch from the nearer support', 'Muesca desde el apoyo más cercano'),
    howToMeasure: text('To the end of the notch nearer midspan.', 'Hasta la punta de la muesca más al centro.'),
  }),
  notchFace: choice({
    options: [
      { value: 'top', label: text('Top', 'Arriba') },
      { value: 'bottom', label: text('Bottom', 'Abajo') },
    ],
    needed: 'optional',
    showWhen: NOTCH,
    label: text('Notched from', 'Muesca desde'),
  }),
  endNotchIn: cut(
    text('Depth of a notch at the end', 'Fondo de una muesca en la punta'),
    text('Over the support. 0 when none.', 'Sobre el apoyo. 0 si no hay.'),
    ['notchIn', 'holeIn'],
    text(
      'No notch at the end was measured: none is taken to be there.',
      'No se midió muesca en la punta: se toma que no hay.',
    ),
  ),
  holeIn: cut(
    text('Diameter of the hole', 'Diámetro de la perforación'),
    text('The largest one. 0 when none.', 'La mayor. 0 si no hay.'),
    ['notchIn', 'endNotchIn'],
    text('No hole was measured: none is taken to be there.', 'No se midió perforación: se toma que no hay.'),
  ),
  edgeIn: part({
    unit: 'in',
    max: 48,
    showWhen: HOLE,
    label: text('Wood between hole and edge', 'Madera entre perforación y canto'),
    howToMeasure: text('At the top or the bottom, the smaller.', 'Arriba o abajo, la menor.'),
  }),
  otherCutIn: part({
    unit: 'in',
    max: 960,
    showWhen: HOLE,
    assumes: assume(
      text(
        'No other hole or notch is taken to be near the hole.',
        'Se toma que no hay otra perforación ni muesca cerca.',
      ),
    ),
    label: text('Hole to the next hole or notch', 'Perforación hasta la siguiente o una muesca'),
  }),
  widthIn: length({
    unit: 'in',
    min: 0.5,
    max: 24,
    needed: { when: LOADED },
    showWhen: { any: [NOTCH, LOADED] },
    assumes: assume(
      text(
        'The joist is taken to be thinner than 4 in nominal.',
        'Se toma que la vigueta tiene menos de 4 in nominales de grosor.',
      ),
    ),
    label: text('Joist thickness', 'Grosor de la vigueta'),
  }),
  species: choice({
    options: FRAMING_SPECIES,
    needed: { when: LOADED },
    label: text('Species', 'Especie'),
  }),
  endShearLb: number({
    unit: 'lb',
    min: 0,
    max: 1_000_000,
    needed: 'optional',
    assumes: assume(
      text(
        'The load is taken to be no more than the span tables of the code let a whole joist carry.',
        'Se toma que la carga no pasa lo que las tablas de claros del código admiten en una vigueta entera.',
      ),
    ),
    label: text('Shear at the end, if known', 'Cortante en la punta, si se sabe'),
  }),
} as const;
