import type { Source } from '../../kernel/index.ts';

/** Span over allowed deflection, under live (or snow, wind) load alone and under dead plus live. */
export interface DeflectionLimits {
  readonly live: number;
  readonly total: number | undefined;
}

export const IBC_DEFLECTION_SOURCE: Source = {
  id: 'ibc-table-1604.3',
  title: 'International Building Code, deflection limits',
  edition: 'as read',
  section: 'Table 1604.3',
  basis: 'published',
};

/** Walls are limited under wind alone. */
export const IBC_DEFLECTION: Readonly<Record<string, DeflectionLimits>> = {
  floor: { live: 360, total: 240 },
  'roof-plaster-ceiling': { live: 360, total: 240 },
  'roof-other-ceiling': { live: 240, total: 180 },
  'roof-no-ceiling': { live: 180, total: 120 },
  'wall-plaster': { live: 360, total: undefined },
  'wall-brittle': { live: 240, total: undefined },
  'wall-flexible': { live: 120, total: undefined },
};
