import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const NONE = { flush: 0, overdrivenSlight: 0, overdriven: 0, overdrivenDeep: 0, nearEdge: 0, missed: 0 } as const;
/** The edge of a 4x8 panel: 2 x (48 + 96) in, 48 nails at 6 in. */
const PANEL = { panelThicknessIn: 0.46875, specifiedSpacingIn: 6, surveyedLengthIn: 288, panelDry: true } as const;
const ROUNDED = { within: 0.001, reason: 'the worked numbers are written to three decimals' };

export const cases: readonly CheckCase[] = [
  {
    name: '14 of 48 nails overdriven is 29.2%: add 7',
    origin: 'hand-worked',
    source: '14 / 48 over the 20% of the APA TT-012 summary, one nail for two',
    inputs: { ...PANEL, counts: { ...NONE, flush: 34, overdriven: 14 } },
    expect: {
      verdict: 'fails',
      ratio: 1.458,
      remaining: 0.708,
      severity: 'engineer',
      values: {
        overdrivenShare: 0.292,
        nailsToAdd: 7,
        goodNails: 34,
        effectiveSpacingIn: 8.471,
        tooTightForNails: false,
      },
    },
    tolerance: ROUNDED,
  },
  {
    name: '48 flush nails at 6 in meet exactly',
    origin: 'hand-worked',
    source: '288 / 48',
    inputs: { ...PANEL, counts: { ...NONE, flush: 48 } },
    expect: { verdict: 'meets', ratio: 1, remaining: 1, severity: 'record', values: { nailsToAdd: 0 } },
  },
  {
    name: 'exactly 20% overdriven is accepted unchanged',
    origin: 'second-hand',
    source: 'APA TT-012 summary: not more than 20%',
    inputs: { ...PANEL, surveyedLengthIn: 300, counts: { ...NONE, flush: 40, overdriven: 10 } },
    expect: { verdict: 'meets', ratio: 1, remaining: 1, values: { overdrivenShare: 0.2, goodNails: 50 } },
  },
  {
    name: 'one nail over 1/8 in deep asks for a nail',
    origin: 'second-hand',
    source: 'APA TT-012 summary: any over 1/8 in',
    inputs: { ...PANEL, counts: { ...NONE, flush: 47, overdrivenDeep: 1 } },
    expect: { verdict: 'fails', severity: 'repair', values: { nailsToAdd: 1 }, repairs: ['add-nails'] },
  },
  {
    name: 'under a head 1/8 in deep 11/32 of a 15/32 panel is left, which decides nothing',
    origin: 'memory',
    source: 'APA TT-012, thickness left under the head, not read; 15/32 - 1/8',
    inputs: { ...PANEL, counts: { ...NONE, flush: 47, overdrivenDeep: 1 } },
    expect: { verdict: 'fails', severity: 'repair', values: { leftUnderHeadIn: 0.34375 } },
  },
  {
    name: 'the panel thickness is not asked for',
    origin: 'hand-worked',
    source: 'the count decides; 288 / 48',
    inputs: { specifiedSpacingIn: 6, surveyedLengthIn: 288, panelDry: true, counts: { ...NONE, flush: 48 } },
    expect: { verdict: 'meets', ratio: 1, remaining: 1 },
  },
  {
    name: 'nails that missed the framing count for nothing and are replaced one for one',
    origin: 'hand-worked',
    source: '40 / 48',
    inputs: { ...PANEL, counts: { ...NONE, flush: 40, missed: 6, nearEdge: 2 } },
    expect: { verdict: 'fails', remaining: 40 / 48, values: { nailsToAdd: 8 }, referrals: ['engineer'] },
  },
  {
    name: 'at 4 in an added nail may split the framing',
    origin: 'second-hand',
    source: 'engineering note on APA TT-012A',
    inputs: { ...PANEL, specifiedSpacingIn: 4, counts: { ...NONE, flush: 50, overdriven: 22 } },
    expect: { verdict: 'fails', values: { nailsToAdd: 11, tooTightForNails: true, staplesToAdd: 33 } },
  },
  {
    name: '2 bad in 10 have a Wilson interval of 0.0567 to 0.5098, so 8 good have 0.4902 to 0.9433',
    origin: 'hand-worked',
    source: 'NIST handbook 7.2.4.1',
    inputs: { ...PANEL, surveyedLengthIn: 60, counts: { ...NONE, flush: 8, missed: 2 } },
    expect: { verdict: 'fails', remaining: 0.8, values: { goodShare: 0.8, wilsonLow: 0.4902, wilsonHigh: 0.9433 } },
    tolerance: { within: 0.0001, reason: 'the worked interval is written to four decimals' },
  },
  {
    name: 'no nails at all leave nothing',
    origin: 'hand-worked',
    source: 'no nails, no strength',
    inputs: { ...PANEL, counts: NONE },
    expect: { verdict: 'fails', remaining: 0, severity: 'engineer', values: { nailsToAdd: 48 } },
  },
  {
    name: 'without a count of the overdriven it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { ...PANEL, counts: { flush: 48, overdrivenSlight: 0, overdrivenDeep: 0, nearEdge: 0, missed: 0 } },
    expect: { verdict: 'undetermined', missing: ['counts.overdriven'], severity: 'engineer' },
  },
  {
    name: 'nails a little deep count in a panel known to be dry',
    origin: 'second-hand',
    source: 'APA TT-012 summary: up to 1/16 in accepted, moisture under 16%',
    inputs: { ...PANEL, counts: { ...NONE, flush: 36, overdrivenSlight: 12 } },
    expect: { verdict: 'meets', values: { goodNails: 48, overdrivenShare: 0, nailsToAdd: 0 } },
  },
  {
    name: 'in a wet panel, which hides their depth, the same nails count as overdriven',
    origin: 'second-hand',
    source: 'APA TT-012 summary: up to 1/16 in accepted, moisture under 16%; 12 / 48 is over 20%, one nail for two',
    inputs: { ...PANEL, panelDry: false, counts: { ...NONE, flush: 36, overdrivenSlight: 12 } },
    expect: { verdict: 'fails', values: { goodNails: 36, overdrivenShare: 0.25, nailsToAdd: 6 } },
  },
  {
    name: 'where nobody measured the moisture and it decides, it cannot be told',
    origin: 'hand-worked',
    source: '48 nails count in a dry panel, 36 in a wet one',
    inputs: {
      panelThicknessIn: 0.46875,
      specifiedSpacingIn: 6,
      surveyedLengthIn: 288,
      counts: { ...NONE, flush: 36, overdrivenSlight: 12 },
    },
    expect: {
      verdict: 'undetermined',
      remaining: 0.75,
      severity: 'engineer',
      missing: ['panelDry'],
      values: { goodNails: 48 },
    },
  },
  {
    name: 'where it does not decide the nails are counted as in a wet panel',
    origin: 'hand-worked',
    source: '36 / 48 with or without the 4 nails a little deep; 4 / 48 is under 20%',
    inputs: {
      specifiedSpacingIn: 6,
      surveyedLengthIn: 288,
      counts: { ...NONE, flush: 36, overdrivenSlight: 4, missed: 8 },
    },
    expect: { verdict: 'fails', remaining: 40 / 48, missing: [], values: { goodNails: 40 } },
  },
  {
    name: 'added nails exactly 4 in apart do not split the framing',
    origin: 'hand-worked',
    source: '40 / (8 + 2) = 4 in; engineering note on APA TT-012A: closer than 4 in',
    inputs: { ...PANEL, specifiedSpacingIn: 4, surveyedLengthIn: 40, counts: { ...NONE, flush: 8 } },
    expect: {
      verdict: 'fails',
      values: { nailsToAdd: 2, tooTightForNails: false },
      repairs: ['add-nails', 'engineer-letter'],
    },
  },
  {
    name: 'nails that meet though they stand close together are nobody’s worry',
    origin: 'hand-worked',
    source: '40 / 20 = 2 in, none to add',
    inputs: { ...PANEL, surveyedLengthIn: 40, counts: { ...NONE, flush: 20, nearEdge: 1 } },
    expect: { verdict: 'meets', referrals: [], repairs: [], values: { tooTightForNails: false, nailsToAdd: 0 } },
  },
];

