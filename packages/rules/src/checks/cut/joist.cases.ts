import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const R502 = 'IRC R502.8.1 as quoted, R802.7.1 read';
const TWO_BY_10 = { depthIn: 9.25, spanFt: 15 } as const;
const ROUNDED = { within: 0.006, reason: 'the worked numbers are written to two decimals' };

export const cases: readonly CheckCase[] = [
  {
    name: 'a 2x10 takes a notch 1.54 deep and 3.08 long, 2.31 at its end, a hole of 3.08 in',
    origin: 'second-hand',
    source: `${R502}: d/6, d/3, d/4, d/3 of 9.25 in`,
    inputs: { ...TWO_BY_10, notchIn: 1.5, notchLengthIn: 3, distanceFromSupportFt: 3 },
    expect: {
      verdict: 'meets',
      remaining: 1,
      severity: 'record',
      values: {
        notchLimitIn: 1.54,
        notchLengthLimitIn: 3.08,
        endNotchLimitIn: 2.31,
        holeLimitIn: 3.08,
        edgeLimitIn: 2,
      },
    },
    tolerance: ROUNDED,
  },
  {
    name: 'a notch of exactly a sixth of the depth, at exactly a third of the span, meets',
    origin: 'second-hand',
    source: `${R502}: d/6, none in the middle third`,
    inputs: { depthIn: 9, spanFt: 15, notchIn: 1.5, notchLengthIn: 3, distanceFromSupportFt: 5 },
    expect: { verdict: 'meets', ratio: 1, values: { momentRatio: (7.5 / 9) ** 2, shearRatio: 7.5 / 9 } },
  },
  {
    name: 'a notch 2 in deep in a 2x10 keeps 0.614 in bending and goes to an engineer',
    origin: 'hand-worked',
    source: '(7.25 / 9.25)^2 and 2 / 1.5417',
    inputs: { ...TWO_BY_10, notchIn: 2 },
    expect: {
      verdict: 'fails',
      ratio: 12 / 9.25,
      remaining: (7.25 / 9.25) ** 2,
      severity: 'engineer',
      values: { momentRatio: (7.25 / 9.25) ** 2, stiffnessRatio: (7.25 / 9.25) ** 3 },
    },
  },
  {
    name: 'a shallow notch at midspan does not meet',
    origin: 'second-hand',
    source: `${R502}: none in the middle third`,
    inputs: { ...TWO_BY_10, notchIn: 1, notchLengthIn: 2, distanceFromSupportFt: 7.5 },
    expect: { verdict: 'fails', ratio: 1.5 },
  },
  {
    name: 'a distance taken from the far support is the same notch',
    origin: 'hand-worked',
    source: '15 - 12 = 3 ft',
    inputs: { ...TWO_BY_10, notchIn: 1, notchLengthIn: 2, distanceFromSupportFt: 12 },
    expect: { verdict: 'meets' },
  },
  {
    name: 'in a 2x6 the 2 in at each edge leave a hole of 1.50 in, less than d/3',
    origin: 'second-hand',
    source: `${R502}: d/3 is 1.83 in, the edges leave 5.5 - 4 in`,
    inputs: { depthIn: 5.5, holeIn: 1.5, edgeIn: 2 },
    expect: { verdict: 'meets', ratio: 1, values: { holeLimitIn: 1.5 } },
  },
  {
    name: 'a hole of 1-3/4 in in it does not meet though it is under d/3',
    origin: 'hand-worked',
    source: '1.75 / 1.5; edge 1.875 of 2 in',
    inputs: { depthIn: 5.5, holeIn: 1.75, edgeIn: 1.875 },
    expect: { verdict: 'fails', ratio: 1.75 / 1.5 },
  },
  {
    name: 'a 2x10 end notched 2.3125 in takes 702 of 1665 lb',
    origin: 'hand-worked',
    source: 'NDS 3.4.3.2(a): 2/3 x 180 psi x 1.5 x 6.9375 x 0.75^2; a quarter of the depth',
    inputs: { depthIn: 9.25, endNotchIn: 2.3125, species: 'douglas-fir-larch', widthIn: 1.5, endShearLb: 600 },
    expect: {
      verdict: 'meets',
      ratio: 1,
      remaining: 0.421875,
      values: { fullShearLb: 1665, notchedShearLb: 702.42, shearRatio: 0.421875, momentRatio: 0.5625 },
    },
    tolerance: { within: 0.005, reason: 'the worked number is written to the hundredth of a pound' },
  },
  {
    name: 'an end notch of exactly a quarter meets the code, and 0.42 of the shear strength is all that counts',
    origin: 'hand-worked',
    source: 'NDS 3.4.3.2(a): (6.9375 / 9.25)^3',
    inputs: { depthIn: 9.25, endNotchIn: 2.3125 },
    expect: { verdict: 'meets', ratio: 1, remaining: 0.421875, severity: 'record', values: { shearRatio: 0.421875 } },
  },
  {
    name: 'in a beam the same notch within the code is no emergency',
    origin: 'common-practice',
    source: 'severity table: what meets is noted',
    inputs: { depthIn: 9.25, endNotchIn: 2.3125 },
    situation: { memberKind: 'beam' },
    expect: { verdict: 'meets', remaining: 0.421875, severity: 'record' },
  },
  {
    name: 'the same end under 1200 lb carries too little: make safe',
    origin: 'hand-worked',
    source: '1200 / 702.4 is over 1.5',
    inputs: { depthIn: 9.25, endNotchIn: 2.3125, species: 'douglas-fir-larch', widthIn: 1.5, endShearLb: 1200 },
    expect: { verdict: 'fails', ratio: 1200 / 702.421875, remaining: 0.421875, severity: 'make-safe' },
  },
  {
    name: 'a 3 in hole in the middle of a 2x10 has 3.125 in at its edges and keeps 0.966 of stiffness',
    origin: 'second-hand',
    source: `${R502}: hole d/3, 2 in at the edges; 1 - (3/9.25)^3`,
    inputs: { depthIn: 9.25, holeIn: 3, edgeIn: 3.125 },
    expect: {
      verdict: 'meets',
      ratio: 3 / (9.25 / 3),
      values: { stiffnessRatio: 0.966, momentRatio: 0.966, shearRatio: 6.25 / 9.25 },
    },
    tolerance: { within: 0.0006, reason: 'the worked number is written to three decimals' },
  },
  {
    name: 'the same hole 1-1/2 in from the bottom does not meet',
    origin: 'second-hand',
    source: `${R502}: 2 in from the bottom`,
    inputs: { depthIn: 9.25, holeIn: 3, edgeIn: 1.5 },
    expect: { verdict: 'fails', ratio: 2 / 1.5 },
  },
  {
    name: 'a hole an inch from a notch does not meet',
    origin: 'second-hand',
    source: `${R502}: 2 in from any other hole or notch`,
    inputs: { depthIn: 9.25, holeIn: 2, edgeIn: 3, otherCutIn: 1 },
    expect: { verdict: 'fails', ratio: 2 },
  },
  {
    name: 'a 4x10 may not be notched in its bottom along the span',
    origin: 'published',
    source: 'IRC R802.7.1: 4 in nominal and thicker',
    inputs: {
      ...TWO_BY_10,
      widthIn: 3.5,
      notchIn: 1,
      notchLengthIn: 2,
      distanceFromSupportFt: 2,
      notchFace: 'bottom',
    },
    expect: { verdict: 'fails', ratio: null },
  },
  {
    name: 'a joist cut through holds nothing: make safe',
    origin: 'common-practice',
    source: 'severity table, first row',
    inputs: { depthIn: 9.25, notchIn: 9.25 },
    expect: { verdict: 'fails', remaining: 0, severity: 'make-safe' },
  },
  {
    name: 'a shallow notch of unknown place cannot be told',
    origin: 'hand-worked',
    source: 'the middle third is part of the rule',
    inputs: { depthIn: 9.25, notchIn: 1 },
    expect: {
      verdict: 'undetermined',
      missing: ['notchLengthIn', 'spanFt', 'distanceFromSupportFt'],
      severity: 'engineer',
    },
  },
  {
    name: 'the building code is from memory: the verdict asks to be confirmed',
    origin: 'memory',
    source: 'IBC 2308.4.2.4',
    edition: 'ibc-2018',
    inputs: { depthIn: 9.25, endNotchIn: 2 },
    expect: { verdict: 'meets', referrals: ['engineer'] },
  },
  {
    name: 'a joist without a cut meets',
    origin: 'hand-worked',
    source: 'no limit is passed',
    inputs: { ...TWO_BY_10, notchIn: 0 },
    expect: { verdict: 'meets', ratio: null, remaining: 1, values: { momentRatio: 1, shearRatio: 1 } },
  },
  {
    name: 'a notch within its depth cannot be told before its distance from the support is measured',
    origin: 'second-hand',
    source: `${R502}: none in the middle third`,
    inputs: { ...TWO_BY_10, notchIn: 1, notchLengthIn: 2 },
    expect: { verdict: 'undetermined', remaining: null, missing: ['distanceFromSupportFt'] },
  },
  {
    name: 'in a joist 3-1/2 in thick it must be known which edge a notch is in',
    origin: 'second-hand',
    source: `${R502}: no notch at the bottom of a member 4 in nominal or thicker`,
    inputs: { ...TWO_BY_10, notchIn: 1, notchLengthIn: 2, distanceFromSupportFt: 3, widthIn: 3.5 },
    expect: { verdict: 'undetermined', missing: ['notchFace'] },
  },
  {
    name: 'in its top edge the notch meets',
    origin: 'second-hand',
    source: `${R502}: d/6 deep, d/3 long`,
    inputs: { ...TWO_BY_10, notchIn: 1, notchLengthIn: 2, distanceFromSupportFt: 3, widthIn: 3.5, notchFace: 'top' },
    expect: { verdict: 'meets', remaining: 1 },
  },
  {
    name: 'the same notch in a joist 1-1/2 in thick meets in the bottom edge too',
    origin: 'second-hand',
    source: `${R502}: the ban is for 4 in nominal and thicker`,
    inputs: { ...TWO_BY_10, notchIn: 1, notchLengthIn: 2, distanceFromSupportFt: 3, widthIn: 1.5, notchFace: 'bottom' },
    expect: { verdict: 'meets' },
  },
  {
    name: 'a load of exactly what the whole end takes is just met',
    origin: 'hand-worked',
    source: '2/3 x 180 psi x 1.5 x 9.25 = 1665 lb',
    inputs: { depthIn: 9.25, holeIn: 0, species: 'douglas-fir-larch', widthIn: 1.5, endShearLb: 1665 },
    expect: { verdict: 'meets', ratio: 1 },
  },
  {
    name: 'a load without thickness and species cannot be told',
    origin: 'hand-worked',
    source: 'shear needs all three',
    inputs: { depthIn: 9.25, endNotchIn: 2, endShearLb: 5000 },
    expect: { verdict: 'undetermined', missing: ['widthIn', 'species'] },
  },
  {
    name: 'shear of a species from memory is to be confirmed',
    origin: 'memory',
    source: 'F_v 135 psi, NDS Supplement 4A not read for this species; 2/3 x 135 x 1.5 x 9.25',
    inputs: { depthIn: 9.25, endNotchIn: 2, species: 'spruce-pine-fir-south', widthIn: 1.5, endShearLb: 500 },
    expect: { verdict: 'meets', values: { fullShearLb: 1248.75 } },
  },
  {
    name: 'a beam of which less than half is left is unsafe now',
    origin: 'common-practice',
    source: 'severity table, a beam under one half; (4.25 / 9.25)^2 = 0.21',
    inputs: { ...TWO_BY_10, notchIn: 5 },
    situation: { memberKind: 'beam' },
    expect: { verdict: 'fails', remaining: (4.25 / 9.25) ** 2, severity: 'make-safe' },
  },
  {
    name: 'of a joist the same cut goes to an engineer',
    origin: 'common-practice',
    source: 'severity table, one joist of a floor',
    inputs: { ...TWO_BY_10, notchIn: 5 },
    expect: { verdict: 'fails', remaining: (4.25 / 9.25) ** 2, severity: 'engineer' },
  },
];

