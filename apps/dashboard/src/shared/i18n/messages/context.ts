import { defineMessages } from '../define.ts';

/** What stands around a finding. */
export const contextWords = defineMessages(
  {
    around: 'Around it: stories above, shoring, who is below',
    storiesAbove: 'Full stories above it',
    shored: 'Is it shored already?',
    shoredHint: 'By someone qualified, carrying the load now.',
    occupiedBelow: 'Do people use the space below?',
    occupiedBelowHint: 'A room, a work place, or a way through.',
    positiveConnection: 'Is it fastened, not only resting?',
    positiveConnectionHint: 'Bolts, straps, nails or a hanger that would hold it if it moved.',
  },
  {
    around: 'Alrededor: pisos arriba, apuntalado, quién está debajo',
    storiesAbove: 'Pisos completos arriba',
    shored: '¿Ya está apuntalado?',
    shoredHint: 'Por alguien calificado, y cargando ahora.',
    occupiedBelow: '¿Se usa el espacio de abajo?',
    occupiedBelowHint: 'Un cuarto, un lugar de trabajo o un paso.',
    positiveConnection: '¿Está sujeto, no solo apoyado?',
    positiveConnectionHint: 'Pernos, flejes, clavos o un colgador que lo sostenga si se mueve.',
  },
);
