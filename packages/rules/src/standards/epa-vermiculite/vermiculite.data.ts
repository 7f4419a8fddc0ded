import type { Source } from '../../kernel/index.ts';

export const VERMICULITE_SOURCE: Source = {
  id: 'epa-vermiculite',
  title: 'EPA and ATSDR, current best practices for vermiculite attic insulation',
  edition: '2003, text copies as read',
  section: 'assume it may contain asbestos; do not disturb it',
  basis: 'published',
};
