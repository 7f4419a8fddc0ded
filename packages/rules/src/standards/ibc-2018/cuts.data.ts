import type { Source } from '../../kernel/index.ts';
import { JOIST_CUTS_2018, type JoistCutRule, STUD_CUTS_2018, type StudCutRule } from '../irc-2018/cuts.data.ts';

const ibc = (section: string): Source => ({
  id: `ibc-2018-${section}`,
  title: 'International Building Code, conventional light-frame construction',
  edition: '2018, not read',
  section,
  basis: 'memory',
});

/** The building code asks the same shares as the residential code. */
export const STUD_CUTS_IBC: StudCutRule = {
  ...STUD_CUTS_2018,
  id: 'ibc-2018',
  edgeMisprinted: false,
  source: ibc('2308.5.9, 2308.5.10'),
};
export const JOIST_CUTS_IBC: JoistCutRule = { ...JOIST_CUTS_2018, id: 'ibc-2018', source: ibc('2308.4.2.4') };
