import type { Source } from '../../kernel/index.ts';

export interface PlateTieRule {
  readonly id: string;
  readonly code: 'irc' | 'ibc';
  readonly year: string;
  /** A cut larger than this share of the plate width needs a tie. */
  readonly cutShareLimit: number;
  readonly thicknessIn: number;
  readonly widthIn: number;
  /** How far the tie runs past the opening on each side; 0 where the edition does not say. */
  readonly pastOpeningIn: number;
  readonly nailsEachSide: number;
  readonly nail: '10d' | '16d';
  readonly source: Source;
  /** The sentence that asks for no tie where structural panel covers the entire side of the wall with the cut. */
  readonly panelException?: Source;
}

const IRC_SECTION = 'R602.6.1';

/** The exception was read for 2018 and 2024 alone; for the others it is taken as unchanged. */
const EXCEPTION_REMEMBERED = { edition: 'taken as in 2018, not read', basis: 'memory' } as const;

function irc(
  year: string,
  parts: Partial<PlateTieRule>,
  basis: Source['basis'],
  edition = year,
  exception: Partial<Source> = EXCEPTION_REMEMBERED,
): PlateTieRule {
  const source: Source = {
    id: `irc-${year}-${IRC_SECTION}`,
    title: 'International Residential Code',
    edition,
    section: IRC_SECTION,
    basis,
  };
  return {
    id: `irc-${year}`,
    code: 'irc',
    year,
    cutShareLimit: 0.5,
    thicknessIn: 0.054,
    widthIn: 1.5,
    pastOpeningIn: 6,
    nailsEachSide: 8,
    nail: '10d',
    source,
    panelException: { ...source, id: `${source.id}-exception`, section: `${IRC_SECTION}, exception`, ...exception },
    ...parts,
  };
}

function ibc(year: string, section: string, basis: Source['basis']): PlateTieRule {
  return {
    id: `ibc-${year}`,
    code: 'ibc',
    year,
    cutShareLimit: 0,
    thicknessIn: 0.058,
    widthIn: 1.5,
    pastOpeningIn: 0,
    nailsEachSide: 6,
    nail: '16d',
    source: { id: `ibc-${year}-${section}`, title: 'International Building Code', edition: year, section, basis },
  };
}

/**
 * Ties over cut top plates, edition by edition. IRC 2003 and 2006 asked for eight 16d, 2009 and later for eight 10d
 * (0.148 in); the 6 in past the opening is printed from 2012 on. IBC ties any cut, with six 16d, and has no exception.
 */
export const PLATE_TIE_RULES: readonly PlateTieRule[] = [
  irc('2003', { nail: '16d', pastOpeningIn: 0 }, 'second-hand', '2003, as quoted'),
  irc('2006', { nail: '16d', pastOpeningIn: 0 }, 'second-hand', '2006, as a code-change proposal quotes it'),
  irc('2009', { pastOpeningIn: 0 }, 'second-hand', '2009, as a code-change proposal words it'),
  irc('2012', {}, 'memory', '2012 (text seen, edition from memory)'),
  irc('2015', {}, 'memory', '2015 (text seen, edition from memory)'),
  irc('2018', {}, 'published', '2018', {}),
  irc('2021', {}, 'memory', '2021 (between 2018 and 2024, not read)'),
  irc('2024', {}, 'second-hand', '2024, as transcribed', {}),
  ibc('2009', '2308.9.8', 'memory'),
  ibc('2012', '2308.9.8', 'memory'),
  ibc('2015', '2308.5.8', 'published'),
  ibc('2018', '2308.5.8', 'memory'),
  ibc('2021', '2308.5.8', 'memory'),
  ibc('2024', '2308.5.8', 'memory'),
];
