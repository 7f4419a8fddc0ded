import { assume, length, list, number, type Text, text } from '../../kernel/index.ts';
import { LEVER_SOURCE } from '../../standards/sdpws-common/overturning.data.ts';

const shear = (label: Text) => number({ unit: 'lb', min: 0, max: 1_000_000, label });
const height = (label: Text) => length({ unit: 'ft', min: 0.5, max: 60, label });
const dead = { unit: 'plf', min: 0, max: 100_000 } as const;

export const inputs = {
  shearLb: {
    ...shear(
      text('Shear in this wall, from all stories above', 'Cortante en esta pared, de todos los pisos de arriba'),
    ),
    howToMeasure: text('From the engineer, ASD.', 'Del ingeniero, ASD.'),
  },
  heightFt: height(text('Wall height', 'Altura de la pared')),
  lengthFt: length({ unit: 'ft', min: 0.5, max: 400, label: text('Wall length', 'Largo de la pared') }),
  leverFt: length({
    unit: 'ft',
    min: 0.25,
    max: 400,
    needed: 'optional',
    assumes: assume(
      text(
        'The hold-down is taken to pull no more than 6 in inside the wall end.',
        'Se toma que el anclaje tira a no más de 6 in dentro del extremo de la pared.',
      ),
      LEVER_SOURCE,
    ),
    label: text('Hold-down to the far post', 'Del anclaje al poste del otro extremo'),
    howToMeasure: text(
      'From the rod to the middle of the post that is pressed down.',
      'De la varilla al centro del poste comprimido.',
    ),
  }),
  deadLoadPlf: number({ ...dead, label: text('Dead load on this wall', 'Carga muerta sobre esta pared') }),
  deadFactor: number({
    unit: 'factor',
    min: 0,
    max: 1,
    needed: { when: { input: 'sds', known: false } },
    label: text('Share of dead load that counts', 'Parte de la carga muerta que cuenta'),
    howToMeasure: text('0.6 for wind.', '0.6 para viento.'),
  }),
  sds: number({
    unit: 'g',
    min: 0,
    max: 3,
    needed: { when: { input: 'deadFactor', known: false } },
    showWhen: { input: 'deadFactor', known: false },
    label: text('Or, for earthquakes: S_DS of the site', 'O, por sismo: S_DS del sitio'),
  }),
  stories: list({
    needed: 'optional',
    assumes: assume(text('No wall above this one is counted.', 'No se cuenta ninguna pared encima de esta.')),
    maxItems: 10,
    label: text('Walls stacked above', 'Paredes apiladas arriba'),
    howToMeasure: text('An empty list when there are none.', 'Lista vacía si no hay.'),
    item: {
      shearLb: shear(text('Shear in that wall', 'Cortante en esa pared')),
      heightFt: height(text('Its height', 'Su altura')),
      deadLoadPlf: number({
        ...dead,
        default: 0,
        label: text('Dead load not counted below', 'Carga muerta no contada abajo'),
      }),
    },
  }),
  holdDownCapacityLb: number({
    unit: 'lb',
    min: 0,
    max: 1_000_000,
    needed: 'optional',
    label: text('Hold-down capacity, published', 'Capacidad publicada del anclaje'),
    howToMeasure: text('For its model, post and species.', 'Para su modelo, poste y especie.'),
  }),
  holdDownRemaining: number({
    unit: 'share',
    min: 0,
    max: 1,
    needed: 'optional',
    showWhen: { input: 'holdDownCapacityLb', known: true },
    assumes: assume(
      text('The hold-down is counted whole: check its rod.', 'El anclaje se cuenta entero: revise su varilla.'),
    ),
    label: text('Share of the hold-down that is left', 'Parte del anclaje que queda'),
    howToMeasure: text('From the rod and nut check.', 'De la revisión de varilla y tuerca.'),
  }),
} as const;
