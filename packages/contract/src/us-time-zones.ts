import type { UsState } from './us-states.ts';

/** A clock that is kept in a state, by its name in the IANA time zone database, and where. */
export interface StateZone {
  readonly timeZone: string;
  /** Empty where it is all of the state. */
  readonly where: string;
}

const all = (timeZone: string): readonly StateZone[] => [{ timeZone, where: '' }];
const eastern = all('America/New_York');
const central = all('America/Chicago');
const mountain = all('America/Denver');
const pacific = all('America/Los_Angeles');

/**
 * The clocks kept in each state today, that of most of it first. Names: IANA time zone database 2025c, zone.tab (published).
 * Which part of a state keeps which clock: 49 CFR part 71, second-hand from lists that name its lines; places that keep their
 * neighbor's clock without a rule are left out. Zones that differ only before the year 2000 are one here.
 */
export const STATE_ZONES: Readonly<Record<UsState, readonly StateZone[]>> = {
  AL: central,
  AK: [
    { timeZone: 'America/Anchorage', where: 'most of the state' },
    { timeZone: 'America/Adak', where: 'the western Aleutian Islands' },
  ],
  AZ: [
    { timeZone: 'America/Phoenix', where: 'most of the state' },
    { timeZone: 'America/Denver', where: 'the Navajo Nation' },
  ],
  AR: central,
  CA: pacific,
  CO: mountain,
  CT: eastern,
  DE: eastern,
  DC: eastern,
  FL: [
    { timeZone: 'America/New_York', where: 'most of the state' },
    { timeZone: 'America/Chicago', where: 'the Panhandle west of the Apalachicola River' },
  ],
  GA: eastern,
  HI: all('Pacific/Honolulu'),
  ID: [
    { timeZone: 'America/Boise', where: 'south of the Salmon River' },
    { timeZone: 'America/Los_Angeles', where: 'north of the Salmon River' },
  ],
  IL: central,
  IN: [
    { timeZone: 'America/Indiana/Indianapolis', where: 'most of the state' },
    { timeZone: 'America/Chicago', where: 'the counties around Gary and Evansville' },
  ],
  IA: central,
  KS: [
    { timeZone: 'America/Chicago', where: 'most of the state' },
    { timeZone: 'America/Denver', where: 'Greeley, Hamilton, Sherman and Wallace counties' },
  ],
  KY: [
    { timeZone: 'America/Kentucky/Louisville', where: 'the east, with Louisville' },
    { timeZone: 'America/Chicago', where: 'the west' },
  ],
  LA: central,
  ME: eastern,
  MD: eastern,
  MA: eastern,
  MI: [
    { timeZone: 'America/Detroit', where: 'most of the state' },
    { timeZone: 'America/Menominee', where: 'Dickinson, Gogebic, Iron and Menominee counties' },
  ],
  MN: central,
  MS: central,
  MO: central,
  MT: mountain,
  NE: [
    { timeZone: 'America/Chicago', where: 'most of the state' },
    { timeZone: 'America/Denver', where: 'the west' },
  ],
  NV: [
    { timeZone: 'America/Los_Angeles', where: 'most of the state' },
    { timeZone: 'America/Denver', where: 'West Wendover' },
  ],
  NH: eastern,
  NJ: eastern,
  NM: mountain,
  NY: eastern,
  NC: eastern,
  ND: [
    { timeZone: 'America/Chicago', where: 'most of the state' },
    { timeZone: 'America/Denver', where: 'the southwest' },
  ],
  OH: eastern,
  OK: central,
  OR: [
    { timeZone: 'America/Los_Angeles', where: 'most of the state' },
    { timeZone: 'America/Boise', where: 'most of Malheur County' },
  ],
  PA: eastern,
  RI: eastern,
  SC: eastern,
  SD: [
    { timeZone: 'America/Chicago', where: 'the east' },
    { timeZone: 'America/Denver', where: 'the west' },
  ],
  TN: [
    { timeZone: 'America/Chicago', where: 'middle and west' },
    { timeZone: 'America/New_York', where: 'most of the east' },
  ],
  TX: [
    { timeZone: 'America/Chicago', where: 'most of the state' },
    { timeZone: 'America/Denver', where: 'El Paso and Hudspeth counties' },
  ],
  UT: mountain,
  VT: eastern,
  VA: eastern,
  WA: pacific,
  WV: eastern,
  WI: central,
  WY: mountain,
};

/** The zones to choose from; none while the state is not said. */
export const zonesOf = (state: string | null): readonly StateZone[] => STATE_ZONES[state as UsState] ?? [];

/** The zone of a site: the one that was chosen, if the state has it; else the state's own, if it has only one. */
export function zoneOfSite(state: string | null, chosen: string | null): string | null {
  const zones = zonesOf(state);
  const known = zones.find(({ timeZone }) => timeZone === chosen) ?? (zones.length === 1 ? zones[0] : undefined);
  return known?.timeZone ?? null;
}
