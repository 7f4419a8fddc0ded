import { type CheckCase, text, type ValueWords } from '../../kernel/index.ts';

const SHEET = 'F_c-perp x (side squared less the hole, bolt + 1/16 in), by hand';
const PLATE = { sideIn: 3, boltDiameterIn: 0.625, species: 'douglas-fir-larch' };

export const cases: readonly CheckCase[] = [
  {
    name: 'a 3 in plate on a 5/8 in bolt bears on 8.629 square inches and takes 5393 lb in Douglas fir-larch',
    origin: 'hand-worked',
    source: SHEET,
    inputs: { ...PLATE, demandLb: 5000 },
    expect: {
      verdict: 'meets',
      remaining: 1,
      severity: 'record',
      values: { netAreaIn2: 8.629, fcPerpPsi: 625, capacityLb: 5393 },
    },
    tolerance: { within: 0.5, reason: 'the worked load is written to a pound' },
  },
  {
    name: 'hem-fir crushes at 405 psi',
    origin: 'second-hand',
    source: 'NDS Supplement Table 4A (second-hand): F_c-perp 405',
    inputs: { ...PLATE, species: 'hem-fir', demandLb: 4000 },
    expect: {
      verdict: 'fails',
      severity: 'repair',
      repairs: ['plate-washer', 'engineer-letter'],
      values: { fcPerpPsi: 405 },
    },
  },
  {
    name: 'a pull equal to what a 2 in washer takes is just met',
    origin: 'hand-worked',
    source: SHEET,
    inputs: { sideIn: 2, boltDiameterIn: 0.4375, species: 'hem-fir', demandLb: 405 * (4 - Math.PI / 16) },
    expect: { verdict: 'meets', ratio: 1 },
  },
  {
    name: 'twice what it takes goes to an engineer',
    origin: 'hand-worked',
    source: SHEET,
    inputs: { sideIn: 2, boltDiameterIn: 0.4375, species: 'hem-fir', demandLb: 810 * (4 - Math.PI / 16) },
    expect: { verdict: 'fails', ratio: 2, remaining: 0.5, severity: 'engineer' },
  },
  {
    name: 'redwood takes its lower, open-grain value, from memory',
    origin: 'memory',
    source: 'NDS Supplement, redwood not read',
    inputs: { ...PLATE, species: 'redwood', demandLb: 1000 },
    expect: { verdict: 'meets', referrals: ['engineer'], values: { fcPerpPsi: 425 } },
  },
  {
    name: 'without a pull it cannot be told, but what the wood takes is said',
    origin: 'hand-worked',
    source: SHEET,
    inputs: PLATE,
    expect: { verdict: 'undetermined', severity: 'record', missing: ['demandLb'], values: { capacityLb: 5393 } },
    tolerance: { within: 0.5, reason: 'the worked load is written to a pound' },
  },
];

/** What the rule asks. */
export const rule = text(
  'The wood under the washer, less the bolt hole, is not crushed across the grain by the pull of the bolt.',
  'La madera bajo la arandela, sin el agujero, no se aplasta a través de la veta con el tirón del perno.',
);

/** What the check answers. */
export const values: ValueWords = {
  netAreaIn2: {
    label: text('Bearing area', 'Área de apoyo'),
    how: text(
      'Side squared, less the hole: a circle 1/16 in wider than the bolt.',
      'Lado al cuadrado, menos el agujero: un círculo 1/16 in mayor que el perno.',
    ),
  },
  fcPerpPsi: {
    label: text('Design value across the grain', 'Valor de diseño perpendicular a la fibra'),
    how: text('From the table, by species.', 'De la tabla, por especie.'),
  },
  capacityLb: {
    label: text('Load the wood takes', 'Carga que resiste la madera'),
    how: text('Bearing area x design value.', 'Área de apoyo x valor de diseño.'),
  },
};
