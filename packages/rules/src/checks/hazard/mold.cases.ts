import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const NIEHS = 'NIEHS summary, May 2013: EPA, HUD and CDC above 10 SF, New York City above 100 SF';

export const cases: readonly CheckCase[] = [
  {
    name: 'exactly 10 SF is still a small job for the crew',
    origin: 'second-hand',
    source: 'NIEHS summary, May 2013: small is 10 SF or less',
    inputs: { areaSf: 10, sourceFixed: true },
    expect: {
      verdict: 'fails',
      ratio: null,
      severity: 'repair',
      values: { band: 'small', specialistAboveSf: 10, sourceFixed: true },
      referrals: [],
      repairs: ['mold-cleanup'],
    },
  },
  {
    name: 'just over 10 SF is for a specialist',
    origin: 'second-hand',
    source: NIEHS,
    inputs: { areaSf: 10.5, sourceFixed: true },
    expect: {
      verdict: 'fails',
      ratio: 1.05,
      severity: 'repair',
      values: { band: 'medium' },
      referrals: ['specialist'],
      repairs: ['specialist-visit'],
    },
  },
  {
    name: 'the New York City guide leaves 60 SF to a trained crew',
    origin: 'second-hand',
    source: NIEHS,
    edition: 'nyc',
    inputs: { areaSf: 60, sourceFixed: true },
    expect: {
      verdict: 'fails',
      ratio: null,
      severity: 'repair',
      values: { band: 'medium', specialistAboveSf: 100 },
      repairs: ['mold-cleanup'],
    },
  },
  {
    name: '140 SF is a large job under both guides',
    origin: 'second-hand',
    source: NIEHS,
    edition: 'nyc',
    inputs: { areaSf: 140, sourceFixed: false },
    expect: {
      verdict: 'fails',
      ratio: 1.4,
      values: { band: 'large' },
      referrals: ['specialist'],
      repairs: ['specialist-visit', 'dry-out'],
    },
  },
  {
    name: 'torn open already: stop',
    origin: 'hand-worked',
    source: 'severity row 3',
    inputs: { areaSf: 40, sourceFixed: false },
    situation: { disturbed: true },
    expect: { verdict: 'fails', severity: 'make-safe', referrals: ['specialist'] },
  },
  {
    name: 'no mold and the water stopped meets',
    origin: 'hand-worked',
    source: 'nothing there',
    inputs: { areaSf: 0, sourceFixed: true },
    expect: { verdict: 'meets', ratio: 0, severity: 'record', values: { band: 'none' }, repairs: [] },
  },
  {
    name: 'no mold yet, but nobody knows whether the water is stopped: stop it first',
    origin: 'second-hand',
    source: 'EPA 402-K-01-001: fix the moisture first; unknown counts as not fixed',
    inputs: { areaSf: 0 },
    expect: { verdict: 'fails', ratio: null, severity: 'repair', values: { sourceFixed: false }, repairs: ['dry-out'] },
  },
  {
    name: 'without the area it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { sourceFixed: false },
    expect: { verdict: 'undetermined', missing: ['areaSf'], repairs: ['dry-out'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'The water is stopped first; then a small area can be cleaned up, and a larger one than the chosen guide names takes a specialist.',
  'Primero se detiene el agua; luego un área chica se puede limpiar, y una mayor que la de la guía elegida pide un especialista.',
);

/** What the check answers. */
export const values: ValueWords = {
  band: {
    label: text('Size of the job', 'Tamaño del trabajo'),
    how: text(
      'Small up to 10 SF, medium up to 100 SF, large above.',
      'Pequeño hasta 10 pies², mediano hasta 100, grande si pasa.',
    ),
  },
  specialistAboveSf: {
    label: text('A specialist above', 'Especialista si pasa de'),
    how: text('From the guide chosen.', 'De la guía elegida.'),
  },
  sourceFixed: {
    label: text('Water stopped', 'Agua detenida'),
    how: text('As answered; unknown counts as no.', 'Según la respuesta; si no se sabe, cuenta como no.'),
  },
};
