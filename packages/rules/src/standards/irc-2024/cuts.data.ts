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
  id: source.id.replace('2018', '2024'),
  edition: '2024, not read, taken as unchanged',
  basis: 'memory',
});

/** The same shares as in 2018; the edge is now printed as it was always meant. */
export const STUD_CUTS_2024: StudCutRule = {
  ...STUD_CUTS_2018,
  id: 'irc-2024',
  edgeMisprinted: false,
  source: { ...STUD_CUTS_2018.source, id: 'irc-2024-R602.6', edition: '2024, as transcribed', basis: 'second-hand' },
};
/** R502.8.1 of 2024 was not read. */
export const JOIST_CUTS_2024: JoistCutRule = {
  ...JOIST_CUTS_2018,
  id: 'irc-2024',
  source: unread(JOIST_CUTS_2018.source),
};
export const ENGINEERED_CUTS_2024 = unread(ENGINEERED_CUTS_2018);
