import type { FindingContext, Location } from '@underlath/contract';

/** What the person said about the place, filled up with what the place itself knows. */
export function contextOf(said: FindingContext, place: Location | undefined): FindingContext {
  return place ? { storiesAbove: place.storiesAbove, ...said } : said;
}
