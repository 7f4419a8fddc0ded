import { assumed, fixed, type RepairStep } from './define-repair.ts';

/** Protects the place, opens and closes the finish around the repair, and hauls the debris away. */
export const openAndClose = (areaSf: number): RepairStep[] => [
  fixed('protect-place', 1, 'Once for the place.', 'Una vez por lugar.'),
  assumed('open-finish', areaSf, `${areaSf} SF around it.`, `${areaSf} pies² alrededor.`),
  assumed('close-finish', areaSf, 'The same area closed again.', 'La misma área cerrada de nuevo.'),
  fixed('haul-debris', 1, 'Once for the visit.', 'Una vez por visita.'),
];

/** The hold point before it is covered. */
export const inspected = fixed('inspection-hold', 1, 'Before it is covered.', 'Antes de cubrir.');

/** Shored first, and let down again when the load path is whole. */
export const shored: RepairStep[] = [
  fixed('shore-load', 1, 'Before any wood that carries is touched.', 'Antes de tocar madera que carga.'),
  fixed('release-shoring', 1, 'When the load path is whole again.', 'Cuando la carga tiene camino de nuevo.'),
];

const MEMBER_LENGTH_LF = 8;

/** An operation along the length of a member that was not measured. */
export const memberLength = (operation: string): RepairStep =>
  assumed(operation, MEMBER_LENGTH_LF, 'Length of the member.', 'Largo del elemento.');
