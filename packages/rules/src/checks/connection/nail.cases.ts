import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';
import { YIELD_WORDS } from '../../standards/nds-2018/yield-words.ts';

const WHOLE_POUND = { within: 0.5, reason: 'the source prints whole pounds' };
const TENTH = { within: 0.05, reason: 'the worked numbers are written to a tenth of a pound' };
const EQUATIONS = 'NDS 2018 12.3.1 equations, by hand';
const JOINT = {
  nail: '16d-common',
  sideThicknessIn: 1.5,
  sideMaterial: 'sawn',
  mainSpecies: 'douglas-fir-larch',
};

export const cases: readonly CheckCase[] = [
  {
    name: 'a 16d common nail through a 2x into Douglas fir-larch takes 141 lb',
    origin: 'second-hand',
    source: 'NDS 2018 Table 12N, G 0.50, 1-1/2 in side member (second-hand)',
    inputs: { ...JOINT, demandLb: 130 },
    expect: { verdict: 'meets', remaining: 1, severity: 'record', values: { lateralLb: 141, penetrationFactor: 1 } },
    tolerance: WHOLE_POUND,
  },
  {
    name: 'with just ten diameters in the main member all six modes of that nail are as worked, mode IV governs',
    origin: 'hand-worked',
    source: EQUATIONS,
    inputs: { ...JOINT, penetrationIn: 1.62, demandLb: 130 },
    expect: {
      verdict: 'meets',
      values: {
        Im: 554.7,
        Is: 513.6,
        II: 221.5,
        IIIm: 202.4,
        IIIs: 190,
        IV: 140.9,
        governingMode: 'IV',
        lateralLb: 140.9,
        penetrationDiameters: 10,
      },
    },
    tolerance: TENTH,
  },
  {
    name: 'an 8d common nail through 15/32 in OSB takes 118.6 lb in an earthquake, the panel governs',
    origin: 'hand-worked',
    source: EQUATIONS,
    inputs: {
      nail: '8d-common',
      sideThicknessIn: 15 / 32,
      sideMaterial: 'osb',
      mainSpecies: 'douglas-fir-larch',
      penetrationIn: 1.31,
      loadDuration: 1.6,
      demandLb: 118.4,
    },
    expect: {
      verdict: 'meets',
      referrals: ['engineer'],
      values: {
        Im: 362.7,
        Is: 129.8,
        II: 121,
        IIIm: 133.6,
        IIIs: 74.1,
        IV: 97.1,
        governingMode: 'IIIs',
        referenceLb: 74.1,
        lateralLb: 118.6,
      },
    },
    tolerance: TENTH,
  },
  {
    name: 'an 8d common nail 2.03 in into Douglas fir-larch holds 65 lb against pulling out, 32 lb an inch',
    origin: 'second-hand',
    source: 'NDS 2018 Table 12.2C (second-hand), times the penetration',
    inputs: { ...JOINT, nail: '8d-common', sideThicknessIn: 15 / 32, penetrationIn: 2.03, demandLb: 70 },
    expect: { verdict: 'meets', values: { withdrawalLbPerIn: 32, withdrawalLb: 65 } },
    tolerance: WHOLE_POUND,
  },
  {
    name: 'a 16d nail through a plate and 3/4 in of floor goes in 1-1/4 in and takes 174 lb in an earthquake',
    origin: 'second-hand',
    source: 'SEAINT list 2009, worked by NDS 2005 Table 11N: 1.25/1.62 x 141 x 1.6',
    inputs: { ...JOINT, penetrationIn: 1.25, loadDuration: 1.6, demandLb: 180 },
    expect: {
      verdict: 'fails',
      severity: 'engineer',
      repairs: ['add-nails', 'engineer-letter'],
      values: { lateralLb: 174, penetrationFactor: 0.7716 },
    },
    tolerance: WHOLE_POUND,
  },
  {
    name: 'exactly six diameters still count, six tenths of the full value',
    origin: 'hand-worked',
    source: 'NDS 2018 Table 12N note 3 (second-hand): p/10D from 6D on',
    inputs: { ...JOINT, penetrationIn: 0.972, demandLb: 0 },
    expect: { verdict: 'meets', ratio: 0, remaining: 0.6, values: { penetrationFactor: 0.6, penetrationDiameters: 6 } },
  },
  {
    name: 'under six diameters a nail counts for nothing, whatever the load',
    origin: 'second-hand',
    source: 'NDS 2018 12.1.6 (second-hand): least penetration 6D',
    inputs: { ...JOINT, penetrationIn: 0.9 },
    expect: { verdict: 'fails', ratio: 1.08, remaining: 0, severity: 'engineer', values: { lateralLb: 0 } },
  },
  {
    name: 'a nail over its load by a quarter needs more nails',
    origin: 'hand-worked',
    source: EQUATIONS,
    inputs: { ...JOINT, demandLb: 176.1 },
    expect: { verdict: 'fails', ratio: 1.25, severity: 'repair', repairs: ['add-nails'] },
    tolerance: { within: 0.001, reason: 'the load was chosen to four figures' },
  },
  {
    name: 'toe-nailed it keeps 0.83 across and 0.67 along',
    origin: 'second-hand',
    source: 'NDS 2018 12.5.4 (second-hand), on Table 12N and Table 12.2C',
    inputs: { ...JOINT, toeNailed: true, demandLb: 100 },
    expect: { verdict: 'meets', referrals: ['engineer'], values: { lateralLb: 117, withdrawalLb: 57 } },
    tolerance: WHOLE_POUND,
  },
  {
    name: 'a nail named by its size is the same nail',
    origin: 'hand-worked',
    source: EQUATIONS,
    inputs: {
      diameterIn: 0.162,
      lengthIn: 3.5,
      sideThicknessIn: 1.5,
      sideMaterial: 'sawn',
      G: 0.5,
      demandLb: 130,
    },
    expect: { verdict: 'meets', values: { lateralLb: 140.9, yieldPsi: 90_000, mainPsi: 4650 } },
    tolerance: TENTH,
  },
  {
    name: 'without a load it cannot be told, but what the nail takes is said',
    origin: 'hand-worked',
    source: EQUATIONS,
    inputs: JOINT,
    expect: { verdict: 'undetermined', missing: ['demandLb'], severity: 'record', values: { lateralLb: 140.9 } },
    tolerance: TENTH,
  },
  {
    name: 'without the species it cannot be told',
    origin: 'hand-worked',
    source: 'no measurement, no verdict',
    inputs: { nail: '8d-box', sideThicknessIn: 0.5, sideMaterial: 'plywood' },
    expect: { verdict: 'undetermined', missing: ['mainSpecies'] },
  },
  {
    name: 'a side member of another species bears by its own gravity',
    origin: 'hand-worked',
    source: 'NDS: 16600 G^1.84 to the nearest 50 psi; 0.50 gives 4650, 0.42 gives 3350',
    inputs: { ...JOINT, sideSpecies: 'spruce-pine-fir', demandLb: 100 },
    expect: { verdict: 'meets', values: { mainPsi: 4650, sidePsi: 3350 } },
  },
  {
    name: 'a nail too short fails under no load too',
    origin: 'second-hand',
    source: 'NDS 2018 12.1.6 (second-hand): least penetration 6D',
    inputs: { ...JOINT, penetrationIn: 0.9, demandLb: 0 },
    expect: { verdict: 'fails', remaining: 0, repairs: ['add-nails', 'engineer-letter'] },
  },
];

