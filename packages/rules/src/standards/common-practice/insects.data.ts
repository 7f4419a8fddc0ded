import type { Source } from '../../kernel/index.ts';

export const INSECT_STRENGTH_SOURCE: Source = {
  id: 'wood-handbook-insects',
  title: 'Wood Handbook, insect damage: strength cannot be told from looks',
  edition: 'FPL-GTR-190 text as read',
  section: 'chapter 5',
  basis: 'published',
};
export const TUBE_SOURCE: Source = {
  id: 'termite-tubes',
  title: 'Pest trade pages: break a tube and look again; a rebuilt tube is active, an empty one proves nothing',
  edition: 'as read',
  section: 'termite tubes',
  basis: 'common-practice',
};
export const EATEN_DEPTH_SOURCE: Source = {
  id: 'eaten-depth',
  title: 'Eaten wood: a probe that sinks in by 1/2 in is no longer a matter of the surface',
  edition: 'none',
  section: 'an engineer from 1/2 in on, and at any depth in a part known to carry',
  basis: 'common-practice',
};

/** From this depth of eaten wood on an engineer decides, inches. */
export const EATEN_FOR_ENGINEER_IN = 0.5;
