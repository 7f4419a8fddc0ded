import { flag, length, list, number, text } from '../../kernel/index.ts';

export const inputs = {
  lengthFt: length({
    unit: 'ft',
    min: 1,
    max: 400,
    label: text('Length of the whole wall', 'Largo de toda la pared'),
    howToMeasure: text('With its openings.', 'Con sus aberturas.'),
  }),
  heightFt: length({ unit: 'ft', min: 1, max: 60, label: text('Wall height', 'Altura de la pared') }),
  segmentsFt: list({
    minItems: 0,
    maxItems: 60,
    orNumber: 'lengthFt',
    label: text('Full-height parts', 'Partes de altura completa'),
    item: {
      lengthFt: length({ unit: 'ft', min: 0.25, max: 400, label: text('Length of the part', 'Largo de la parte') }),
    },
  }),
  openings: list({
    maxItems: 60,
    label: text('Doors and windows', 'Puertas y ventanas'),
    item: {
      widthFt: length({ unit: 'ft', min: 0, max: 400, label: text('Opening width', 'Ancho de la abertura') }),
      heightFt: length({ unit: 'ft', min: 0, max: 60, label: text('Clear height', 'Altura libre') }),
    },
  }),
  designPlf: number({
    unit: 'plf',
    min: 0,
    max: 5000,
    label: text('Design strength of the panels', 'Resistencia de diseño de los paneles'),
    howToMeasure: text('From the panel wall strength.', 'De la resistencia de la pared con paneles.'),
  }),
  fullHeightEnds: flag({
    needed: 'optional',
    label: text('A full-height part at each end?', '¿Parte de altura completa en cada extremo?'),
  }),
  shearLb: number({
    unit: 'lb',
    min: 0,
    max: 1_000_000,
    needed: 'optional',
    label: text('Shear in this wall', 'Cortante en esta pared'),
    howToMeasure: text('From the engineer, by the same method.', 'Del ingeniero, con el mismo método.'),
  }),
} as const;
