import { assume, choice, count, length, list, named, number, text } from '../../kernel/index.ts';
import { ASD_EARTHQUAKE_SOURCE, SITE_SOURCE } from '../../standards/asce-7/base-shear.data.ts';

export const inputs = {
  weightLb: number({
    unit: 'lb',
    min: 100,
    max: 10_000_000,
    label: text('Weight of the house above the base', 'Peso de la casa sobre la base'),
    howToMeasure: text('Roof, floors and walls, by the engineer.', 'Techo, pisos y paredes, según el ingeniero.'),
  }),
  stories: count({ min: 1, max: 10, label: text('Stories', 'Pisos') }),
  sds: number({
    unit: 'g',
    min: 0,
    max: 4,
    needed: { when: { input: 'ss', known: false } },
    assumes: assume(
      text('S_DS follows from the mapped Ss and the ground.', 'S_DS sale del Ss del mapa y del terreno.'),
      SITE_SOURCE,
    ),
    label: text('S_DS of the site', 'S_DS del sitio'),
    howToMeasure: text('From the plans or the engineer.', 'De los planos o del ingeniero.'),
  }),
  ss: number({
    unit: 'g',
    min: 0,
    max: 5,
    needed: 'optional',
    showWhen: { input: 'sds', known: false },
    label: text('Or: mapped Ss', 'O: Ss del mapa'),
  }),
  site: choice({
    options: [
      { value: 'rock', label: text('Rock', 'Roca') },
      { value: 'soil', label: text('Soil, or not known', 'Suelo, o no se sabe') },
    ],
    needed: {
      when: {
        all: [
          { input: 'sds', known: false },
          { input: 'ss', known: true },
        ],
      },
    },
    showWhen: { input: 'ss', known: true },
    label: text('Ground', 'Terreno'),
  }),
  system: choice({
    options: [
      { value: 'bearing-wall', label: text('Panel walls that carry weight', 'Paredes con paneles que cargan') },
      { value: 'building-frame', label: text('Panel walls in a frame', 'Paredes con paneles en un marco') },
      { value: 'other-panels', label: text('Gypsum, stucco or other', 'Yeso, estuco u otro') },
    ],
    label: text('What braces the house', 'Qué arriostra la casa'),
  }),
  importance: number({
    unit: 'factor',
    min: 1,
    max: 1.5,
    default: 1,
    assumes: assume(
      text('It is an ordinary house, importance factor 1.', 'Es una casa común, factor de importancia 1.'),
      ASD_EARTHQUAKE_SOURCE,
    ),
    label: text('Importance factor', 'Factor de importancia'),
    howToMeasure: text('1 for houses.', '1 para casas.'),
  }),
  lines: list({
    needed: 'optional',
    maxItems: 30,
    label: text('Wall lines that take it, one direction', 'Líneas de pared que lo toman, una dirección'),
    item: {
      name: named({ label: text('Name', 'Nombre') }),
      positionFt: length({
        unit: 'ft',
        min: 0,
        max: 1000,
        label: text('Place across the house', 'Lugar a lo ancho de la casa'),
        howToMeasure: text('From the first line.', 'Desde la primera línea.'),
      }),
      wallFt: length({
        unit: 'ft',
        min: 0.5,
        max: 1000,
        needed: 'optional',
        label: text('Full-height wall in it', 'Pared de altura completa en ella'),
      }),
      capacityPlf: number({
        unit: 'plf',
        min: 1,
        max: 10_000,
        needed: 'optional',
        label: text('Its strength, ASD', 'Su resistencia, ASD'),
      }),
    },
  }),
} as const;
