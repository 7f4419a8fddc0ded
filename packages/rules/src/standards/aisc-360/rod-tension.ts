import type { Source } from '../../kernel/index.ts';

export const ROD_TENSION_SOURCE: Source = {
  id: 'aisc-360-j3.2',
  title: 'AISC 360 tension of a threaded rod, with ASTM F1554 grade 36 steel',
  edition: 'not read',
  section: 'Table J3.2',
  basis: 'memory',
};

const GRADE_36_TENSILE_PSI = 58_000;
const THREAD_SHARE = 0.75;
const OMEGA = 2;

/** Allowable tension of an ordinary (grade 36) threaded rod by its gross area, lb; diameter in inches. */
export const ordinaryRodTensionLb = (diameterIn: number): number =>
  (THREAD_SHARE * GRADE_36_TENSILE_PSI * (Math.PI / 4) * diameterIn ** 2) / OMEGA;
