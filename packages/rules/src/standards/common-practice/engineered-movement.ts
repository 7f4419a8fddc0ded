import type { Source } from '../../kernel/index.ts';
import { equilibriumMoisturePct } from '../wood-handbook-gtr-190/equilibrium-moisture.ts';

export const ENGINEERED_DEPTH_SOURCE: Source = {
  id: 'engineered-depth',
  title: 'I-joists and LVL are made dry; their later depth change is taken as 1/16 in',
  edition: 'none',
  section: 'engineered products',
  basis: 'common-practice',
};
export const PANEL_EXPANSION_SOURCE: Source = {
  id: 'ps-2-expansion',
  title: 'Wood structural panels, linear expansion about 0.5% from 50 to 90% humidity',
  edition: 'PS 2, not read',
  section: 'linear expansion',
  basis: 'memory',
};

/** Depth change of an I-joist or LVL when it dries or wets, inches. */
export const ENGINEERED_DEPTH_IN = 0.0625;

const PANEL_EXPANSION = 0.005;
const PANEL_AT_F = 70;
const PANEL_FROM_HUMIDITY_PCT = 50;
const PANEL_TO_HUMIDITY_PCT = 90;

/** Panel expansion in its plane per percent of moisture, the humidity limits turned into moisture at 70 F. */
export const panelExpansionPerPct =
  PANEL_EXPANSION /
  (equilibriumMoisturePct(PANEL_AT_F, PANEL_TO_HUMIDITY_PCT) -
    equilibriumMoisturePct(PANEL_AT_F, PANEL_FROM_HUMIDITY_PCT));
