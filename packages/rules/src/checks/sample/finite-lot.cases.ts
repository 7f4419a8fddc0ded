import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

export const cases: readonly CheckCase[] = [
  {
    name: '8 good hangers of 24: up to 6 bad, and 7 more must be opened to stay under 3',
    origin: 'second-hand',
    source: 'ASTM E2334 case 2: the largest D with C(24-D,8)/C(24,8) above 0.05; D = 6: 0.0595, D = 7: 0.0331',
    inputs: { total: 24, opened: 8, bad: 0, confidencePct: 95, tolerableBad: 2 },
    expect: { verdict: 'fails', severity: 'repair', values: { upperBad: 6, openMore: 7 }, repairs: ['open-more'] },
  },
  {
    name: '15 good ones of 24 rule out 3 bad',
    origin: 'hand-worked',
    source: '9 x 8 x 7 / (24 x 23 x 22) = 0.0415',
    inputs: { total: 24, opened: 15, bad: 0, confidencePct: 95, tolerableBad: 2 },
    expect: {
      verdict: 'meets',
      ratio: 504 / 12144 / 0.05,
      severity: 'record',
      values: { upperBad: 2, openMore: 0 },
      repairs: [],
    },
  },
  {
    name: '1 bad of 10 opened among 40: up to 14 bad',
    origin: 'hand-worked',
    source: 'hypergeometric: D = 14 above 0.05, D = 15 below',
    inputs: { total: 40, opened: 10, bad: 1, confidencePct: 95 },
    expect: { verdict: 'fails', values: { upperBad: 14, openMore: 30 } },
  },
  {
    name: '8 good ones of 16: up to 3 bad',
    origin: 'hand-worked',
    source: 'C(13,8)/C(16,8) = 0.1; C(12,8)/C(16,8) = 0.0385',
    inputs: { total: 16, opened: 8, bad: 0, confidencePct: 95, tolerableBad: 3 },
    expect: { verdict: 'meets', values: { upperBad: 3, openMore: 0 } },
  },
  {
    name: '19 good ones of 20 rule out one bad at exactly 95%',
    origin: 'hand-worked',
    source: 'the one left is bad with a chance of 1/20 = 0.05, equal to what is left',
    inputs: { total: 20, opened: 19, bad: 0, confidencePct: 95, tolerableBad: 0 },
    expect: { verdict: 'meets', ratio: 1, values: { upperBad: 0, openMore: 0 } },
  },
  {
    name: 'more bad ones found than tolerated: open them all',
    origin: 'hand-worked',
    source: 'nothing can rule out what was found',
    inputs: { total: 24, opened: 8, bad: 3, confidencePct: 95, tolerableBad: 2 },
    expect: { verdict: 'fails', values: { openMore: 16 } },
  },
  {
    name: 'all opened: what was found is all there is',
    origin: 'hand-worked',
    source: 'nothing is left to guess',
    inputs: { total: 12, opened: 12, bad: 1, confidencePct: 95, tolerableBad: 1 },
    expect: { verdict: 'meets', ratio: 0, values: { upperBad: 1, openMore: 0 } },
  },
  {
    name: 'nothing opened tells nothing',
    origin: 'hand-worked',
    source: 'every one may be bad',
    inputs: { total: 12, opened: 0, bad: 0 },
    expect: { verdict: 'fails', values: { upperBad: 12, openMore: 12 } },
  },
  {
    name: 'without the number in all it cannot be told',
    origin: 'hand-worked',
    source: 'no count, no verdict',
    inputs: { opened: 8, bad: 0 },
    expect: { verdict: 'undetermined', missing: ['total'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'Enough of the lot was opened when more bad places than you can live with are ruled out at the chosen confidence.',
  'Se abrió bastante del lote cuando se descartan, con la confianza elegida, más lugares malos de los que puede aceptar.',
);

/** What the check answers. */
export const values: ValueWords = {
  upperBad: {
    label: text('Most that may be bad', 'Máximo que puede ser malo'),
    how: text(
      'The largest number in the lot for which so few bad ones still have more than the chance left.',
      'El mayor número en el lote con el que ver tan pocos malos aún pasa del riesgo.',
    ),
  },
  openMore: {
    label: text('Open so many more', 'Abrir tantos más'),
    how: text(
      'Until one more than tolerable is ruled out, if all of them are good; the whole rest when too many are found.',
      'Hasta descartar uno más de lo aceptable, si todos están bien; todo el resto si ya hay demasiados.',
    ),
  },
  risk: {
    label: text('Chance to see so few by luck', 'Probabilidad de ver tan pocos por suerte'),
    how: text(
      'Drawn without putting back, if one more than tolerable were bad; it must not pass what the confidence leaves.',
      'Sin devolver al lote, si hubiera uno malo más de lo aceptable; no debe pasar lo que deja la confianza.',
    ),
  },
};
