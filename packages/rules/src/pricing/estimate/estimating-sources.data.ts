import type { Source } from '../../kernel/index.ts';

/** Where the estimating formulas and their check values come from. */
export const MARKUP_SOURCE: Source = {
  id: 'markup-and-margin',
  title: 'Comparing contractor markups, JLC: markup on cost, margin on price',
  edition: 'as read',
  section: 'required markup',
  basis: 'published',
};
export const BURDEN_SOURCE: Source = {
  id: 'labor-burden',
  title: "What are your construction company's true labor costs, TGC CPA",
  edition: 'as read',
  section: 'burden rate',
  basis: 'published',
};
export const BOARD_FEET_SOURCE: Source = {
  id: 'griffith-carpentry',
  title: 'Griffith, Carpentry',
  edition: '1916',
  section: '77, estimating lumber quantities',
  basis: 'published',
};
export const SHEATHING_SOURCE: Source = {
  id: 'modern-carpentry',
  title: 'Modern Carpentry',
  edition: '2022',
  section: '11.15.3',
  basis: 'published',
};
export const NAIL_WEIGHT_SOURCE: Source = {
  id: 'army-en0069a',
  title: 'US Army EN0069A, nail requirements and waste',
  edition: 'as read',
  section: 'table 4-1 and answers',
  basis: 'published',
};
export const MAN_DAYS_SOURCE: Source = {
  id: 'navedtra-14045',
  title: 'NAVEDTRA 14045, Builder Advanced, material and labor estimates',
  edition: '1997, as mirrored',
  section: 'man-days and duration',
  basis: 'published',
};
export const STUD_COUNT_SOURCE: Source = {
  id: 'stud-count',
  title: 'Studs of a wall: one at each spacing and one to close',
  edition: 'none',
  section: 'take-off',
  basis: 'memory',
};
export const PANEL_NAILS_SOURCE: Source = {
  id: 'panel-nail-count',
  title: 'Nails of one panel counted from its edges and the studs between them',
  edition: 'none',
  section: 'take-off',
  basis: 'common-practice',
};
