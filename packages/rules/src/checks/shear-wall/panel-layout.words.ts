import { compareLengths, decimal, type Reason, reasonThat, type Text, text } from '../../kernel/index.ts';
import { DIAPHRAGM_PIECE_IN, SMALL_PIECE_IN } from '../../standards/sdpws-common/panel-edges.data.ts';

/** What the panels cover and rest on, and what cuts them. Inches. */
export interface Layout {
  readonly unsupportedIn: number;
  readonly smallestIn: number;
  readonly severed: boolean;
  /** Framing of the wall part with no panel on it, square feet. */
  readonly uncoveredSf: number;
  /** Pieces smaller than a sheet that neither reach an end of the part nor a change in framing. */
  readonly smallInField: number;
}

/** What decided, the worst first. */
export function layoutReasons({ severed, unsupportedIn, uncoveredSf, smallInField }: Layout): Reason[] {
  const cut = text('A cut severs a panel.', 'Un corte parte un panel.');
  const { measured: long } = compareLengths(unsupportedIn, 0, 'at-most');
  const loose = text(`${long.en} of panel edge has no wood behind it.`, `${long.es} de borde no tiene madera detrás.`);
  const backed = text('Every panel edge has wood behind it.', 'Todos los bordes tienen madera detrás.');
  const area = decimal(uncoveredSf);
  const bare = text(
    `${area} sf of the wall part has no panel on it.`,
    `${area} sf de la parte de la pared no tiene panel.`,
  );
  return [
    ...(severed ? [reasonThat(false, cut)] : []),
    ...(uncoveredSf > 0 ? [reasonThat(false, bare)] : []),
    ...(smallInField > 0 ? [smallWords(smallInField)] : []),
    ...(unsupportedIn > 0 ? [reasonThat(false, loose)] : []),
    // Beside what is wrong it would read as praise.
    ...(unsupportedIn > 0 || severed || uncoveredSf > 0 ? [] : [backed]),
  ];
}

const smallWords = (pieces: number): Text =>
  pieces === 1
    ? text(
        'A piece under 4 x 8 ft stands away from the ends of the wall part, where the rule as remembered wants whole sheets: an engineer decides.',
        'Una pieza de menos de 4 x 8 ft está lejos de los extremos de la parte, donde la regla, según se recuerda, pide hojas enteras: decide un ingeniero.',
      )
    : text(
        `${pieces} pieces under 4 x 8 ft stand away from the ends of the wall part, where the rule as remembered wants whole sheets: an engineer decides.`,
        `${pieces} piezas de menos de 4 x 8 ft están lejos de los extremos de la parte, donde la regla, según se recuerda, pide hojas enteras: decide un ingeniero.`,
      );

/** What the layout does not tell by itself. */
export function layoutCautions({ smallestIn, unsupportedIn, severed }: Layout, unblocked: number | undefined): Text[] {
  return [
    text(
      'Outer edges are taken to stand on posts and plates: look.',
      'Se supone que los bordes exteriores están sobre postes y soleras: revise.',
    ),
    ...(unsupportedIn > 0 && !severed && unblocked !== undefined
      ? [
          text(
            `If only level joints lack blocking, the unblocked rule keeps ${unblocked} of the wall, nailed 6 and 12 in.`,
            `Si solo faltan bloques en juntas horizontales, la regla sin bloqueo deja ${unblocked} de la pared, con clavos a 6 y 12 in.`,
          ),
        ]
      : []),
    ...(smallestIn < SMALL_PIECE_IN
      ? [
          text(
            `Pieces under ${SMALL_PIECE_IN} in are avoided by habit.`,
            `Por costumbre se evitan piezas de menos de ${SMALL_PIECE_IN} in.`,
          ),
        ]
      : []),
    ...(smallestIn < DIAPHRAGM_PIECE_IN
      ? [
          text(
            `The ${DIAPHRAGM_PIECE_IN} in often asked of pieces is a rule for floors and roofs; in walls, wood behind all edges and the place of the piece decide.`,
            `Las ${DIAPHRAGM_PIECE_IN} in que suelen pedirse son regla de pisos y techos; en paredes deciden la madera tras los bordes y el lugar de la pieza.`,
          ),
        ]
      : []),
  ];
}
