import type { Source } from '../../kernel/index.ts';

export const TOLERABLE_SOURCE: Source = {
  id: 'tolerable-share',
  title: 'How many bad parts may stay, and how sure one must be, is a choice of whoever answers for the house',
  edition: 'engineering judgement',
  section: 'tolerable share',
  basis: 'common-practice',
};
export const ODD_ONE_OUT_SOURCE: Source = {
  id: 'odd-one-out',
  title: 'Like places are built alike: the one without the hardware of the others is opened first',
  edition: 'trade habit',
  section: 'like parts',
  basis: 'common-practice',
};

/** Offered until somebody chooses: 59 good ones of 59 rule it out at 95%. */
export const TOLERABLE_PCT = 5;
/** Asked for until somebody chooses, percent. */
export const USUAL_CONFIDENCE_PCT = 95;
