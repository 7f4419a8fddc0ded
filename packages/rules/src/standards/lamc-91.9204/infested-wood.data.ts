import type { Source } from '../../kernel/index.ts';

export const INFESTED_WOOD_SOURCE: Source = {
  id: 'lamc-91.9204.1.2',
  title: 'Los Angeles Municipal Code, condition of wood in retrofit work',
  edition: 'as read',
  section: '91.9204.1.2: infested wood is strengthened or replaced until sound wood equals the original size',
  basis: 'published',
};
