import type { Source } from '../../kernel/index.ts';

export const DRY_LUMBER_SOURCE: Source = {
  id: 'wwpa-tech-notes-10',
  title: 'WWPA Tech Notes 10, moisture grades of lumber',
  edition: '2002',
  section: 'S-DRY at most 19%',
  basis: 'published',
};

/** Dry lumber and dry service end here, percent of dry weight. */
export const DRY_LUMBER_PCT = 19;
