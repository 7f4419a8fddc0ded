import type { Source } from '../../kernel/index.ts';

export const NESHAP_SOURCE: Source = {
  id: '40-cfr-61-m',
  title: 'EPA asbestos NESHAP, demolition and renovation',
  edition: 'CFR of July 2002 and an EPA Region 5 guide, as read',
  section: '40 CFR 61.141, 61.145',
  basis: 'published',
};

/** Residential buildings with up to so many homes are outside the rule, unless several belong to one project. */
export const NESHAP_EXCLUDED_HOMES = 4;
/** A renovation gives notice from so much suspect material on pipes, feet. */
export const NESHAP_PIPE_FT = 260;
/** The same for other parts of the building, square feet. */
export const NESHAP_AREA_SF = 160;
/** Working days between the written notice and the work. */
export const NESHAP_NOTICE_DAYS = 10;
