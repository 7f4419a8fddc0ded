import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const PLATE = { widthIn: 3.5, cutIn: 2, code: 'irc', bearingOrBraced: true, inShearWall: false } as const;
const GOOD_TIE = { thicknessIn: 0.054, widthIn: 1.5, pastOpeningIn: 6, nailsEachSide: 8, nail: '10d-common' } as const;

export const cases: readonly CheckCase[] = [
  {
    name: 'a 2 in hole takes 57% of a 2x4 plate and needs a tie',
    origin: 'hand-worked',
    source: '2 / 3.5 against IRC R602.6.1, more than 50%',
    edition: 'irc-2024',
    inputs: PLATE,
    expect: {
      verdict: 'fails',
      ratio: 1.143,
      severity: 'repair',
      values: { cutShare: 0.571, tieRequired: true, requiredTieThicknessIn: 0.054, requiredNailsEachSide: 8 },
      repairs: ['plate-tie'],
    },
    tolerance: { within: 0.001, reason: 'the worked numbers are written to three decimals' },
  },
  {
    name: 'a cut of exactly half needs no tie under the IRC',
    origin: 'published',
    source: 'IRC 2018 R602.6.1: more than 50 percent',
    edition: 'irc-2018',
    inputs: { ...PLATE, cutIn: 1.75 },
    expect: { verdict: 'meets', ratio: 1, remaining: 1, severity: 'record', values: { tieRequired: false } },
  },
  {
    name: 'the same half needs a tie under the IBC, where any cut does',
    origin: 'published',
    source: 'IBC 2015 2308.5.8',
    inputs: { ...PLATE, cutIn: 1.75, code: 'ibc', edition: '2015' },
    expect: {
      verdict: 'fails',
      ratio: null,
      values: { tieRequired: true, requiredTieThicknessIn: 0.058, requiredNailsEachSide: 6, requiredNail: '16d' },
    },
  },
  {
    name: 'a tie exactly as the 2024 IRC asks meets',
    origin: 'second-hand',
    source: 'IRC 2024 R602.6.1, second-hand: 0.054 x 1-1/2 in, 6 in past, eight 10d each side',
    edition: 'irc-2024',
    inputs: { ...PLATE, tie: GOOD_TIE },
    expect: { verdict: 'meets', ratio: 1, remaining: 1, severity: 'record' },
  },
  {
    name: 'seven nails where eight are asked do not meet',
    origin: 'hand-worked',
    source: '8 / 7 against IRC 2024 R602.6.1',
    edition: 'irc-2024',
    inputs: { ...PLATE, tie: { ...GOOD_TIE, nailsEachSide: 7 } },
    expect: { verdict: 'fails', ratio: 8 / 7, severity: 'repair' },
  },
  {
    name: '10d nails that meet IRC 2009 do not meet IRC 2006, which asked for 16d',
    origin: 'second-hand',
    source: 'proposal RB172-06/07: 16d struck, 10d new',
    edition: 'irc-2006',
    inputs: { ...PLATE, tie: GOOD_TIE },
    expect: { verdict: 'fails', values: { requiredNail: '16d' } },
  },
  {
    name: 'a plate cut in a shear wall belongs to an engineer',
    origin: 'common-practice',
    source: 'severity table, plate cut in a shear wall',
    edition: 'irc-2024',
    inputs: { ...PLATE, cutIn: 1, inShearWall: true },
    expect: { verdict: 'undetermined', severity: 'engineer', referrals: ['engineer'] },
  },
  {
    name: 'a wall that is neither outside, bearing nor braced needs no tie under the IRC',
    origin: 'published',
    source: 'IRC 2018 R602.6.1: exterior or interior load-bearing wall',
    inputs: { ...PLATE, bearingOrBraced: false },
    expect: { verdict: 'not-applicable', severity: 'record' },
  },
  {
    name: 'without the cut width it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { widthIn: 3.5, code: 'irc', bearingOrBraced: true, inShearWall: false },
    expect: { verdict: 'undetermined', missing: ['cutIn'], severity: 'engineer' },
  },
  {
    name: 'a whole plate in a shear wall meets, no engineer needed',
    origin: 'hand-worked',
    source: 'nothing is cut',
    inputs: { ...PLATE, cutIn: 0, inShearWall: true },
    expect: { verdict: 'meets', ratio: 0, remaining: 1, severity: 'record', referrals: [], repairs: [] },
  },
  {
    name: 'a small cut in a shear wall goes to an engineer though no tie is asked for',
    origin: 'common-practice',
    source: 'the plate also carries the pull along the wall',
    inputs: { ...PLATE, cutIn: 1, inShearWall: true },
    expect: {
      verdict: 'undetermined',
      remaining: 2.5 / 3.5,
      severity: 'engineer',
      referrals: ['engineer'],
      repairs: ['engineer-letter'],
    },
  },
  {
    name: 'a plate cut past half in a shear wall wants a tie and an engineer',
    origin: 'common-practice',
    source: 'the plate also carries the pull along the wall',
    inputs: { ...PLATE, inShearWall: true },
    expect: {
      verdict: 'fails',
      remaining: 1.5 / 3.5,
      referrals: ['engineer'],
      repairs: ['plate-tie', 'engineer-letter'],
    },
  },
  {
    name: 'under structural panel on the entire side of the wall the IRC asks for no tie',
    origin: 'published',
    source: 'IRC 2018 R602.6.1 exception',
    edition: 'irc-2018',
    inputs: { ...PLATE, coveredByPanel: true },
    expect: {
      verdict: 'meets',
      ratio: null,
      remaining: 1,
      severity: 'record',
      repairs: [],
      values: { cutShare: 2 / 3.5, tieRequired: false },
    },
  },
  {
    name: 'a band of sheathing over the plate is no panel over the entire side',
    origin: 'second-hand',
    source: 'IRC 2024 R602.6.1 exception (second-hand): the entire side of the wall',
    edition: 'irc-2024',
    inputs: { ...PLATE, coveredByPanel: false },
    expect: { verdict: 'fails', severity: 'repair', values: { tieRequired: true } },
  },
  {
    name: 'the exception of the 2015 code is from memory: the verdict asks to be confirmed',
    origin: 'memory',
    source: 'IRC 2015 R602.6.1 exception, taken as in 2018',
    edition: 'irc-2015',
    inputs: { ...PLATE, coveredByPanel: true },
    expect: { verdict: 'meets', referrals: ['engineer'] },
  },
  {
    name: 'the building code has no such exception',
    origin: 'published',
    source: 'IBC 2015 2308.5.8',
    inputs: { ...PLATE, code: 'ibc', edition: '2015', coveredByPanel: true },
    expect: { verdict: 'fails', values: { tieRequired: true } },
  },
  {
    name: 'in a shear wall a plate under panel still belongs to an engineer',
    origin: 'common-practice',
    source: 'the plate also carries the pull along the wall',
    edition: 'irc-2024',
    inputs: { ...PLATE, inShearWall: true, coveredByPanel: true },
    expect: {
      verdict: 'undetermined',
      remaining: 1.5 / 3.5,
      severity: 'engineer',
      repairs: ['engineer-letter'],
      values: { tieRequired: false },
    },
  },
  {
    name: 'a tie that reaches 5 in past the cut where 6 in are asked does not meet',
    origin: 'hand-worked',
    source: '6 / 5 against IRC 2024 R602.6.1',
    edition: 'irc-2024',
    inputs: { ...PLATE, tie: { ...GOOD_TIE, pastOpeningIn: 5 } },
    expect: { verdict: 'fails', ratio: 1.2 },
  },
  {
    name: 'a tie without a nail holds nothing',
    origin: 'hand-worked',
    source: 'no ratio with no nail',
    edition: 'irc-2024',
    inputs: { ...PLATE, tie: { ...GOOD_TIE, nailsEachSide: 0 } },
    expect: { verdict: 'fails' },
  },
];

