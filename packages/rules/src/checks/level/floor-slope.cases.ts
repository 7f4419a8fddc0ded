import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

export const cases: readonly CheckCase[] = [
  {
    name: 'exactly 1/2 in in 20 ft meets the guideline of 1/480',
    origin: 'second-hand',
    source: 'remodel performance guideline as quoted: 1/2 in in 20 ft',
    inputs: { riseIn: 0.5, runIn: 240, rule: 'half-in-20-ft' },
    expect: {
      verdict: 'meets',
      ratio: 1,
      severity: 'record',
      values: { slope: 1 / 480, slopeOneIn: 480, allowedIn: 0.5, 'passes.half-in-20-ft': true },
    },
  },
  {
    name: '1-1/2 in in 18 ft is 1/144, past the 1/240 at which many look closer',
    origin: 'common-practice',
    source: '18 x 12 / 1.5; 240 / 144',
    inputs: { riseIn: 1.5, runIn: 216, rule: 'trigger-1-240' },
    expect: {
      verdict: 'fails',
      ratio: 240 / 144,
      severity: 'repair',
      values: { slopeOneIn: 144, angleDeg: 0.3979, 'passes.quarter-in-32-in': true, 'passes.noticeable': false },
      repairs: ['re-shim'],
    },
    tolerance: { within: 0.00005, reason: 'the angle, atan(1/144), is written to four decimals' },
  },
  {
    name: 'the same floor meets 1/4 in in 32 in: the published tolerances disagree',
    origin: 'second-hand',
    source: 'remodeler performance standard as quoted: 1/4 in in 32 in, 1/128',
    inputs: { riseIn: 1.5, runIn: 216, rule: 'quarter-in-32-in' },
    expect: { verdict: 'meets', ratio: 128 / 144, values: { allowedIn: 216 / 128 } },
  },
  {
    name: 'a floor off 3/8 in in 32 in just meets the warranty standard and calls for remedy',
    origin: 'second-hand',
    source: 'state-style warranty standard as read, 3/8 in in any 32 in; BRE Digest 475, remedy from 1/100',
    inputs: { riseIn: 0.375, runIn: 32, rule: 'three-eighths-in-32-in' },
    expect: { verdict: 'meets', ratio: 1, values: { 'passes.remedial': false }, referrals: ['engineer'] },
  },
  {
    name: 'a wall 3/4 in out of plumb in 8 ft, 1/128, does not meet 1/4 in in 8 ft',
    origin: 'common-practice',
    source: '96 / 0.75; 384 / 128',
    inputs: { riseIn: 0.75, runIn: 96, rule: 'wall-plumb-8-ft' },
    expect: { verdict: 'fails', ratio: 3, severity: 'repair', values: { slopeOneIn: 128 } },
  },
  {
    name: 'an addition off 1-1/2 in in 8 ft, 1/64, is past the 1/100 that calls for remedy',
    origin: 'second-hand',
    source: 'field case of 1998; BRE Digest 475 from abstracts, 1/100',
    inputs: { riseIn: 1.5, runIn: 96, rule: 'remedial' },
    expect: {
      verdict: 'fails',
      ratio: 100 / 64,
      severity: 'repair',
      values: { slopeOneIn: 64 },
      referrals: ['engineer'],
      repairs: ['engineer-letter', 're-shim'],
    },
  },
  {
    name: 'left out, the strictest tolerance for floors decides',
    origin: 'hand-worked',
    source: '0.625 / 0.5',
    inputs: { riseIn: 0.625, runIn: 240 },
    expect: { verdict: 'fails', ratio: 1.25 },
  },
  {
    name: 'a level floor meets',
    origin: 'hand-worked',
    source: 'no rise, no slope',
    inputs: { riseIn: 0, runIn: 120 },
    expect: { verdict: 'meets', ratio: 0, values: { slope: 0, angleDeg: 0 } },
  },
  {
    name: 'without the distance it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { riseIn: 1 },
    expect: { verdict: 'undetermined', missing: ['runIn'], severity: 'record' },
  },
];

/** What the rule asks. */
export const rule = text(
  'The rise over the length measured is at most what the chosen tolerance allows. No code sets one for an old floor.',
  'El desnivel en el largo medido es a lo más lo que permite la tolerancia elegida. Ningún código fija una para un piso viejo.',
);

/** What the check answers. */
export const values: ValueWords = {
  slope: { label: text('Slope', 'Pendiente'), how: text('Rise divided by run.', 'Desnivel entre distancia.') },
  slopeOneIn: {
    label: text('Slope, 1 in', 'Pendiente, 1 en'),
    how: text('Run divided by rise.', 'Distancia entre desnivel.'),
  },
  angleDeg: {
    label: text('Angle', 'Ángulo'),
    how: text('Arc tangent of the slope.', 'Arco tangente de la pendiente.'),
  },
  allowedIn: {
    label: text('Allowed over this distance', 'Permitido en esta distancia'),
    how: text('Run times the slope of the tolerance chosen.', 'Distancia por la pendiente de la tolerancia elegida.'),
  },
  passes: {
    label: text('Within this tolerance', 'Dentro de esta tolerancia'),
    how: text('Slope at most that of the tolerance named.', 'Pendiente como máximo la de esa tolerancia.'),
  },
};
