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