/** What the rule asks. */
export const rule = text(
  'Good nails stand no farther apart than specified, and no more than a small share are driven too deep.',
  'Los clavos buenos no están más separados de lo especificado, y solo una pequeña parte está hundida de más.',
);

/** What the check answers. */
export const values: ValueWords = {
  goodNails: {
    label: text('Good nails', 'Clavos buenos'),
    how: text('Flush nails and those whose depth is accepted.', 'Clavos a ras y los de profundidad aceptada.'),
  },
  effectiveSpacingIn: {
    label: text('Spacing of good nails', 'Separación de clavos buenos'),
    how: text('Edge looked at, divided by good nails.', 'Borde revisado, dividido entre clavos buenos.'),
  },
  overdrivenShare: {
    label: text('Share driven too deep', 'Parte hundida de más'),
    how: text('Overdriven nails, divided by all counted.', 'Clavos hundidos, divididos entre todos.'),
  },
  nailsToAdd: {
    label: text('Nails to add', 'Clavos por agregar'),
    how: text(
      'One for every two overdriven, and those missing to the spacing.',
      'Uno por cada dos hundidos, más los que faltan.',
    ),
  },
  tooTightForNails: {
    label: text('Too tight to nail', 'Muy junto para clavar'),
    how: text('With the added nails the spacing would be under 4 in.', 'Con los nuevos quedarían a menos de 4 in.'),
  },
  staplesToAdd: {
    label: text('Staples instead', 'Grapas en su lugar'),
    how: text('Three for each nail to add.', 'Tres por cada clavo por agregar.'),
  },
  leftUnderHeadIn: {
    label: text('Panel left under a deep head', 'Panel que queda bajo una cabeza hundida'),
    how: text('Panel thickness less 1/8 in; for information.', 'Grosor del panel menos 1/8 in; como información.'),
  },
  goodShare: {
    label: text('Share of good nails', 'Parte de clavos buenos'),
    how: text('Good nails, divided by all counted.', 'Clavos buenos, divididos entre todos.'),
  },
  wilsonLow: {
    label: text('Good share, at least', 'Parte buena, al menos'),
    how: text('Lower end of the Wilson interval, 95%.', 'Extremo bajo del intervalo de Wilson, 95%.'),
  },
  wilsonHigh: {
    label: text('Good share, at most', 'Parte buena, a lo más'),
    how: text('Upper end of the Wilson interval, 95%.', 'Extremo alto del intervalo de Wilson, 95%.'),
  },
};
