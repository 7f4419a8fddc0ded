import type { Source } from '../../kernel/index.ts';

export const SECTION_LOSS_SOURCE: Source = {
  id: 'section-loss',
  title: 'Section-loss screening: no credit for decayed wood and a margin beside it',
  edition: 'none',
  section: 'section ratios from mechanics, 1/2 in margin',
  basis: 'common-practice',
};
export const DECAY_SOURCE: Source = {
  id: 'wood-handbook-decay',
  title: 'Wood Handbook, effect of decay on strength',
  edition: 'FPL-GTR-190 text as read',
  section: 'chapter 5',
  basis: 'published',
};
export const UNSOUND_SOURCE: Source = {
  id: 'irc-j404.3.3',
  title: 'International Residential Code Appendix J: unsound structure that is uncovered must be made to conform',
  edition: 'as read',
  section: 'J404.3.3',
  basis: 'published',
};

/** Sound-looking wood beside decay that gets no credit, inches. */
export const DECAY_MARGIN_IN = 0.5;
