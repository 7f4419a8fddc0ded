import { sillBoltShearCard } from './checks/anchor/sill-bolt-shear.card.ts';
import { sillBoltsCard } from './checks/anchor/sill-bolts.card.ts';
import { threadEngagementCard } from './checks/anchor/thread-engagement.card.ts';
import { washerBearingCard } from './checks/anchor/washer-bearing.card.ts';
import { bearingSeatCard } from './checks/bearing/seat.card.ts';
import { hangerCard } from './checks/connection/hanger.card.ts';
import { nailCard } from './checks/connection/nail.card.ts';
import { toeNailCard } from './checks/connection/toe-nail.card.ts';
import { engineeredCard } from './checks/cut/engineered.card.ts';
import { joistCard } from './checks/cut/joist.card.ts';
import { studCard } from './checks/cut/stud.card.ts';
import { topPlateCard } from './checks/cut/top-plate.card.ts';
import { insectsCard } from './checks/decay/insects.card.ts';
import { moistureCard } from './checks/decay/moisture.card.ts';
import { rodLossCard } from './checks/decay/rod-loss.card.ts';
import { sectionLossCard } from './checks/decay/section-loss.card.ts';
import { baseShearCard } from './checks/demand/base-shear.card.ts';
import { asbestosCard } from './checks/hazard/asbestos.card.ts';
import { leadCard } from './checks/hazard/lead.card.ts';
import { moldCard } from './checks/hazard/mold.card.ts';
import { silicaCard } from './checks/hazard/silica.card.ts';
import { waterCard } from './checks/hazard/water.card.ts';
import { deflectionCard } from './checks/level/deflection.card.ts';
import { floorSlopeCard } from './checks/level/floor-slope.card.ts';
import { equilibriumMoistureCard } from './checks/movement/equilibrium-moisture.card.ts';
import { shrinkageCard } from './checks/movement/shrinkage.card.ts';
import { finiteLotCard } from './checks/sample/finite-lot.card.ts';
import { likePartsCard } from './checks/sample/like-parts.card.ts';
import { proportionCard } from './checks/sample/proportion.card.ts';
import { nailSurveyCard } from './checks/shear-wall/nail-survey.card.ts';
import { overturningCard } from './checks/shear-wall/overturning.card.ts';
import { panelCapacityCard } from './checks/shear-wall/panel-capacity.card.ts';
import { panelLayoutCard } from './checks/shear-wall/panel-layout.card.ts';
import { perforatedCard } from './checks/shear-wall/perforated.card.ts';
import type { Check, CheckCard } from './kernel/index.ts';

/** A check as a list knows it; the check itself is loaded when somebody picks it. */
export interface CheckEntry extends CheckCard {
  readonly load: () => Promise<Check>;
}

/** Every check of the package. Adding one is a folder entry and a line here. */
export const checkEntries: readonly CheckEntry[] = [
  { ...sillBoltShearCard, load: async () => (await import('./checks/anchor/sill-bolt-shear.check.ts')).sillBoltShear },
  { ...sillBoltsCard, load: async () => (await import('./checks/anchor/sill-bolts.check.ts')).sillBolts },
  {
    ...threadEngagementCard,
    load: async () => (await import('./checks/anchor/thread-engagement.check.ts')).threadEngagement,
  },
  { ...washerBearingCard, load: async () => (await import('./checks/anchor/washer-bearing.check.ts')).washerBearing },
  { ...engineeredCard, load: async () => (await import('./checks/cut/engineered.check.ts')).engineered },
  { ...joistCard, load: async () => (await import('./checks/cut/joist.check.ts')).joist },
  { ...studCard, load: async () => (await import('./checks/cut/stud.check.ts')).stud },
  { ...topPlateCard, load: async () => (await import('./checks/cut/top-plate.check.ts')).topPlate },
  { ...bearingSeatCard, load: async () => (await import('./checks/bearing/seat.check.ts')).bearingSeat },
  { ...hangerCard, load: async () => (await import('./checks/connection/hanger.check.ts')).hanger },
  { ...nailCard, load: async () => (await import('./checks/connection/nail.check.ts')).nail },
  { ...toeNailCard, load: async () => (await import('./checks/connection/toe-nail.check.ts')).toeNail },
  { ...nailSurveyCard, load: async () => (await import('./checks/shear-wall/nail-survey.check.ts')).nailSurvey },
  { ...panelLayoutCard, load: async () => (await import('./checks/shear-wall/panel-layout.check.ts')).panelLayout },
  { ...perforatedCard, load: async () => (await import('./checks/shear-wall/perforated.check.ts')).perforated },
  { ...overturningCard, load: async () => (await import('./checks/shear-wall/overturning.check.ts')).overturning },
  {
    ...panelCapacityCard,
    load: async () => (await import('./checks/shear-wall/panel-capacity.check.ts')).panelCapacity,
  },
  { ...deflectionCard, load: async () => (await import('./checks/level/deflection.check.ts')).deflection },
  { ...floorSlopeCard, load: async () => (await import('./checks/level/floor-slope.check.ts')).floorSlope },
  {
    ...equilibriumMoistureCard,
    load: async () => (await import('./checks/movement/equilibrium-moisture.check.ts')).equilibriumMoisture,
  },
  { ...shrinkageCard, load: async () => (await import('./checks/movement/shrinkage.check.ts')).shrinkage },
  { ...insectsCard, load: async () => (await import('./checks/decay/insects.check.ts')).insects },
  { ...moistureCard, load: async () => (await import('./checks/decay/moisture.check.ts')).moisture },
  { ...rodLossCard, load: async () => (await import('./checks/decay/rod-loss.check.ts')).rodLoss },
  { ...sectionLossCard, load: async () => (await import('./checks/decay/section-loss.check.ts')).sectionLoss },
  { ...baseShearCard, load: async () => (await import('./checks/demand/base-shear.check.ts')).baseShear },
  { ...asbestosCard, load: async () => (await import('./checks/hazard/asbestos.check.ts')).asbestos },
  { ...leadCard, load: async () => (await import('./checks/hazard/lead.check.ts')).lead },
  { ...moldCard, load: async () => (await import('./checks/hazard/mold.check.ts')).mold },
  { ...silicaCard, load: async () => (await import('./checks/hazard/silica.check.ts')).silica },
  { ...waterCard, load: async () => (await import('./checks/hazard/water.check.ts')).water },
  { ...finiteLotCard, load: async () => (await import('./checks/sample/finite-lot.check.ts')).finiteLot },
  { ...likePartsCard, load: async () => (await import('./checks/sample/like-parts.check.ts')).likeParts },
  { ...proportionCard, load: async () => (await import('./checks/sample/proportion.check.ts')).proportion },
];

const byId = new Map(checkEntries.map((entry) => [entry.id, entry]));

/** The entry of the check with this id, or undefined. */
export const findEntry = (id: string): CheckEntry | undefined => byId.get(id);