const limit = (en: string, es: string, howEn: string, howEs: string) => ({
  label: text(en, es),
  how: text(howEn, howEs),
});

/** What the rule asks. */
export const rule = text(
  'Notches and holes stay within shares of the depth, away from mid-span and edges; the wood left at a notch carries the end shear.',
  'Muescas y agujeros no pasan ciertas partes del peralte, lejos del centro y los bordes; la madera que queda soporta el corte del extremo.',
);

/** What the check answers. */
export const values: ValueWords = {
  notchLimitIn: limit('Notch allowed', 'Muesca permitida', 'Depth divided by 6.', 'Altura entre 6.'),
  notchLengthLimitIn: limit(
    'Notch length allowed',
    'Largo de muesca permitido',
    'Depth divided by 3.',
    'Altura entre 3.',
  ),
  endNotchLimitIn: limit('End notch allowed', 'Muesca de punta permitida', 'Depth divided by 4.', 'Altura entre 4.'),
  holeLimitIn: limit(
    'Hole allowed',
    'Perforación permitida',
    'Depth divided by 3, or what 2 in at each edge leave.',
    'Altura entre 3, o lo que dejan 2 in en cada canto.',
  ),
  edgeLimitIn: limit(
    'Wood beside the hole, at least',
    'Madera junto a la perforación, al menos',
    'From the edition.',
    'De la edición.',
  ),
  momentRatio: limit(
    'Bending strength left',
    'Resistencia a flexión que queda',
    'Notch: depth left over depth, squared. Hole: section modulus of the wood above and below, over the whole.',
    'Muesca: altura que queda entre altura, al cuadrado. Perforación: módulo de la madera de arriba y abajo, entre el entero.',
  ),
  stiffnessRatio: limit(
    'Stiffness left',
    'Rigidez que queda',
    'Notch: depth left over depth, cubed. Hole in the middle: 1 less (hole/depth) cubed.',
    'Muesca: altura que queda entre altura, al cubo. Perforación al centro: 1 menos (perforación/altura) al cubo.',
  ),
  shearRatio: limit(
    'Shear strength left',
    'Resistencia a cortante que queda',
    'Depth left over depth; cubed for a notch at the end.',
    'Altura que queda entre altura; al cubo en la punta.',
  ),
  fullShearLb: limit(
    'Shear of the whole joist',
    'Cortante de la vigueta entera',
    'Two thirds of the design value times thickness and depth.',
    'Dos tercios del valor de diseño por grosor y altura.',
  ),
  notchedShearLb: limit(
    'Shear of the cut joist',
    'Cortante de la vigueta cortada',
    'Shear of the whole joist times the shear strength left.',
    'Cortante de la entera por la resistencia que queda.',
  ),
};
