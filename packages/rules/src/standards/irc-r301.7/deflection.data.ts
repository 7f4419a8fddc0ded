import type { Source } from '../../kernel/index.ts';
import type { DeflectionLimits } from '../ibc-table-1604.3/deflection.data.ts';

export const IRC_DEFLECTION_SOURCE: Source = {
  id: 'irc-r301.7',
  title: 'International Residential Code, allowable deflection',
  edition: 'as quoted on a code-change sheet',
  section: 'R301.7',
  basis: 'second-hand',
};

/** Span over allowed deflection. The table has one column, met under the load the member carries in use. */
export const IRC_DEFLECTION: Readonly<Record<string, DeflectionLimits>> = {
  floor: { live: 360, total: 360 },
  'ceiling-plaster': { live: 360, total: 360 },
  'ceiling-gypsum': { live: 240, total: 240 },
  'rafter-steep-no-ceiling': { live: 180, total: 180 },
  'wall-interior': { live: 180, total: 180 },
  'wall-plaster': { live: 360, total: 360 },
  'wall-brittle': { live: 240, total: 240 },
  'wall-flexible': { live: 120, total: 120 },
  'lintel-veneer': { live: 600, total: 600 },
  other: { live: 240, total: 240 },
};
