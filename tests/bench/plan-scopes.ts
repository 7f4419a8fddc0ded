import { evaluateScope, type Hours, type ScopeRequest, starterCostBook } from '@underlath/rules';

const walls = 200;
const findingsPerWall = 10;
const kinds = ['panel-replace', 'member-replace', 'stud-sister', 'coupler-and-rod', 'plate-tie'];
const hours = new Map(starterCostBook.items.map((item) => [item.operation, item.hoursPerUnit ?? undefined]));
const hoursOf = (operation: string): Hours | undefined => hours.get(operation);

export const findingCount = walls * findingsPerWall;

/** Walls of 16 ft, each with ten findings that overlap their neighbors. */
const requests: ScopeRequest[] = Array.from({ length: walls }, (_, wall) => ({
  location: { kind: 'wall', widthIn: 192, heightIn: 97.125, framingSpacingIn: 16 },
  findings: Array.from({ length: findingsPerWall }, (_, at) => ({
    id: `f${at}`,
    repair: kinds[(wall + at) % kinds.length] ?? 'plate-tie',
    extents: [{ xIn: at * 15, yIn: (wall * 7) % 40, widthIn: 12 + ((wall + at) % 40), heightIn: 30 + (at % 5) * 5 }],
  })),
  crewSize: 2,
  hoursPerDay: 8,
}));

/** Every wall planned as one scope: unions, layout, order, shares. Answers the hours, so that nothing is left out. */
export const planWalls = (): number =>
  requests.reduce((sum, request) => sum + evaluateScope(request, hoursOf).totalHours.likely, 0);

/** The naive sum of areas with overlaps taken off two by two: no framing, no members, no order, no shares. */
export const sumPairwise = (): number =>
  requests.reduce((sum, { findings }) => {
    let areaSqIn = 0;
    for (const [at, one] of findings.entries())
      for (const rect of one.extents) {
        areaSqIn += rect.widthIn * rect.heightIn;
        // Takes off what it shares with each finding before it, two by two; three that overlap are still miscounted.
        for (const other of findings.slice(0, at).flatMap((before) => before.extents)) {
          const widthIn = Math.min(rect.xIn + rect.widthIn, other.xIn + other.widthIn) - Math.max(rect.xIn, other.xIn);
          const heightIn =
            Math.min(rect.yIn + rect.heightIn, other.yIn + other.heightIn) - Math.max(rect.yIn, other.yIn);
          if (widthIn > 0 && heightIn > 0) areaSqIn -= widthIn * heightIn;
        }
      }
    return sum + areaSqIn;
  }, 0);
