import { assume, choice, flag, length, NEWEST_EDITION, number, type Text, text } from '../../kernel/index.ts';
import { FRAMING_SPECIES } from '../../standards/nds-2018/species.data.ts';
import { EDGE_SPACINGS_IN, GRADES, PANEL_NAILS, THICKNESSES } from '../../standards/sdpws-common/shear-walls.data.ts';

const GRADE_WORDS: Record<(typeof GRADES)[number], Text> = {
  'structural-1': text('Structural I', 'Structural I'),
  sheathing: text('Sheathing, or not stamped', 'Sheathing, o sin sello'),
};
export const STANDARDS = [
  { value: 'sdpws-2008', label: text('SDPWS 2008', 'SDPWS 2008') },
  { value: 'sdpws-2015', label: text('SDPWS 2015', 'SDPWS 2015') },
  { value: 'sdpws-2021', label: text('SDPWS 2021', 'SDPWS 2021') },
] as const;

const UNBLOCKED = { when: { input: 'blocked', is: [false] } } as const;

export const inputs = {
  standard: choice({
    options: STANDARDS,
    needed: 'optional',
    assumes: NEWEST_EDITION,
    label: text('Edition of the wall standard', 'Edición de la norma de paredes'),
  }),
  method: choice({
    options: [
      { value: 'asd', label: text('Allowable stress (ASD)', 'Esfuerzos permisibles (ASD)') },
      { value: 'lrfd', label: text('Load and resistance factors (LRFD)', 'Factores de carga y resistencia (LRFD)') },
    ],
    label: text('Design method', 'Método de diseño'),
    howToMeasure: text('As the load on the plans is given.', 'Como se da la carga en los planos.'),
  }),
  load: choice({
    options: [
      { value: 'seismic', label: text('Earthquake', 'Sismo') },
      { value: 'wind', label: text('Wind', 'Viento') },
    ],
    label: text('Load', 'Carga'),
  }),
  grade: choice({
    options: GRADES.map((value) => ({ value, label: GRADE_WORDS[value] })),
    label: text('Panel grade', 'Grado del panel'),
    howToMeasure: text('From the stamp on the panel.', 'Del sello del panel.'),
  }),
  thickness: choice({
    options: THICKNESSES.map((value) => ({ value, label: text(`${value} in`, `${value} in`) })),
    label: text('Panel thickness', 'Grosor del panel'),
  }),
  nail: choice({
    options: PANEL_NAILS.map((value) => ({ value, label: text(value, value) })),
    label: text('Panel nails', 'Clavos del panel'),
    howToMeasure: text('Pull one; common or galvanized box.', 'Saque uno; común o galvanizado.'),
  }),
  edgeSpacingIn: length({
    unit: 'in',
    min: 2,
    max: 6,
    oneOf: EDGE_SPACINGS_IN,
    label: text('Nail spacing at the panel edges', 'Separación de clavos en los bordes'),
    howToMeasure: text(
      'The largest gap that repeats, rounded up to 2, 3, 4 or 6.',
      'La mayor que se repite, subida a 2, 3, 4 o 6.',
    ),
  }),
  species: choice({
    options: FRAMING_SPECIES,
    needed: { when: { input: 'framingG', known: false } },
    label: text('Stud species', 'Especie de los pies derechos'),
    howToMeasure: text('From the grade stamp.', 'Del sello de grado.'),
  }),
  framingG: number({
    unit: 'G',
    min: 0.3,
    max: 0.8,
    needed: { when: { input: 'species', known: false } },
    showWhen: { input: 'species', known: false },
    label: text('Or: specific gravity of the studs', 'O: densidad relativa de los pies derechos'),
  }),
  blocked: flag({
    label: text('Framing or blocking behind every panel edge?', '¿Madera detrás de todos los bordes del panel?'),
  }),
  studSpacingIn: length({
    unit: 'in',
    min: 4,
    max: 96,
    needed: UNBLOCKED,
    assumes: assume(text('Studs are taken to be 24 in apart or closer.', 'Se toman pies derechos cada 24 in o menos.')),
    label: text('Stud spacing', 'Separación de pies derechos'),
    howToMeasure: text('Center to center, the widest.', 'De centro a centro, la mayor.'),
  }),
  fieldSpacingIn: length({
    unit: 'in',
    min: 1,
    max: 48,
    needed: UNBLOCKED,
    label: text('Nail spacing away from the edges', 'Separación de clavos lejos de los bordes'),
  }),
  heightFt: length({
    unit: 'ft',
    min: 0.5,
    max: 60,
    label: text('Wall height', 'Altura de la pared'),
    howToMeasure: text('Bottom of the plate to top of the plates.', 'De abajo de la solera a arriba de las soleras.'),
  }),
  lengthFt: length({
    unit: 'ft',
    min: 0.5,
    max: 400,
    label: text('Length of full-height wall', 'Largo de la pared de altura completa'),
  }),
  holdDownInsideFace: flag({
    needed: 'optional',
    showWhen: { input: 'nail', is: ['10d'] },
    label: text('Hold-down on the inside of the end post?', '¿Anclaje en la cara interior del poste?'),
  }),
  shareByCapacity: flag({
    needed: 'optional',
    assumes: assume(
      text(
        'The walls of the line are taken to share the load by their stiffness, not by their capacity.',
        'Se toma que las paredes de la línea se reparten la carga por su rigidez, no por su capacidad.',
      ),
    ),
    label: text(
      'Walls of this line share the load by capacity?',
      '¿Las paredes de la línea se reparten por capacidad?',
    ),
  }),
  useThinPanelFootnote: flag({
    needed: 'optional',
    showWhen: {
      all: [
        { input: 'nail', is: ['8d'] },
        { input: 'thickness', is: ['3/8', '7/16'] },
      ],
    },
    label: text('Count the thin-panel footnote?', '¿Contar la nota de panel delgado?'),
    howToMeasure: text(
      'From memory: 3/8 and 7/16 with 8d as 15/32, studs 16 in or closer, or panels across the studs.',
      'De memoria: 3/8 y 7/16 con 8d como 15/32, pies derechos a 16 in o menos, o paneles atravesados.',
    ),
  }),
  panelAcrossStuds: flag({
    needed: 'optional',
    showWhen: { input: 'useThinPanelFootnote', is: [true] },
    label: text('Long side of the panels across the studs?', '¿Lado largo del panel atravesado?'),
  }),
  demandPlf: number({
    unit: 'plf',
    min: 0,
    max: 100_000,
    needed: 'optional',
    label: text('Shear the plans ask of this wall', 'Cortante que los planos piden a esta pared'),
    howToMeasure: text('From the engineer, by the same method.', 'Del ingeniero, con el mismo método.'),
  }),
} as const;
