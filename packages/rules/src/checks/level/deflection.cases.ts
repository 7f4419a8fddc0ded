import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const T1604 = 'IBC Table 1604.3 as read';

export const cases: readonly CheckCase[] = [
  {
    name: 'a 14 ft joist that sags 3/4 in is at span/224 and past span/240',
    origin: 'published',
    source: `${T1604}: floors span/240 under dead plus live`,
    inputs: { sagIn: 0.75, spanFt: 14, member: 'floor' },
    expect: {
      verdict: 'fails',
      ratio: 240 / 224,
      severity: 'repair',
      values: { spanOverSag: 224, spanOverLimit: 240, allowedIn: 0.7 },
      referrals: ['engineer'],
    },
  },
  {
    name: 'a floor that sags exactly span/240 meets',
    origin: 'published',
    source: `${T1604}: floors span/240`,
    inputs: { sagIn: 0.6, spanFt: 12, member: 'floor' },
    expect: { verdict: 'meets', ratio: 1, severity: 'record' },
  },
  {
    name: 'the same sag from people alone does not meet span/360',
    origin: 'published',
    source: `${T1604}: floors span/360 live`,
    inputs: { sagIn: 0.6, spanFt: 12, member: 'floor', load: 'live' },
    expect: { verdict: 'fails', ratio: 1.5, values: { allowedIn: 0.4 } },
  },
  {
    name: 'IRC R301.7 holds a floor to span/360',
    origin: 'second-hand',
    source: 'IRC R301.7, code-change sheet: floors span/360',
    edition: 'irc-r301.7',
    inputs: { sagIn: 0.6, spanFt: 12, member: 'floor' },
    expect: { verdict: 'fails', ratio: 1.5 },
  },
  {
    name: 'a 3 ft cantilever is held to twice its length',
    origin: 'published',
    source: `${T1604}, twice the length of a cantilever: 72 / 240`,
    inputs: { sagIn: 0.3, spanFt: 3, member: 'floor', cantilever: true },
    expect: { verdict: 'meets', ratio: 1, values: { effectiveSpanIn: 72, allowedIn: 0.3 } },
  },
  {
    name: 'a lintel under veneer is held to span/600 by the residential code, which alone names it',
    origin: 'second-hand',
    source: 'IRC R301.7, code-change sheet: 600',
    inputs: { sagIn: 0.125, spanFt: 5, member: 'lintel-veneer' },
    expect: { verdict: 'fails', ratio: 1.25, values: { spanOverLimit: 600 } },
  },
  {
    name: 'the building code sets no limit for a wall inside',
    origin: 'published',
    source: `${T1604}: exterior walls only`,
    edition: 'ibc-table-1604.3',
    inputs: { sagIn: 0.5, spanFt: 8, member: 'wall-interior', load: 'live' },
    expect: { verdict: 'not-applicable', ratio: null, severity: 'record', values: { spanOverSag: 192 } },
  },
  {
    name: 'without the span it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { sagIn: 0.75, member: 'floor' },
    expect: { verdict: 'undetermined', missing: ['spanFt'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'The sag is at most the span divided by the number the code lists for the member and the load.',
  'La flecha es a lo más el claro dividido entre el número que el código da para el elemento y la carga.',
);

/** What the check answers. */
export const values: ValueWords = {
  effectiveSpanIn: {
    label: text('Span counted', 'Claro que cuenta'),
    how: text('The span; twice the length of a cantilever.', 'El claro; el doble en un voladizo.'),
  },
  spanOverSag: {
    label: text('Span over sag', 'Claro entre flecha'),
    how: text('Span counted, divided by the sag.', 'Claro que cuenta, entre la flecha.'),
  },
  spanOverLimit: {
    label: text('Span over sag allowed', 'Claro entre flecha permitida'),
    how: text('From the document, by member and load.', 'Del documento, según elemento y carga.'),
  },
  allowedIn: {
    label: text('Sag allowed', 'Flecha permitida'),
    how: text('Span counted, divided by that number.', 'Claro que cuenta, entre ese número.'),
  },
};