/** What the rule asks. */
export const rule = text(
  'A nail carries the smallest load of its yield modes, times its factors, and nothing when too little of it is in the wood.',
  'Un clavo soporta la menor carga de sus modos de falla, por sus factores, y nada si entra muy poco en la madera.',
);

/** What the check answers. */
export const values: ValueWords = {
  diameterIn: {
    label: text('Nail diameter', 'Diámetro del clavo'),
    how: text('By its name, or as measured.', 'Por su nombre, o medido.'),
  },
  penetrationIn: {
    label: text('Penetration', 'Penetración'),
    how: text(
      'As measured; else nail length less side thickness. Toe-nailed: length x cos 30 less a third of the length.',
      'Medida; si no, largo menos grueso. En ángulo: largo x cos 30 menos un tercio del largo.',
    ),
  },
  penetrationDiameters: {
    label: text('Penetration in diameters', 'Penetración en diámetros'),
    how: text('Penetration divided by diameter.', 'Penetración entre diámetro.'),
  },
  penetrationFactor: {
    label: text('Penetration factor', 'Factor de penetración'),
    how: text(
      'Penetration over ten diameters, at most 1; 0 under six diameters.',
      'Penetración entre diez diámetros, lo más 1; 0 con menos de seis.',
    ),
  },
  mainPsi: {
    label: text('Strength under the nail, main member', 'Resistencia bajo el clavo, pieza principal'),
    how: text('16600 x G to the power 1.84, to the nearest 50 psi.', '16600 x G a la 1.84, redondeado a 50 psi.'),
  },
  sidePsi: {
    label: text('Strength under the nail, side member', 'Resistencia bajo el clavo, pieza lateral'),
    how: text('The same for lumber; from the table for panels and steel.', 'Igual en madera; de la tabla en otros.'),
  },
  yieldPsi: {
    label: text('Bending yield strength of the nail', 'Resistencia a flexión del clavo'),
    how: text('From the table by diameter, unless given.', 'De la tabla por diámetro, si no se da.'),
  },
  mainBearingIn: {
    label: text('Bearing in the main member', 'Apoyo en la pieza principal'),
    how: text(
      'The penetration from ten diameters on; below, less one diameter for half the point.',
      'La penetración desde diez diámetros; si es menos, menos un diámetro por media punta.',
    ),
  },
  sideBearingIn: {
    label: text('Bearing in the side member', 'Apoyo en la pieza lateral'),
    how: text('Its thickness; toe-nailed, a third of the nail.', 'Su grueso; en ángulo, un tercio del clavo.'),
  },
  ...YIELD_WORDS,
  referenceLb: {
    label: text('Reference load across the nail', 'Carga de referencia de lado'),
    how: text(
      'The least mode. Under ten diameters: the lower of that and the penetration factor times the full value.',
      'El menor modo. Con menos de diez diámetros: lo menor entre ese y el factor por el valor completo.',
    ),
  },
  lateralLb: {
    label: text('Load across the nail', 'Carga de lado'),
    how: text('Reference load x load duration; x 0.83 toe-nailed.', 'Referencia x duración; x 0.83 en ángulo.'),
  },
  withdrawalLbPerIn: {
    label: text('Withdrawal for each inch', 'Extracción por pulgada'),
    how: text('1380 x G to the power 2.5 x diameter.', '1380 x G a la 2.5 x diámetro.'),
  },
  withdrawalLb: {
    label: text('Withdrawal of the nail', 'Extracción del clavo'),
    how: text(
      'That x penetration x load duration; toe-nailed x 0.67, on length less a third of it over cos 30.',
      'Eso x penetración x duración; en ángulo x 0.67, sobre el largo menos su tercio entre cos 30.',
    ),
  },
};
