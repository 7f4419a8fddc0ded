import {
  assume,
  atMost,
  choice,
  count,
  flag,
  type InputIssue,
  length,
  list,
  named,
  type Partials,
  refuseLonger,
  refuseSameName,
  text,
} from '../../kernel/index.ts';
import { PLATE_WASHER_WORDS, SEISMIC_CATEGORIES } from '../../standards/irc-anchors/anchors.data.ts';

export const inputs = {
  plates: list({
    minItems: 1,
    maxItems: 40,
    label: text('Pieces of the sill plate', 'Piezas de la solera'),
    item: {
      name: named({ needed: 'optional', label: text('Name', 'Nombre') }),
      lengthIn: length({ unit: 'in', min: 1, max: 600, label: text('Length of the piece', 'Largo de la pieza') }),
      boltsIn: list({
        maxItems: 100,
        orNumber: 'atIn',
        label: text('Bolts', 'Pernos'),
        item: {
          atIn: length({
            unit: 'in',
            min: 0,
            max: 600,
            label: text('Bolt from the left end', 'Perno desde la punta izquierda'),
            howToMeasure: text('To the middle of the bolt.', 'Al centro del perno.'),
          }),
        },
      }),
      joinsOffsetPanels: flag({
        default: false,
        label: text('Short wall between offset braced panels?', '¿Pared corta entre paneles desfasados?'),
      }),
    },
  }),
  diameterIn: length({ unit: 'in', min: 0.25, max: 1.5, label: text('Bolt diameter', 'Diámetro del perno') }),
  embedmentIn: length({
    unit: 'in',
    min: 0,
    max: 36,
    needed: 'optional',
    label: text('Depth in the concrete, if known', 'Profundidad en el concreto, si se sabe'),
  }),
  storiesAbove: count({ max: 5, label: text('Stories above the sill', 'Pisos sobre la solera') }),
  seismicCategory: choice({
    options: SEISMIC_CATEGORIES.map((value) => ({ value, label: text(value, value) })),
    needed: 'optional',
    label: text('Seismic design category', 'Categoría sísmica de diseño'),
    howToMeasure: text(
      'From the plans or the building department.',
      'De los planos o del departamento de construcción.',
    ),
  }),
  townhouse: flag({
    needed: 'optional',
    showWhen: { input: 'seismicCategory', is: ['C'] },
    label: text('A townhouse?', '¿Casa en hilera?'),
  }),
  bracedWallLine: flag({
    default: true,
    label: text('Under a braced wall?', '¿Bajo una pared arriostrada?'),
  }),
  washer: choice({
    options: [
      { value: 'none', label: text('None', 'Ninguna') },
      { value: 'round', label: text('Round', 'Redonda') },
      { value: 'plate-2x2', label: text('Square plate, smaller', 'Placa cuadrada, menor') },
      { value: 'plate-3x3', label: text(`Square plate, ${PLATE_WASHER_WORDS}`, `Placa de ${PLATE_WASHER_WORDS}`) },
    ],
    needed: 'optional',
    label: text('Washer under the nut', 'Arandela bajo la tuerca'),
  }),
  middleThird: flag({
    needed: 'optional',
    assumes: assume(
      text(
        'Every bolt is taken to stand in the middle third of the plate width.',
        'Se toma que cada perno está en el tercio medio del ancho de la solera.',
      ),
    ),
    label: text('Every bolt in the middle third of the width?', '¿Cada perno en el tercio medio del ancho?'),
  }),
} as const;

export type PlateInput = { readonly name?: string | undefined };

/** The name of a piece: as given, or by its place in the list. */
export const plateName = (plate: PlateInput, at: number): string => plate.name ?? `plate ${at + 1}`;

/** Bolts beyond the end of their piece, and two pieces of one name. */
export function sillIssues({ plates = [] }: Partials<typeof inputs>): InputIssue[] {
  const issues: InputIssue[] = [];
  const seen = new Set<string>();
  plates.forEach((plate, at) => {
    const name = plateName(plate, at);
    if (seen.has(name)) issues.push(refuseSameName(['plates', at, 'name'], name));
    seen.add(name);
    const { lengthIn, boltsIn = [] } = plate;
    if (lengthIn === undefined) return;
    boltsIn.forEach(({ atIn }, bolt) => {
      if (atIn !== undefined && !atMost(atIn, lengthIn)) issues.push(...beyondItsPiece(at, bolt, name, atIn, lengthIn));
    });
  });
  return issues;
}

const beyondItsPiece = (plate: number, bolt: number, name: string, atIn: number, lengthIn: number): InputIssue[] =>
  refuseLonger(['plates', plate, 'boltsIn', bolt, 'atIn'], {
    what: text(`Bolt ${bolt + 1} in "${name}"`, `Perno ${bolt + 1} en "${name}"`),
    came: atIn,
    most: lengthIn,
    ofWhat: text('the length of the piece', 'el largo de la pieza'),
  });
