import { threadEngagement } from './checks/anchor/thread-engagement.check.ts';
import { bearingSeat } from './checks/bearing/seat.check.ts';
import { hanger } from './checks/connection/hanger.check.ts';
import { nail } from './checks/connection/nail.check.ts';
import { toeNail } from './checks/connection/toe-nail.check.ts';
import { engineered } from './checks/cut/engineered.check.ts';
import { joist } from './checks/cut/joist.check.ts';
import { stud } from './checks/cut/stud.check.ts';
import { topPlate } from './checks/cut/top-plate.check.ts';
import { sectionLoss } from './checks/decay/section-loss.check.ts';
import { lead } from './checks/hazard/lead.check.ts';
import { shrinkage } from './checks/movement/shrinkage.check.ts';
import { nailSurvey } from './checks/shear-wall/nail-survey.check.ts';
import type { Check } from './kernel/index.ts';

/** Every check of the package. Adding one is a file, its cases and a line here. */
export const checks: readonly Check[] = [
  threadEngagement,
  engineered,
  joist,
  stud,
  topPlate,
  bearingSeat,
  hanger,
  nail,
  toeNail,
  nailSurvey,
  shrinkage,
  sectionLoss,
  lead,
];
