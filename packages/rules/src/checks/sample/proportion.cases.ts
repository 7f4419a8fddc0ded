import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const FOUR_DIGITS = { within: 5e-5, reason: 'the source prints four decimals' };

export const cases: readonly CheckCase[] = [
  {
    name: '4 bad of 20 at 90%: 0.0714 to 0.4010',
    origin: 'published',
    source: 'NIST handbook 7.2.4.1, exact interval example: 0.071354 and 0.401029',
    inputs: { inspected: 20, bad: 4, confidencePct: 90 },
    expect: {
      verdict: 'fails',
      values: { share: 0.2, exactLow: 0.071354, exactHigh: 0.401029 },
      repairs: ['open-more'],
    },
    tolerance: { within: 1e-5, reason: "the handbook's root finders stop early; its two programs differ by 6e-6" },
  },
  {
    name: '26 bad of 200: one-sided 95% is the lower end at 90%, 0.09577',
    origin: 'published',
    source: 'NIST handbook 7.2.4.1, one-sided example',
    inputs: { inspected: 200, bad: 26, confidencePct: 90 },
    expect: { verdict: 'fails', values: { share: 0.13, wilsonLow: 0.09577 } },
    tolerance: { within: 5e-6, reason: 'the handbook prints five decimals and uses 1.645' },
  },
  {
    name: '2 bad of 10: Wilson 0.0567 to 0.5098, exact 0.0252 to 0.5561',
    origin: 'hand-worked',
    source: 'both formulas worked by hand',
    inputs: { inspected: 10, bad: 2, confidencePct: 95 },
    expect: {
      verdict: 'fails',
      values: { share: 0.2, wilsonLow: 0.0567, wilsonHigh: 0.5098, exactLow: 0.0252, exactHigh: 0.5561 },
    },
    tolerance: FOUR_DIGITS,
  },
  {
    name: '0 bad of 10: Wilson to 0.2775, exact two-sided to 0.3085, one-sided to 0.2589',
    origin: 'hand-worked',
    source: '3.8415 / 13.8415; 1 - 0.025^(1/10); 1 - 0.05^(1/10)',
    inputs: { inspected: 10, bad: 0, confidencePct: 95 },
    expect: {
      verdict: 'fails',
      values: { wilsonLow: 0, wilsonHigh: 0.2775, exactLow: 0, exactHigh: 0.3085, zeroBadUpper: 0.2589, openMore: 49 },
      severity: 'repair',
    },
    tolerance: FOUR_DIGITS,
  },
  {
    name: '59 good ones rule out 5% at 95%',
    origin: 'second-hand',
    source: 'rule of zero bad, 1 - 0.05^(1/59) = 0.0495 (Jovanovic and Levy 1997)',
    inputs: { inspected: 59, bad: 0 },
    expect: { verdict: 'meets', severity: 'record', values: { zeroBadUpper: 0.0495, openMore: 0 }, repairs: [] },
    tolerance: FOUR_DIGITS,
  },
  {
    name: '58 are just too few',
    origin: 'hand-worked',
    source: '0.95^58 = 0.0510',
    inputs: { inspected: 58, bad: 0 },
    expect: { verdict: 'fails', ratio: 0.95 ** 58 / 0.05, values: { openMore: 1 }, repairs: ['open-more'] },
  },
  {
    name: 'one good part rules out exactly half at 50%',
    origin: 'hand-worked',
    source: 'a chance of 0.5 equals what 50% leaves',
    inputs: { inspected: 1, bad: 0, confidencePct: 50, tolerablePct: 50 },
    expect: { verdict: 'meets', ratio: 1, values: { zeroBadUpper: 0.5 } },
  },
  {
    name: '7 bad of 10 are more than tolerable already: look at every one',
    origin: 'hand-worked',
    source: '0.7 is over 0.05',
    inputs: { inspected: 10, bad: 7 },
    expect: { verdict: 'fails', values: { share: 0.7 } },
  },
  {
    name: 'a bearing line with many stories above goes to the engineer',
    origin: 'hand-worked',
    source: 'severity row 5',
    inputs: { inspected: 10, bad: 1 },
    situation: { storiesAbove: 2 },
    expect: { verdict: 'fails', severity: 'engineer' },
  },
  {
    name: 'without the count of bad ones it cannot be told',
    origin: 'hand-worked',
    source: 'no count, no verdict',
    inputs: { inspected: 10 },
    expect: { verdict: 'undetermined', missing: ['bad'] },
  },
  {
    name: 'a share found of exactly the tolerable one may still be shown with more looked at',
    origin: 'hand-worked',
    source: '1 of 20 against 5%: not over it',
    inputs: { inspected: 20, bad: 1, confidencePct: 50, tolerablePct: 5 },
    expect: { verdict: 'fails' },
  },
];

/** What the rule asks. */
export const rule = text(
  'Enough was inspected when a bad share above the tolerable one is ruled out at the chosen confidence.',
  'Se revisó bastante cuando se descarta, con la confianza elegida, una parte mala mayor que la tolerable.',
);

/** What the check answers. */
export const values: ValueWords = {
  share: {
    label: text('Share bad in the sample', 'Parte mala en la muestra'),
    how: text('Bad over looked at.', 'Malas entre revisadas.'),
  },
  wilsonLow: {
    label: text('Wilson, low', 'Wilson, abajo'),
    how: text(
      'The lower share that lies z deviations from the sample.',
      'La parte menor a z desviaciones de la muestra.',
    ),
  },
  wilsonHigh: {
    label: text('Wilson, high', 'Wilson, arriba'),
    how: text(
      'The higher share that lies z deviations from the sample.',
      'La parte mayor a z desviaciones de la muestra.',
    ),
  },
  exactLow: {
    label: text('Exact, low', 'Exacto, abajo'),
    how: text(
      'The share at which so many bad ones or more have half the chance left.',
      'La parte con la que tantas malas o más tienen la mitad del riesgo.',
    ),
  },
  exactHigh: {
    label: text('Exact, high', 'Exacto, arriba'),
    how: text(
      'The share at which so few bad ones have half the chance left.',
      'La parte con la que tan pocas malas tienen la mitad del riesgo.',
    ),
  },
  zeroBadUpper: {
    label: text('Highest share with none bad', 'Parte máxima sin ninguna mala'),
    how: text(
      '1 less the chance left to the power of 1 over the number looked at.',
      '1 menos el riesgo elevado a 1 entre las revisadas.',
    ),
  },
  upperShare: {
    label: text('Highest share, one-sided', 'Parte máxima, de un lado'),
    how: text(
      'The share at which so few bad ones have just the chance left.',
      'La parte con la que tan pocas malas tienen justo el riesgo.',
    ),
  },
  risk: {
    label: text('Chance to see so few by luck', 'Probabilidad de ver tan pocas por suerte'),
    how: text(
      'Binomial chance if just the tolerable share were bad; it must not pass what the confidence leaves.',
      'Binomial, si fuera mala justo la parte aceptable; no debe pasar lo que deja la confianza.',
    ),
  },
  openMore: {
    label: text('Look at so many more', 'Revisar tantas más'),
    how: text(
      'Until that chance is small enough, if all of them are good.',
      'Hasta que esa probabilidad baje lo suficiente, si todas están bien.',
    ),
  },
};
