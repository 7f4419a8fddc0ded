import { assume, choice, group, length, list, named, number, type Text, text } from '../../kernel/index.ts';
import { MIXED_GRAIN_RULES } from '../../standards/mixed-grain-shrinkage/rules.ts';
import { EMC_RANGE_F, EMC_SOURCE } from '../../standards/wood-handbook-gtr-190/equilibrium-moisture.ts';
import type { MovementSpecies } from '../../standards/wood-handbook-gtr-190/shrinkage.ts';

const SPECIES_WORDS: Record<MovementSpecies, Text> = {
  'douglas-fir-coast': text('Douglas fir, coast', 'Abeto Douglas, costa'),
  'douglas-fir-interior-north': text('Douglas fir, interior north', 'Abeto Douglas, interior norte'),
  'douglas-fir-interior-west': text('Douglas fir, interior west', 'Abeto Douglas, interior oeste'),
  'western-larch': text('Western larch', 'Alerce occidental'),
  'western-hemlock': text('Western hemlock', 'Tsuga occidental'),
  'white-fir': text('White fir', 'Abeto blanco'),
  'grand-fir': text('Grand fir', 'Abeto grandis'),
  'noble-fir': text('Noble fir', 'Abeto noble'),
  'lodgepole-pine': text('Lodgepole pine', 'Pino contorta'),
  'engelmann-spruce': text('Engelmann spruce', 'Pícea de Engelmann'),
  'loblolly-pine': text('Loblolly pine', 'Pino taeda'),
  'longleaf-pine': text('Longleaf pine', 'Pino de hoja larga'),
  'shortleaf-pine': text('Shortleaf pine', 'Pino de hoja corta'),
  'slash-pine': text('Slash pine', 'Pino elliottii'),
};
const SPECIES = Object.keys(SPECIES_WORDS) as MovementSpecies[];

const moisture = (label: Text, insteadOf: string) =>
  number({
    unit: 'pct',
    min: 0,
    max: 200,
    needed: { when: { input: insteadOf, known: false } },
    assumes: assume(
      text('The wood has come to rest in the air measured.', 'La madera ya está en equilibrio con el aire medido.'),
      EMC_SOURCE,
    ),
    label,
    howToMeasure: text('From the meter; a reading overrides the air.', 'Del medidor; la lectura vale más que el aire.'),
  });
const air = (label: Text, insteadOf: string) =>
  group({
    needed: 'optional',
    showWhen: { input: insteadOf, known: false },
    label,
    fields: {
      temperatureF: number({
        unit: 'F',
        ...EMC_RANGE_F,
        label: text('Air temperature', 'Temperatura del aire'),
      }),
      humidityPct: number({ unit: 'pct', min: 0, max: 100, label: text('Relative humidity', 'Humedad relativa') }),
    },
  });

const member = {
  name: named({ label: text('Name', 'Nombre'), howToMeasure: text('Such as joist A.', 'Por ejemplo, vigueta A.') }),
  kind: choice({
    options: [
      { value: 'sawn', label: text('Sawn lumber', 'Madera aserrada') },
      { value: 'i-joist', label: text('I-joist', 'Vigueta I') },
      { value: 'lvl', label: text('LVL', 'LVL') },
      { value: 'panel', label: text('Plywood or OSB', 'Contrachapado u OSB') },
    ],
    label: text('What it is', 'Qué es'),
  }),
  grain: choice({
    options: [
      { value: 'tangential', label: text('Flat grain (along the rings)', 'Veta plana (a lo largo de los anillos)') },
      { value: 'radial', label: text('Upright grain (across the rings)', 'Veta vertical (a través de los anillos)') },
      { value: 'mixed', label: text('Mixed or not seen', 'Mixta o no se ve') },
    ],
    default: 'mixed',
    showWhen: { input: 'kind', is: ['sawn'] },
    assumes: assume(
      text('The grain is mixed: nobody looked at the rings.', 'La veta es mixta: nadie miró los anillos.'),
      MIXED_GRAIN_RULES[0].source,
    ),
    label: text('Grain in the direction measured', 'Veta en la dirección medida'),
    picture: 'grain-direction',
  }),
  species: choice({
    options: SPECIES.map((value) => ({ value, label: SPECIES_WORDS[value] })),
    needed: {
      when: {
        all: [
          { input: 'kind', is: ['sawn'] },
          { input: 'grain', is: ['tangential', 'radial'] },
        ],
      },
    },
    showWhen: { input: 'kind', is: ['sawn'] },
    label: text('Species', 'Especie'),
  }),
  sizeIn: length({
    unit: 'in',
    min: 0.0625,
    max: 600,
    label: text('Size across the grain', 'Tamaño a través de la veta'),
    howToMeasure: text('Depth of the joist, or the whole stack.', 'Altura de la vigueta o de todo el conjunto.'),
    picture: 'member-depth',
  }),
  fromPct: moisture(text('Moisture before', 'Humedad antes'), 'fromAir'),
  fromAir: air(text('Or: air before', 'O: aire antes'), 'fromPct'),
  toPct: moisture(text('Moisture after', 'Humedad después'), 'toAir'),
  toAir: air(text('Or: air after', 'O: aire después'), 'toPct'),
} as const;

export const inputs = {
  members: list({
    item: member,
    minItems: 1,
    maxItems: 60,
    label: text('Members side by side', 'Elementos lado a lado'),
  }),
  mixedGrainRule: choice({
    options: MIXED_GRAIN_RULES.map(({ id, title }) => ({ value: id, label: title })),
    default: '0.0025',
    assumes: assume(
      text(
        'Mixed grain moves by 0.0025 of its size for each percent, the most of the published rules.',
        'La veta mixta se mueve 0.0025 de su tamaño por cada 1%, lo más de las reglas publicadas.',
      ),
      MIXED_GRAIN_RULES[0].source,
    ),
    label: text('Rule for mixed grain', 'Regla para veta mixta'),
  }),
  spacingIn: length({
    unit: 'in',
    min: 0.25,
    max: 2400,
    needed: 'optional',
    label: text('Distance between them', 'Distancia entre ellos'),
  }),
  toleranceIn: length({
    unit: 'in',
    min: 0,
    max: 24,
    needed: 'optional',
    label: text('Difference you accept', 'Diferencia que acepta'),
    howToMeasure: text('No code sets it; 1/8 in is often asked.', 'Ningún código la fija; suele pedirse 1/8 in.'),
  }),
} as const;
