import type { Source } from '../../kernel/index.ts';

export const UNKNOWN_SCHEDULE_SOURCE: Source = {
  id: 'trade-unknown-schedule',
  title: 'Walls of unknown nailing taken as the weakest likely: 15/32 sheathing, 8d at 6 in, Douglas fir-larch',
  edition: 'current',
  section: 'unknown schedule',
  basis: 'common-practice',
};
/** ASD earthquake strength of that wall, plf. It informs and never decides. */
export const UNKNOWN_SCHEDULE_PLF = 260;
