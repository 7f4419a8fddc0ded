import { sillBoltShear } from './checks/anchor/sill-bolt-shear.check.ts';
import { sillBolts } from './checks/anchor/sill-bolts.check.ts';
import { threadEngagement } from './checks/anchor/thread-engagement.check.ts';
import { washerBearing } from './checks/anchor/washer-bearing.check.ts';
import { bearingSeat } from './checks/bearing/seat.check.ts';
import { hanger } from './checks/connection/hanger.check.ts';
import { nail } from './checks/connection/nail.check.ts';
import { toeNail } from './checks/connection/toe-nail.check.ts';
import { engineered } from './checks/cut/engineered.check.ts';
import { joist } from './checks/cut/joist.check.ts';
import { stud } from './checks/cut/stud.check.ts';
import { topPlate } from './checks/cut/top-plate.check.ts';
import { insects } from './checks/decay/insects.check.ts';
import { moisture } from './checks/decay/moisture.check.ts';
import { rodLoss } from './checks/decay/rod-loss.check.ts';
import { sectionLoss } from './checks/decay/section-loss.check.ts';
import { baseShear } from './checks/demand/base-shear.check.ts';
import { asbestos } from './checks/hazard/asbestos.check.ts';
import { lead } from './checks/hazard/lead.check.ts';
import { mold } from './checks/hazard/mold.check.ts';
import { silica } from './checks/hazard/silica.check.ts';
import { water } from './checks/hazard/water.check.ts';
import { deflection } from './checks/level/deflection.check.ts';
import { floorSlope } from './checks/level/floor-slope.check.ts';
import { equilibriumMoisture } from './checks/movement/equilibrium-moisture.check.ts';
import { shrinkage } from './checks/movement/shrinkage.check.ts';
import { finiteLot } from './checks/sample/finite-lot.check.ts';
import { likeParts } from './checks/sample/like-parts.check.ts';
import { proportion } from './checks/sample/proportion.check.ts';
import { nailSurvey } from './checks/shear-wall/nail-survey.check.ts';
import { overturning } from './checks/shear-wall/overturning.check.ts';
import { panelCapacity } from './checks/shear-wall/panel-capacity.check.ts';
import { panelLayout } from './checks/shear-wall/panel-layout.check.ts';
import { perforated } from './checks/shear-wall/perforated.check.ts';
import type { Check } from './kernel/index.ts';

/** Every check of the package. Adding one is a file, its cases and a line here. */
export const checks: readonly Check[] = [
  sillBoltShear,
  sillBolts,
  threadEngagement,
  washerBearing,
  engineered,
  joist,
  stud,
  topPlate,
  bearingSeat,
  hanger,
  nail,
  toeNail,
  nailSurvey,
  panelLayout,
  perforated,
  overturning,
  panelCapacity,
  deflection,
  floorSlope,
  equilibriumMoisture,
  shrinkage,
  insects,
  moisture,
  rodLoss,
  sectionLoss,
  baseShear,
  asbestos,
  lead,
  mold,
  silica,
  water,
  finiteLot,
  likeParts,
  proportion,
];
