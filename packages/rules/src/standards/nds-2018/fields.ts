import { assume, choice, number, poundsOf, type Quantity, type Text, text, wordOf } from '../../kernel/index.ts';
import { DURATION_SOURCE, LOAD_DURATION } from './nails.ts';
import { FRAMING_SPECIES } from './species.data.ts';
import { governingMode, type YieldLoads } from './yield-limit.ts';

/** Asks for a framing species; `needed` only when the input that may stand for it is absent. */
export const speciesField = (label: Text) =>
  choice({ options: FRAMING_SPECIES, label, howToMeasure: text('From the grade stamp.', 'Del sello de grado.') });

/** Asks for the load duration factor C_D, 1 unless said. */
export const loadDurationField = number({
  unit: 'factor',
  min: LOAD_DURATION.least,
  max: LOAD_DURATION.most,
  default: LOAD_DURATION.normal,
  assumes: assume(
    text(
      'The load is that of people and furniture, duration factor 1.',
      'La carga es de personas y muebles, factor de duración 1.',
    ),
    DURATION_SOURCE,
  ),
  label: text('Load duration factor', 'Factor de duración de la carga'),
  howToMeasure: text(
    '0.9 lasting, 1 people and furniture, 1.15 snow, 1.25 while building, 1.6 wind or earthquake.',
    '0.9 permanente, 1 personas y muebles, 1.15 nieve, 1.25 en obra, 1.6 viento o sismo.',
  ),
});

/** Asks for the load that a capacity is held against. */
export const demandField = (label: Text) => number({ unit: 'lb', min: 0, max: 1_000_000, needed: 'optional', label });

/** The six yield loads as values of an outcome, and which of them governs. */
export const yieldValues = (loads: YieldLoads): Record<string, Quantity> => ({
  Im: poundsOf(loads.Im),
  Is: poundsOf(loads.Is),
  II: poundsOf(loads.II),
  IIIm: poundsOf(loads.IIIm),
  IIIs: poundsOf(loads.IIIs),
  IV: poundsOf(loads.IV),
  governingMode: wordOf(governingMode(loads)),
});
