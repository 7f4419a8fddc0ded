// Worked examples of handbooks and standards, asked over HTTP as any outside program would.
// Each row names where its figures come from; "computed" means worked by hand from the cited rule.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startTestApi, type TestApi } from '../support/api.ts';

interface Example {
  name: string;
  source: string;
  check: string;
  edition?: string;
  inputs: Record<string, unknown>;
  verdict?: string;
  severity?: string;
  /** [value, tolerance]; the tolerance is half of the last digit the source prints, or what rounding its coefficient makes. */
  values?: Record<string, [number, number]>;
  remaining?: [number, number] | null;
  flags?: Record<string, boolean>;
  missing?: string[];
}

const examples: Example[] = [
  {
    name: 'a 5/8 rod ending 1/8 in below a hex nut keeps 0.77 of it',
    source: 'ASME B18.2.2 nut height 0.535 in min, UNC 11 threads an inch; AISC Design Guide 1, 2.11.3; computed',
    check: 'anchor.thread-engagement',
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: -0.125, rule: 'flush' },
    verdict: 'fails',
    values: { engagedIn: [0.41, 0.0005], engagedThreads: [4.5, 0.05] },
    remaining: [0.766, 0.0005],
  },
  {
    name: 'a 7/8 rod 1/4 in short keeps 0.655',
    source: 'ASME B18.2.2 nut height 0.724 in min; AISC Design Guide 1, 2.11.3; computed',
    check: 'anchor.thread-engagement',
    inputs: { diameterIn: 0.875, nut: 'hex', projectionIn: -0.25, rule: 'flush' },
    verdict: 'fails',
    remaining: [0.655, 0.0005],
  },
  {
    name: 'a 1/2 rod 1/4 in short holds less than half its nut and counts for nothing',
    source: 'ASME B18.2.2 nut height 0.427 in min; AISC Design Guide 1, 2.11.3 (no credit below one half); computed',
    check: 'anchor.thread-engagement',
    inputs: { diameterIn: 0.5, nut: 'hex', projectionIn: -0.25, rule: 'flush' },
    verdict: 'fails',
    severity: 'engineer',
    remaining: [0, 0],
  },
  {
    name: 'a rod end exactly at the nut face meets the flush rule',
    source: 'AISC Manual 13th ed. p. 14-10, anchor rods',
    check: 'anchor.thread-engagement',
    inputs: { diameterIn: 0.625, nut: 'hex', projectionIn: 0, rule: 'flush' },
    verdict: 'meets',
    severity: 'record',
    remaining: [1, 0],
  },
  {
    name: 'two threads showing on a 1/2 rod meet the two-pitch rule exactly',
    source: 'UNC 13 threads an inch: 2/13 = 0.154 in; computed',
    check: 'anchor.thread-engagement',
    inputs: { diameterIn: 0.5, nut: 'hex', threadsShowing: 2, rule: 'two-pitches' },
    verdict: 'meets',
  },
  {
    name: 'a 2 in cut in a 3 1/2 in plate takes 57 percent and needs a tie',
    source: 'IRC R602.6.1 (over 50 percent); computed',
    check: 'cut.top-plate',
    inputs: { widthIn: 3.5, cutIn: 2, code: 'irc', bearingOrBraced: true, inShearWall: false },
    verdict: 'fails',
    severity: 'repair',
    values: { cutShare: [0.571, 0.0005] },
    flags: { tieRequired: true },
  },
  {
    name: 'a cut of exactly half the plate needs no tie under the IRC',
    source: 'IRC R602.6.1: greater than 50 percent',
    check: 'cut.top-plate',
    inputs: { widthIn: 3.5, cutIn: 1.75, code: 'irc', bearingOrBraced: true, inShearWall: false },
    verdict: 'meets',
    flags: { tieRequired: false },
  },
  {
    name: 'a cut plate in a shear wall goes to the engineer',
    source: 'severity table row 5',
    check: 'cut.top-plate',
    inputs: { widthIn: 3.5, cutIn: 2, code: 'irc', bearingOrBraced: true, inShearWall: true },
    severity: 'engineer',
  },
  {
    name: 'a 1 1/2 in Douglas-fir seat 1 1/2 in long carries 1,406 lb',
    source: 'NDS 3.10.2 with Fc-perp 625 psi: 625 x 1.5 x 1.5 = 1406; computed',
    check: 'bearing.seat',
    inputs: {
      widthIn: 1.5,
      bearingLengthIn: 1.5,
      support: 'wood',
      species: 'douglas-fir-larch',
      positiveConnection: true,
      atMemberEnd: true,
    },
    verdict: 'meets',
    values: { capacityLb: [1406.25, 0.5], bearingFactor: [1, 0] },
  },
  {
    name: 'a hem-fir seat of 1 in carries 607.5 lb and is under the 1 1/2 in minimum',
    source: 'NDS 3.10.2 with Fc-perp 405 psi; IRC R502.6; computed',
    check: 'bearing.seat',
    inputs: {
      widthIn: 1.5,
      bearingLengthIn: 1,
      support: 'wood',
      species: 'hem-fir',
      positiveConnection: true,
      atMemberEnd: true,
    },
    verdict: 'fails',
    values: { capacityLb: [607.5, 0.05], requiredIn: [1.5, 0] },
  },
  {
    name: 'the area factor of a 3 in interior bearing is 1.125 and gives 7,383 lb',
    source: 'NDS 3.10.4 and Table 3.10.4; 625 x 3.5 x 3.0 x 1.125; computed',
    check: 'bearing.seat',
    inputs: {
      widthIn: 3.5,
      bearingLengthIn: 3,
      support: 'wood',
      species: 'douglas-fir-larch',
      positiveConnection: true,
      atMemberEnd: false,
    },
    values: { bearingFactor: [1.125, 0], capacityLb: [7383, 0.5] },
  },
  {
    name: 'a beam on a sliver of steel that will move off it, held by nothing, is made safe first',
    source: 'severity table row 1',
    check: 'bearing.seat',
    inputs: {
      widthIn: 3.5,
      bearingLengthIn: 0.25,
      support: 'steel',
      species: 'douglas-fir-larch',
      positiveConnection: false,
      expectedMovementIn: 0.25,
      atMemberEnd: true,
    },
    verdict: 'fails',
    severity: 'make-safe',
    values: { seatMarginIn: [0, 0] },
  },
  {
    name: 'a hanger with six of ten header nails counts for 0.6',
    source: 'linear share of fasteners, common practice, no source',
    check: 'connection.hanger',
    inputs: {
      memberWidthIn: 1.5,
      hangerWidthIn: 1.5625,
      seatGapIn: 0,
      endGapIn: 0.0625,
      header: { specified: 10, installed: 6 },
      joist: { specified: 6, installed: 6 },
      rightFastener: true,
    },
    verdict: 'fails',
    remaining: [0.6, 0.0001],
  },
  {
    name: 'a hanger filled with the wrong fastener counts for nothing',
    source: 'inspection practice: short nails and drywall screws get no credit; common practice',
    check: 'connection.hanger',
    inputs: {
      memberWidthIn: 1.5,
      hangerWidthIn: 1.5625,
      seatGapIn: 0,
      endGapIn: 0,
      header: { specified: 10, installed: 10 },
      joist: { specified: 6, installed: 6 },
      rightFastener: false,
    },
    verdict: 'fails',
    remaining: [0, 0],
    severity: 'make-safe',
  },
  {
    name: 'fourteen of 48 edge nails overdriven 3/32 in ask for seven more nails',
    source: 'retrofit summary of APA TT-012: over 20 percent -> one nail for every two; computed',
    check: 'shear-wall.nail-survey',
    inputs: {
      panelThicknessIn: 0.46875,
      specifiedSpacingIn: 6,
      surveyedLengthIn: 288,
      counts: { flush: 34, overdrivenSlight: 0, overdriven: 14, overdrivenDeep: 0, nearEdge: 0, missed: 0 },
      panelDry: true,
    },
    verdict: 'fails',
    values: { nailsToAdd: [7, 0], overdrivenShare: [14 / 48, 0.0001] },
  },
  {
    name: 'a coast Douglas-fir 2x12 drying 14 to 6 percent shrinks 0.240 in across the grain',
    source: 'Wood Handbook ch. 13, coefficient 0.00267 tangential, linear within 6-14 percent; computed',
    check: 'movement.shrinkage',
    inputs: {
      members: [
        {
          name: 'joist A',
          kind: 'sawn',
          species: 'douglas-fir-coast',
          grain: 'tangential',
          sizeIn: 11.25,
          fromPct: 14,
          toPct: 6,
        },
      ],
    },
    values: { 'changeIn.joist A': [-0.2403, 0.0005] },
  },
  {
    name: 'a green 2x10 drying 28 to 9 percent shrinks 0.4475 in',
    source: 'Wood Handbook Eq. 13-3 with S_T 7.6 percent, from memory; computed',
    check: 'movement.shrinkage',
    inputs: {
      members: [
        {
          name: 'joist A',
          kind: 'sawn',
          species: 'douglas-fir-coast',
          grain: 'tangential',
          sizeIn: 9.25,
          fromPct: 28,
          toPct: 9,
        },
      ],
    },
    values: { 'changeIn.joist A': [-0.4475, 0.0005] },
  },
  {
    name: 'a 2x10 that lost 1 in at the bottom keeps 0.795 of its bending strength',
    source: 'basic mechanics: S ~ b d^2, I ~ b d^3; computed',
    check: 'decay.section-loss',
    inputs: {
      widthIn: 1.5,
      depthIn: 9.25,
      lossTopIn: 0,
      lossBottomIn: 1,
      lossSideIn: 0,
      marginIn: 0,
      role: 'bending',
    },
    values: { areaRatio: [0.892, 0.0005], momentRatio: [0.795, 0.0005], stiffnessRatio: [0.709, 0.0005] },
    remaining: [0.795, 0.0005],
  },
  {
    name: 'lost width counts once: a 2x10 short 1/4 in of width keeps 0.833 of everything',
    source: 'basic mechanics; computed',
    check: 'decay.section-loss',
    inputs: {
      widthIn: 1.5,
      depthIn: 9.25,
      lossTopIn: 0,
      lossBottomIn: 0,
      lossSideIn: 0.25,
      marginIn: 0,
      role: 'bending',
    },
    values: { areaRatio: [0.833, 0.0005], momentRatio: [0.833, 0.0005], stiffnessRatio: [0.833, 0.0005] },
  },
  {
    name: 'six square feet in a room before 1978 stays within the minor-repair exemption',
    source: '40 CFR 745.83',
    check: 'hazard.lead',
    inputs: { yearBuilt: 1962, interiorSf: 6, exteriorSf: 0, demolition: false, windowReplaced: false },
    verdict: 'meets',
  },
  {
    name: 'demolition of painted surfaces ends the exemption whatever the area',
    source: '40 CFR 745.83',
    check: 'hazard.lead',
    inputs: { yearBuilt: 1962, interiorSf: 2, exteriorSf: 0, demolition: true, windowReplaced: false },
    verdict: 'fails',
  },
  {
    name: 'an unknown year is treated as old',
    source: 'common practice, no source',
    check: 'hazard.lead',
    inputs: { interiorSf: 40, exteriorSf: 0, demolition: false, windowReplaced: false },
    verdict: 'fails',
  },
  {
    name: 'a house of 1985 is outside the lead rule',
    source: '40 CFR 745.83: built before 1978',
    check: 'hazard.lead',
    inputs: { yearBuilt: 1985, interiorSf: 400, exteriorSf: 0, demolition: true, windowReplaced: true },
    verdict: 'not-applicable',
    severity: 'record',
  },
  {
    name: 'a seat whose length was not measured cannot be told yet',
    source: 'the contract of the checks: missing is a value',
    check: 'bearing.seat',
    inputs: { widthIn: 1.5, support: 'wood', species: 'hem-fir', positiveConnection: true, atMemberEnd: true },
    verdict: 'undetermined',
    missing: ['bearingLengthIn'],
  },
];

