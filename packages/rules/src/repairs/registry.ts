import type { Repair } from './define-repair.ts';
import { anchorRepairs } from './templates/anchor.data.ts';
import { decisionRepairs } from './templates/decision.data.ts';
import { hazardRepairs } from './templates/hazard.data.ts';
import { memberRepairs } from './templates/member.data.ts';
import { panelRepairs } from './templates/panel.data.ts';
import { seatRepairs } from './templates/seat.data.ts';

/** Every repair template. Adding one is an entry in `templates/`; the operations it names carry its order and sharing. */
export const repairs: readonly Repair[] = [
  ...anchorRepairs,
  ...seatRepairs,
  ...memberRepairs,
  ...panelRepairs,
  ...hazardRepairs,
  ...decisionRepairs,
];