/** What the rule asks. */
export const rule = text(
  'A plate cut by more than its edition allows needs a metal tie across the cut, long and nailed enough on both sides. In a shear wall an engineer decides.',
  'Una solera cortada más de lo que permite su edición lleva un fleje sobre el corte, con largo y clavos suficientes a ambos lados. En una pared de corte decide un ingeniero.',
);

/** What the check answers. */
export const values: ValueWords = {
  cutShare: {
    label: text('Share of the width cut', 'Parte del ancho cortada'),
    how: text('Width cut, divided by the plate width.', 'Ancho cortado, dividido entre el de la solera.'),
  },
  tieRequired: {
    label: text('Tie needed over the cut', 'Se necesita placa'),
    how: text(
      'The share cut is over the limit of the edition, and no exception of it applies.',
      'La parte cortada pasa el límite de la edición y no vale ninguna excepción suya.',
    ),
  },
  requiredTieThicknessIn: {
    label: text('Tie thickness, at least', 'Grosor de la placa, al menos'),
    how: text('From the edition.', 'De la edición.'),
  },
  requiredTieWidthIn: {
    label: text('Tie width, at least', 'Ancho de la placa, al menos'),
    how: text('From the edition.', 'De la edición.'),
  },
  requiredPastOpeningIn: {
    label: text('Tie past the cut, at least', 'Placa más allá del corte, al menos'),
    how: text('From the edition; 0 where it names none.', 'De la edición; 0 si no dice.'),
  },
  requiredNailsEachSide: {
    label: text('Nails each side, at least', 'Clavos por lado, al menos'),
    how: text('From the edition.', 'De la edición.'),
  },
  requiredNail: {
    label: text('Nails of the tie', 'Clavos de la placa'),
    how: text('From the edition.', 'De la edición.'),
  },
  requiredNailDiameterIn: {
    label: text('Nail diameter, at least', 'Diámetro del clavo, al menos'),
    how: text('The diameter of that nail.', 'El diámetro de ese clavo.'),
  },
};