let api: TestApi;
beforeAll(async () => {
  api = await startTestApi();
});
afterAll(() => api.close());

async function evaluate(example: Pick<Example, 'check' | 'edition' | 'inputs'>): Promise<Response> {
  return fetch(`${api.url}/api/v1/checks/${example.check}/evaluate`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ inputs: example.inputs, ...(example.edition && { edition: example.edition }) }),
  });
}

describe('worked examples', () => {
  it.each(examples)('$name', async (example) => {
    const response = await evaluate(example);
    const answer = await response.json();
    expect(response.status, JSON.stringify(answer)).toBe(200);
    if (example.verdict) expect(answer.verdict).toBe(example.verdict);
    if (example.severity) expect(answer.severity).toBe(example.severity);
    if (example.missing) expect(answer.missing).toEqual(example.missing);
    for (const [name, [value, tolerance]] of Object.entries(example.values ?? {})) {
      expect(
        Math.abs(answer.values[name]?.value - value),
        `${name} is ${answer.values[name]?.value}`,
      ).toBeLessThanOrEqual(tolerance);
    }
    for (const [name, value] of Object.entries(example.flags ?? {})) expect(answer.values[name]?.value).toBe(value);
    if (example.remaining) {
      const [value, tolerance] = example.remaining;
      expect(Math.abs(answer.remaining - value), `remaining is ${answer.remaining}`).toBeLessThanOrEqual(tolerance);
    }
    expect(answer.sources.length).toBeGreaterThan(0);
    expect(answer.cautions.length).toBeGreaterThan(0);
  });

  it.each([
    ['a negative width', 'bearing.seat', { widthIn: -1 }, '/inputs/widthIn'],
    ['a word where a number belongs', 'bearing.seat', { widthIn: 'wide' }, '/inputs/widthIn'],
    [
      'seven nails where five are specified',
      'connection.hanger',
      { header: { specified: 5, installed: 7 } },
      '/inputs/header',
    ],
    ['an input nobody asked for', 'bearing.seat', { widthInches: 3 }, '/inputs'],
  ])('%s is refused by name', async (_name, check, inputs, pointer) => {
    const response = await evaluate({ check, inputs });
    const problem = await response.json();
    expect(response.status).toBe(422);
    expect(response.headers.get('content-type')).toContain('application/problem+json');
    expect(problem.errors.map((error: { pointer: string }) => error.pointer).join(' ')).toContain(pointer);
  });
});
