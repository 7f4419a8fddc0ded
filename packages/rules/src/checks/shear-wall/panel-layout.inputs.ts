import {
  assume,
  flag,
  type InputIssue,
  length,
  list,
  type Partials,
  refuse,
  type Text,
  text,
} from '../../kernel/index.ts';
import { overlap, type Piece } from './panel-layout.joints.ts';

const place = (label: Text) => length({ unit: 'in', min: 0, max: 4800, label });
const size = (label: Text) => length({ unit: 'in', min: 0.5, max: 4800, label });

export const inputs = {
  pieces: list({
    minItems: 1,
    maxItems: 60,
    label: text('Pieces of panel', 'Piezas de panel'),
    howToMeasure: text('One wall part, from post to post.', 'Una parte de la pared, de poste a poste.'),
    item: {
      xIn: place(text('From the first stud', 'Desde el primer pie derecho')),
      yIn: place(text('From the bottom plate', 'Desde la solera inferior')),
      widthIn: size(text('Width', 'Ancho')),
      heightIn: size(text('Height', 'Altura')),
    },
  }),
  partWidthIn: length({
    unit: 'in',
    min: 1,
    max: 4800,
    needed: 'optional',
    assumes: assume(
      text(
        'The wall part is taken to be no longer than its pieces reach.',
        'Se toma que la parte de la pared no es más larga que sus piezas.',
      ),
    ),
    label: text('Length of the wall part', 'Largo de la parte de la pared'),
    howToMeasure: text(
      'Between the outer faces of its end posts.',
      'Entre las caras exteriores de sus postes extremos.',
    ),
  }),
  partHeightIn: length({
    unit: 'in',
    min: 1,
    max: 4800,
    needed: 'optional',
    assumes: assume(
      text(
        'The wall part is taken to be no higher than its pieces reach.',
        'Se toma que la parte de la pared no es más alta que sus piezas.',
      ),
    ),
    label: text('Height of the wall part', 'Altura de la parte de la pared'),
    howToMeasure: text(
      'From the bottom of the bottom plate to the top of the plate that panels are nailed to.',
      'De abajo de la solera inferior a arriba de la solera donde se clavan los paneles.',
    ),
  }),
  studSpacingIn: length({
    unit: 'in',
    min: 4,
    max: 96,
    label: text('Stud spacing', 'Separación de pies derechos'),
    howToMeasure: text('Center to center.', 'De centro a centro.'),
  }),
  blockedEdges: flag({
    label: text(
      'Wood behind every joint that is off the studs?',
      '¿Madera detrás de toda junta fuera de pies derechos?',
    ),
  }),
  smallAtFramingChange: flag({
    needed: 'optional',
    label: text(
      'Do pieces under 4 x 8 ft away from the ends stop where the framing changes?',
      '¿Las piezas de menos de 4 x 8 ft lejos de los extremos terminan donde cambia el armazón?',
    ),
  }),
  cuts: list({
    needed: 'optional',
    maxItems: 60,
    label: text('Saw cuts in the panels', 'Cortes de sierra en los paneles'),
    howToMeasure: text('An empty list when there are none.', 'Lista vacía si no hay.'),
    item: {
      lengthIn: size(text('Length of the cut', 'Largo del corte')),
      crossesPanel: flag({ label: text('From edge to edge of the panel?', '¿De borde a borde del panel?') }),
      backed: flag({ label: text('Wood behind it, nailed on both sides?', '¿Madera detrás, clavada a ambos lados?') }),
    },
  }),
} as const;

/** Two pieces cannot lie in the same place on one face, and none outside its wall part. */
export function layoutIssues({ pieces = [], partWidthIn, partHeightIn }: Partials<typeof inputs>): InputIssue[] {
  const whole = pieces.map((piece) => (isWhole(piece) ? piece : undefined));
  const issues: InputIssue[] = [];
  whole.forEach((piece, at) => {
    const other = piece ? whole.findIndex((before, index) => index < at && before && overlap(before, piece)) : -1;
    if (other >= 0) issues.push(overlapIssue(at, other));
    if (piece && isOutside(piece, partWidthIn, partHeightIn)) issues.push(outsideIssue(at));
  });
  return issues;
}

const isWhole = (piece: Partial<Record<keyof Piece, number | undefined>>): piece is Piece =>
  [piece.xIn, piece.yIn, piece.widthIn, piece.heightIn].every((measured) => measured !== undefined);

const isOutside = ({ xIn, yIn }: Piece, wideIn: number | undefined, highIn: number | undefined): boolean =>
  (wideIn !== undefined && xIn >= wideIn) || (highIn !== undefined && yIn >= highIn);

const outsideIssue = (at: number): InputIssue =>
  refuse(
    ['pieces', at],
    text('a piece that begins beyond the wall part', 'una pieza que empieza fuera de la parte de la pared'),
    text(
      'one measured from its first stud and bottom plate',
      'una medida desde su primer pie derecho y su solera inferior',
    ),
    text(
      `Piece ${at + 1} begins beyond the wall part: measure it from the first stud and the bottom plate.`,
      `La pieza ${at + 1} empieza fuera de la parte de la pared: mídala desde el primer pie derecho y la solera inferior.`,
    ),
  );

const overlapIssue = (at: number, other: number): InputIssue =>
  refuse(
    ['pieces', at],
    text(`a piece that covers pieces.${other}`, `una pieza que cubre pieces.${other}`),
    text('a piece beside the others, on one face', 'una pieza al lado de las otras, en una cara'),
    text(
      `Pieces ${other + 1} and ${at + 1} lie over each other.`,
      `Las piezas ${other + 1} y ${at + 1} están una sobre otra.`,
    ),
  );
