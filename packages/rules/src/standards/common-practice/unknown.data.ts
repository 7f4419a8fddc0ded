import type { Source } from '../../kernel/index.ts';

export const UNKNOWN_SOURCE: Source = {
  id: 'unknown-is-old',
  title: 'A building of unknown age is treated as old',
  edition: 'trade habit',
  section: 'unknown year',
  basis: 'common-practice',
};
