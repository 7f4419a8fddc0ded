import type { Source } from '../../kernel/index.ts';
import {
  ENGINEERED_CUTS_2018,
  JOIST_CUTS_2018,
  type JoistCutRule,
  STUD_CUTS_2018,
  type StudCutRule,
} from '../irc-2018/cuts.data.ts';

const unread = (source: Source): Source => ({
  ...source,
  id: source.id.replace('2018', '2021'),
  edition: '2021, not read, taken as unchanged',
  basis: 'memory',
});

/** The 2021 text was not read; the editions before and after it agree on the numbers. */
export const STUD_CUTS_2021: StudCutRule = {
  ...STUD_CUTS_2018,
  id: 'irc-2021',
  edgeMisprinted: false,
  source: unread(STUD_CUTS_2018.source),
};
export const JOIST_CUTS_2021: JoistCutRule = {
  ...JOIST_CUTS_2018,
  id: 'irc-2021',
  source: unread(JOIST_CUTS_2018.source),
};
export const ENGINEERED_CUTS_2021 = unread(ENGINEERED_CUTS_2018);
